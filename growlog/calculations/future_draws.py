"""Possible futures of a season, day by day: what the curves allow, what chance adds, and what no curve foresees.

Each future is a curve (logistic, Gompertz or a steady rate, with numbers from the prior, taken as often as they explain
the picks so far), a height, a drift away from that curve, and a day on which the crop stops for good; then the picks
scatter about it. DRIFT, REVIVAL, STOP_HAZARD, MORE_SCATTER and the weak beliefs of season_prior were set once, on 200
simulated seasons with other seeds than those of the tests, so that the 80 % band of what remains covers about four in
five of them and is as narrow as that allows.
"""

from dataclasses import dataclass
from math import exp, log

import numpy as np
import numpy.typing as npt

from growlog.calculations.curve_shapes import Floats, Shape, share
from growlog.calculations.pick_intervals import PickIntervals
from growlog.calculations.season_prior import SeasonPrior

Places = npt.NDArray[np.int64]

DRIFT = 0.5  # standard deviation of the logarithm of the rate, a whole season on
REVIVAL = 0.2  # of futures that follow no curve but the mean rate so far: a second flush, a late start
STOP_HAZARD = 0.4  # stops per season, of plants that die or are given up
MORE_SCATTER = 1.3  # good and bad weeks hang together, which the scatter between sessions does not show
SHAPE_BELIEF = {Shape.LOGISTIC: 0.35, Shape.GOMPERTZ: 0.35, Shape.STEADY: 0.3}
NODES, DRAWS = 1200, 1500
_SILENCE_FLOOR = 0.03  # a silence that long may also be a grower who was away or wrote nothing down


@dataclass(frozen=True, eq=False)
class FutureDraws:
    """daily[i, d]: what future i brings on the d-th day after from_age, in the measure.

    rates[i, d]: the same before the picks scatter. stop_chance: that the crop has stopped already, 0 to 1.
    """

    from_age: int
    daily: Floats
    rates: Floats
    stop_chance: float

    def cumulative(self) -> Floats:
        """What each future has brought by the end of each day."""
        return np.cumsum(self.daily, axis=1)


def draw_futures(
    picks: PickIntervals,
    as_of_age: int,
    to_age: int,
    season_days: float,
    prior: SeasonPrior,
    dispersion: float,
    seed: int,
) -> FutureDraws:
    """Futures from the day after as_of_age to to_age; the same seed gives the same ones.

    What hangs since the last session counts on the first day. season_days: first interval to planned clearing.
    """
    rng = np.random.default_rng(seed)
    dispersion *= MORE_SCATTER
    start, last = picks.edges[0], picks.edges[-1]
    silent = max(0.0, as_of_age - last - 1.5 * picks.usual_gap)
    days = np.concatenate([[max(last, as_of_age - picks.usual_gap)], np.arange(as_of_age + 1, to_age + 1)])
    edges = (np.asarray(picks.edges) - start) / season_days
    ahead = (np.concatenate([[last, last + silent], days]) - start) / season_days
    shapes, middles, widths, chosen = _likely_curves(picks, edges, prior, dispersion, rng)
    height = rng.gamma(picks.total / dispersion + 0.5, dispersion, DRAWS)
    rise, risen = _rises(shapes, middles, widths, chosen, ahead, edges)
    expected = height[:, None] * rise / np.maximum(risen, 1e-9)[:, None]
    alive, stop_chance = _heard_of(expected[:, 0], silent / season_days, dispersion, rng)
    mean = expected[:, 2:][alive] * _drift(len(alive), np.diff(ahead[2:]), rng)
    mean[_stopped(len(alive), np.diff(ahead[2:]), stop_chance, rng)] = 0.0
    scatter = rng.gamma(np.maximum(mean / dispersion, 1e-9), dispersion)
    return FutureDraws(as_of_age, np.asarray(scatter), mean, stop_chance)


