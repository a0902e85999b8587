"""What a crop still promises up to a stated day, never past its planned clearing, as a band; or why nothing is said."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np

from growlog.calculations.curve_fit import CurveFit, fit_season
from growlog.calculations.curve_shapes import SHAPE_WORDS, Shape
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.calculations.future_draws import FutureDraws, draw_futures
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure, PickIntervals, pick_intervals
from growlog.calculations.plant_age import day_at
from growlog.calculations.season_prior import SeasonPrior, usual_season
from growlog.calculations.spoken_amount import amount_band
from growlog.calculations.yield_curve import PickPoint
from growlog.words import say, say_count, show_day, show_number

LEAST_SESSIONS, LEAST_DAYS, LEAST_FRUIT = 4, 7, 5
USUAL_SEASON_DAYS = 60  # from first pick to clearing where none is planned; common practice, no source
SHARE_FOR_PRIOR = 1 / 3
LONGEST_HORIZON = 200
BAND = (0.1, 0.5, 0.9)
SOURCE = (
    "Ratkowsky, D. (1983) Nonlinear Regression Modeling; McCullagh, P. and Nelder, J. (1989) Generalized Linear "
    "Models, 2nd ed.; Burnham, K. and Anderson, D. (2002) Model Selection and Multimodel Inference, 2nd ed. (all from "
    "memory)"
)


@dataclass(frozen=True)
class BandPoint:
    """The cumulative yield by the end of a plant age: 80 % band and middle, in the measure."""

    age: int
    low: float
    middle: float
    high: float


@dataclass(frozen=True)
class YieldForecast:
    """What is still to come from as_of_age to to_age: 80 % band and middle, in the measure.

    fits: the best by AICc first. curve: cumulative, from as_of_age on. futures: the draws behind the band.
    sentences: for the grower. prior: what the fit leaned on.
    """

    measure: Measure
    as_of_age: int
    to_age: int
    low: float
    middle: float
    high: float
    so_far: float
    curve: tuple[BandPoint, ...]
    fits: tuple[CurveFit, ...]
    futures: FutureDraws
    prior: SeasonPrior
    sentences: tuple[str, ...]
    figure: Figure

    @property
    def fit(self) -> CurveFit:
        """The curve chosen: the better of logistic and Gompertz by AICc."""
        return _chosen(self.fits)

    @property
    def no_peak_yet(self) -> bool:
        """Whether a steady rate explains the picks as well as any curve."""
        return self.fits[0].shape is Shape.STEADY


@dataclass(frozen=True)
class ForecastAsk:
    """What is asked: as of which plant age, for how many days (1 to 200), with which planned clearing (a plant age).

    stopped_age: where the last plant died or was cleared. usual_days: from first pick to clearing if none is planned.
    """

    day_zero: date
    as_of_age: int
    horizon_days: int = 28
    planned_end_age: int | None = None
    stopped_age: int | None = None
    usual_days: int = USUAL_SEASON_DAYS
    measure: Measure = Measure.FRUIT


def forecast_yield(
    picks: Iterable[PickPoint], ask: ForecastAsk, seed: int, prior: SeasonPrior | None = None
) -> YieldForecast | NotYet:
    """The forecast, from picks up to as_of_age alone; the same seed gives the same band. Never raises on odd picks."""
    found = pick_intervals(picks, ask.measure, ask.as_of_age)
    if isinstance(found, NotYet):
        return found
    season_days = _season_days(found, ask)
    reason = _why_not(found, ask, season_days)
    if reason:
        return NotYet(reason)
    to_age = min(ask.as_of_age + min(ask.horizon_days, LONGEST_HORIZON), ask.planned_end_age or 10_000)
    belief = prior or usual_season()
    fits = fit_season(found, season_days, belief)
    futures = draw_futures(found, ask.as_of_age, to_age, season_days, belief, fits[0].dispersion, seed)
    return _told(found, ask, to_age, fits, futures, belief)


def _chosen(fits: Sequence[CurveFit]) -> CurveFit:
    curves = [f for f in fits if f.shape is not Shape.STEADY]
    return min(curves, key=lambda f: (f.aicc, f.deviance))


def _season_days(picks: PickIntervals, ask: ForecastAsk) -> float:
    end = ask.planned_end_age or max(picks.first_age + ask.usual_days, ask.as_of_age + 14)
    return max(end - picks.edges[0], 1.0)


def _why_not(picks: PickIntervals, ask: ForecastAsk, season_days: float) -> str:
    if ask.horizon_days < 1:
        return say("The forecast needs at least one day to look ahead.")
    if ask.stopped_age is not None and ask.stopped_age <= ask.as_of_age:
        return say("The last plant stopped on {day}: nothing more is to come.", day=_day(ask, ask.stopped_age))
    if ask.planned_end_age is not None and ask.planned_end_age <= ask.as_of_age:
        return say("The planned clearing was {day}: there is no time left.", day=_day(ask, ask.planned_end_age))
    return _too_little(picks) or _too_early(picks, ask, season_days)


def _too_little(picks: PickIntervals) -> str:
    days = picks.edges[-1] - picks.first_age
    if picks.sessions < LEAST_SESSIONS or days < LEAST_DAYS:
        return say(
            "{sessions} picking sessions over {days} days are too few for a curve; it takes {least} over {least_days}.",
            sessions=picks.sessions, days=round(days), least=LEAST_SESSIONS, least_days=LEAST_DAYS,
        )  # fmt: skip
    if picks.total < LEAST_FRUIT * picks.unit_amount:
        return say("Fewer than {n} fruit so far are too few for a curve.", n=LEAST_FRUIT)
    return ""


def _too_early(picks: PickIntervals, ask: ForecastAsk, season_days: float) -> str:
    """Before a third of the season nothing tells how it will run, and what is usual would be all that spoke."""
    gone = (ask.as_of_age - picks.first_age) / (season_days - picks.usual_gap)
    if gone >= SHARE_FOR_PRIOR - 0.02:
        return ""
    from_day = _day(ask, round(picks.first_age + (season_days - picks.usual_gap) / 3))
    return say("Less than a third of the picking season is over; a forecast is given from {day} on.", day=from_day)


def _told(
    picks: PickIntervals, ask: ForecastAsk, to_age: int, fits: tuple[CurveFit, ...], futures: FutureDraws,
    prior: SeasonPrior,
) -> YieldForecast:  # fmt: skip
    bands = np.quantile(futures.cumulative(), BAND, axis=0)
    so_far = picks.total
    curve = [BandPoint(ask.as_of_age, so_far, so_far, so_far)]
    curve += [
        BandPoint(ask.as_of_age + 1 + i, so_far + low, so_far + mid, so_far + high)
        for i, (low, mid, high) in enumerate(bands.T.tolist())
    ]
    low, middle, high = (float(b) for b in bands[:, -1])
    if picks.measure is Measure.FRUIT:
        low, middle, high = float(np.floor(low + 0.2)), float(round(middle)), float(np.ceil(high - 0.2))
    words = _sentences(picks, ask, (low, high), fits, futures, prior)
    figure = _figure(picks, ask, to_age, (low, middle, high), fits, prior)
    return YieldForecast(
        picks.measure,
        ask.as_of_age,
        to_age,
        low,
        middle,
        high,
        so_far,
        tuple(curve),
        fits,
        futures,
        prior,
        words,
        figure,
    )


def _sentences(
    picks: PickIntervals, ask: ForecastAsk, band: tuple[float, float], fits: Sequence[CurveFit], futures: FutureDraws,
    prior: SeasonPrior,
) -> tuple[str, ...]:  # fmt: skip
    to_age = futures.from_age + futures.daily.shape[1]
    amount = amount_band(band[0], band[1], picks.measure)
    said = [
        say("{amount} more by {day}, in four cases out of five.", amount=amount, day=_day(ask, to_age)),
        _shape_words(fits),
        say("The band leans weakly on when seasons usually peak ({source}).", source=say(prior.source)),
    ]
    quiet = round(ask.as_of_age - picks.edges[-1])
    if futures.stop_chance >= 0.1:
        percent = show_number(100 * futures.stop_chance, 0)
        said.append(
            say_count(
                "No pick for {n} day: the chance that the crop has stopped is put at {percent} %.",
                "No pick for {n} days: the chance that the crop has stopped is put at {percent} %.",
                quiet, percent=percent,
            )
        )  # fmt: skip
    return tuple(said)


def _shape_words(fits: Sequence[CurveFit]) -> str:
    shape = say(SHAPE_WORDS[_chosen(fits).shape])
    if fits[0].shape is Shape.STEADY:
        return say("A steady rate explains the picks as well as a curve: no peak can be told yet. Drawn is a {shape}.",
                   shape=shape)  # fmt: skip
    return say("The picks so far follow best a {shape}.", shape=shape)


def _figure(
    picks: PickIntervals, ask: ForecastAsk, to_age: int, band: tuple[float, float, float], fits: tuple[CurveFit, ...],
    prior: SeasonPrior,
) -> Figure:  # fmt: skip
    unit = say("fruit") if picks.measure is Measure.FRUIT else "g"
    given = [
        Input("picked so far", round(picks.total, 1), unit),
        Input("sessions", picks.sessions),
        Input("horizon", to_age - ask.as_of_age, "d", day_at(ask.day_zero, to_age)),
        Input("variance over mean", round(fits[0].dispersion, 2), unit),
        Input("what is usual", prior.source),
    ]
    given += [Input(f"AICc {f.shape.value}", round(f.aicc, 1) if np.isfinite(f.aicc) else "-") for f in fits]
    method = say(
        "Curves fitted by likelihood to what was gathered between sessions, the best by AICc drawn. The band is that "
        "of 1,500 possible seasons: curves that explain the picks, leaning weakly on when seasons usually peak, each "
        "with a drift, a chance of stopping and the scatter of picks; they were set once on simulated seasons. "
        "It ends at the planned clearing and is no promise of the curve's full height."
    )
    low, middle, high = band
    as_of = day_at(ask.day_zero, ask.as_of_age)
    return Figure("forecast", middle, unit, tuple(given), method, SOURCE, Sure.ESTIMATE, low, high, as_of)


def _day(ask: ForecastAsk, age: int) -> str:
    return show_day(day_at(ask.day_zero, age))
