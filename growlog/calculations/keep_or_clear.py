"""Keep or clear: what another week brings against what would stand there instead. It advises; the grower decides.

Sources: the marginal value theorem (Charnov, E. (1976) Optimal foraging, the marginal value theorem, Theoretical
Population Biology 9: 129-136): leave when the gain of staying falls to the average gain elsewhere, moving included; in
farm management the replacement rule (Faris, J. (1960) Analytical techniques used in determining the optimum replacement
pattern, Journal of Farm Economics 42: 755-766). Both from memory.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

import numpy as np

from growlog.calculations.allowed import require
from growlog.calculations.curve_shapes import Floats
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.calculations.plant_age import day_at
from growlog.calculations.yield_forecast import YieldForecast
from growlog.words import say, show_day, show_number

WEEK = 7
BAND = (0.1, 0.5, 0.9)
SOURCE = (
    "Charnov, E. (1976) Optimal foraging, the marginal value theorem, Theoretical Population Biology 9: 129-136; "
    "replacement rule of farm management: Faris, J. (1960) Journal of Farm Economics 42: 755-766 (both from memory)"
)


@dataclass(frozen=True)
class KeepingCosts:
    """In the main unit of the currency.

    value_of_one: of a fruit, or of a kg where the forecast is by weight; the shop price or the grower's own.
    running_per_day: electricity, feed and the like. labour_per_day: 0 where it is not to count.
    """

    value_of_one: Decimal
    running_per_day: Decimal = Decimal(0)
    labour_per_day: Decimal = Decimal(0)
    currency: str = ""
    decimals: int = 2


@dataclass(frozen=True)
class ClearedCrop:
    """A finished crop of the grower's: what it brought less its running costs, in the main unit, over its days."""

    net_value: Decimal
    days: int


@dataclass(frozen=True)
class Successor:
    """What would stand there instead: its average net value per day, turn-round days counted in. source: in words."""

    value_per_day: Decimal
    turn_round_days: int
    source: str


@dataclass(frozen=True)
class WeekValue:
    """The net value of the week that begins after a plant age: 80 % band and middle, beside the successor's week."""

    age: int
    low: float
    middle: float
    high: float
    instead: float


@dataclass(frozen=True)
class KeepOrClear:
    """The plant age at which another week falls below what would stand there instead, with its band.

    crossing_age, low_age, high_age: None where that is not before the planned clearing. weeks: the curves, by day.
    sentences: three.
    """

    crossing_age: int | None
    low_age: int | None
    high_age: int | None
    weeks: tuple[WeekValue, ...]
    sentences: tuple[str, str, str]
    figure: Figure


def successor_like(crops: Sequence[ClearedCrop], turn_round_days: int) -> Successor | NotYet:
    """The average of the grower's cleared crops: all they brought over all their days and turn-rounds (0 to 365)."""
    require("turn_round_days", turn_round_days, 0, 365, "d")
    finished = [c for c in crops if c.days > 0]
    if not finished:
        return NotYet(say("No crop was cleared yet to compare with: type what another one would bring."))
    days = sum(c.days + turn_round_days for c in finished)
    value = sum((c.net_value for c in finished), Decimal(0)) / days
    return Successor(value, turn_round_days, say("your cleared crops ({n})", n=len(finished)))


def successor_guess(net_value: Decimal, days: int, turn_round_days: int) -> Successor:
    """A typed guess: what the next crop brings in all, in so many days (1 to 730), with turn-round days (0 to 365)."""
    require("days", days, 1, 730, "d")
    require("turn_round_days", turn_round_days, 0, 365, "d")
    return Successor(net_value / (days + turn_round_days), turn_round_days, say("your guess"))


def keep_or_clear(
    forecast: YieldForecast | NotYet, costs: KeepingCosts, instead: Successor, day_zero: date
) -> KeepOrClear | NotYet:
    """When the crop's next week brings less than what would stand there instead; or why that cannot be told."""
    if isinstance(forecast, NotYet):
        return forecast
    if forecast.to_age - forecast.as_of_age < WEEK:
        return NotYet(say("Less than a week is left until the planned clearing: there is nothing to weigh up."))
    weeks = _weeks(forecast, costs, float(instead.value_per_day) * WEEK)
    low, middle, high = (_crossing(weeks, band) for band in ("low", "middle", "high"))
    sentences = _sentences(weeks, (low, middle, high), forecast, costs, instead, day_zero)
    figure = _figure((low, middle, high), weeks[0], forecast, costs, instead, day_zero)
    return KeepOrClear(middle, low, high, weeks, sentences, figure)