def _likely_curves(
    picks: PickIntervals, edges: Floats, prior: SeasonPrior, dispersion: float, rng: np.random.Generator
) -> tuple[list[Shape], Floats, Floats, Places]:
    """Curves from the prior, and which of them each future follows, by how well they explain the picks."""
    amounts = np.asarray(picks.amounts) / dispersion
    shapes, middles, widths, scores = [], [], [], []
    for shape, belief in SHAPE_BELIEF.items():
        n = 1 if shape is Shape.STEADY else NODES
        middle = prior.peak + prior.peak_sd * rng.standard_normal(n)
        width = np.exp(prior.log_width(shape) + prior.log_width_sd * rng.standard_normal(n))
        whole = np.append(edges, max(1.0, edges[-1]))
        rise = np.maximum(np.diff(share(shape, whole[None, :], middle[:, None], width[:, None]), axis=1), 1e-12)
        risen = rise[:, :-1].sum(axis=1)
        more = prior.more_to_come(rise[:, -1], risen, float(edges[-1]))
        scores.append(np.log(rise[:, :-1] / risen[:, None]) @ amounts - 0.5 * more**2 + log(belief / n))
        shapes += [shape] * n
        middles.append(middle)
        widths.append(width)
    score = np.concatenate(scores)
    weight = np.exp(score - score.max())
    places = np.searchsorted(np.cumsum(weight) / weight.sum(), (np.arange(DRAWS) + rng.random()) / DRAWS)
    chosen = rng.permutation(np.minimum(places, len(shapes) - 1))
    chosen[: round(REVIVAL * DRAWS)] = shapes.index(Shape.STEADY)
    return shapes, np.concatenate(middles), np.concatenate(widths), chosen


def _rises(
    shapes: list[Shape], middles: Floats, widths: Floats, chosen: Places, ahead: Floats, edges: Floats
) -> tuple[Floats, Floats]:
    """Shares of each chosen curve between the times ahead, and over the picks so far."""
    rise, risen = np.empty((len(chosen), len(ahead) - 1)), np.empty(len(chosen))
    kinds = np.array([list(Shape).index(s) for s in shapes])[chosen]
    for i, shape in enumerate(Shape):
        here = np.flatnonzero(kinds == i)
        middle, width = middles[chosen[here], None], widths[chosen[here], None]
        rise[here] = np.diff(share(shape, ahead[None, :], middle, width), axis=1)
        ends = share(shape, edges[None, [0, -1]], middle, width)
        risen[here] = ends[:, 1] - ends[:, 0]
    return rise, risen


def _heard_of(missed: Floats, silent_share: float, dispersion: float, rng: np.random.Generator) -> tuple[Places, float]:
    """Futures taken again by how well they explain a silence, and the chance that the crop stopped in it."""
    if silent_share <= 0:
        return np.arange(len(missed)), 0.0
    quiet = np.maximum(np.exp(-np.minimum(missed / dispersion, 50.0)), _SILENCE_FLOOR)
    stopped = 1 - exp(-STOP_HAZARD * silent_share)
    chance = stopped / (stopped + (1 - stopped) * float(quiet.mean()))
    return rng.choice(len(missed), len(missed), p=quiet / quiet.sum()), chance


def _drift(n: int, steps: Floats, rng: np.random.Generator) -> Floats:
    """Factors of the rate that wander away from 1, with mean 1."""
    walk = np.cumsum(rng.standard_normal((n, len(steps))) * np.sqrt(steps), axis=1) * DRIFT
    return np.asarray(np.exp(walk - 0.5 * DRIFT**2 * np.cumsum(steps)))


def _stopped(n: int, steps: Floats, stop_chance: float, rng: np.random.Generator) -> Floats:
    """Which days of which futures lie after the crop has stopped."""
    when = rng.exponential(1 / STOP_HAZARD, n)
    when[rng.random(n) < stop_chance] = 0.0
    return np.asarray(np.cumsum(steps)[None, :] > when[:, None])