def _weeks(forecast: YieldForecast, costs: KeepingCosts, instead: float) -> tuple[WeekValue, ...]:
    sums = np.cumsum(np.pad(_rates(forecast), ((0, 0), (1, 0))), axis=1)
    of_week = sums[:, WEEK:] - sums[:, :-WEEK]
    one = float(costs.value_of_one) / (1.0 if forecast.measure is Measure.FRUIT else 1000.0)
    cost = float(costs.running_per_day + costs.labour_per_day) * WEEK
    bands = np.quantile(of_week, BAND, axis=0) * one - cost
    return tuple(
        WeekValue(forecast.as_of_age + i, low, middle, high, instead)
        for i, (low, middle, high) in enumerate(bands.T.tolist())
    )


def _rates(forecast: YieldForecast) -> Floats:
    """What each future brings by the day. What hangs from before today is picked either way: it keeps nothing alive."""
    rates = forecast.futures.rates.copy()
    if rates.shape[1] > 1:
        rates[:, 0] = np.minimum(rates[:, 0], rates[:, 1])
    return rates


def _crossing(weeks: Sequence[WeekValue], band: str) -> int | None:
    return next((w.age for w in weeks if getattr(w, band) < w.instead), None)


def _sentences(
    weeks: Sequence[WeekValue], ages: tuple[int | None, int | None, int | None], forecast: YieldForecast,
    costs: KeepingCosts, instead: Successor, day_zero: date,
) -> tuple[str, str, str]:  # fmt: skip
    week = weeks[0]
    labour = say("running costs and labour") if costs.labour_per_day else say("running costs")
    first = say(
        "Another week of this crop is likely to bring {low} to {high} after {costs}.",
        low=_money(week.low, costs), high=_money(week.high, costs), costs=labour,
    )  # fmt: skip
    second = say(
        "What would stand there instead brings {value} a week on average, with {days} turn-round days ({source}).",
        value=_money(week.instead, costs), days=instead.turn_round_days, source=instead.source,
    )  # fmt: skip
    return first, second, _verdict(ages, forecast, day_zero)


def _verdict(ages: tuple[int | None, int | None, int | None], forecast: YieldForecast, day_zero: date) -> str:
    early, middle, late = (None if age is None else show_day(day_at(day_zero, age)) for age in ages)
    end = show_day(day_at(day_zero, forecast.to_age))
    if early is None:
        return say("Keeping it pays more all the way to {end}.", end=end)
    if middle is None:
        return say("Keeping it is likely to pay more up to {end}; at the earliest the two meet on {early}.", end=end,
                   early=early)  # fmt: skip
    if ages[1] == forecast.as_of_age:
        return _from_today(ages[2] == ages[1], late, end)
    if late is None:
        return say("The two meet about {day}, at the earliest on {early}, perhaps not before {end}; until then keeping "
                   "pays more.", day=middle, early=early, end=end)  # fmt: skip
    return say("The two meet about {day}, between {early} and {late}; until then keeping pays more.", day=middle,
               early=early, late=late)  # fmt: skip


def _from_today(is_sure: bool, late: str | None, end: str) -> str:
    if is_sure:
        return say("Another week already brings less than that, so clearing would pay more from today on.")
    if late is None:
        return say("Clearing is likely to pay more from today on, but keeping may still do so up to {end}.", end=end)
    return say("Clearing is likely to pay more from today on; at the latest the two meet on {late}.", late=late)


def _money(amount: float, costs: KeepingCosts) -> str:
    shown = show_number(amount, costs.decimals)
    return f"{shown}\u2009{costs.currency}" if costs.currency else shown


def _figure(
    ages: tuple[int | None, int | None, int | None], week: WeekValue, forecast: YieldForecast, costs: KeepingCosts,
    instead: Successor, day_zero: date,
) -> Figure:  # fmt: skip
    low, middle, high = (None if age is None else day_at(day_zero, age).isoformat() for age in ages)
    as_of = day_at(day_zero, forecast.as_of_age)
    given = (
        Input("value of one", costs.value_of_one, costs.currency),
        Input("running costs a day", costs.running_per_day, costs.currency),
        Input("labour a day", costs.labour_per_day, costs.currency),
        Input("next week", round(week.middle, costs.decimals), costs.currency, as_of),
        Input("instead, a day", round(instead.value_per_day, costs.decimals + 1), costs.currency),
        Input("turn-round", instead.turn_round_days, "d"),
        Input("instead from", instead.source),
    )
    method = say(
        "The marginal value theorem, known in farm management as the replacement rule: keep while another week, at the "
        "forecast's picks and less its costs, brings more than the average week of what would stand there instead, "
        "turn-round days counted in. The band is where the forecast's 80 % band meets that average."
    )
    return Figure("keep-or-clear", middle, "", given, method, SOURCE, Sure.ESTIMATE, low, high, as_of)
