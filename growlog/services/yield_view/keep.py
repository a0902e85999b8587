"""Keep or clear: another week of a crop against what would stand there instead. It advises; the grower decides."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from growlog.calculations.keep_or_clear import (
    ClearedCrop,
    KeepingCosts,
    KeepOrClear,
    Successor,
    keep_or_clear,
    successor_guess,
    successor_like,
)
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.services.open_logbook import OpenLogbook
from growlog.services.yield_view.keep_grounds import FinishedCrop, KeepGrounds, keep_grounds_of
from growlog.words import say

USUAL_TURN_ROUND_DAYS = 7  # clearing, cleaning and sowing anew; common practice, no source


@dataclass(frozen=True)
class Guess:
    """What the grower thinks the next crop brings in all, less its costs, over so many days (1 to 730)."""

    net_value: Decimal
    days: int


@dataclass(frozen=True)
class KeepAsk:
    """What is asked; None stands for what the logbook says. Money in the main unit.

    measure: what value_of_one is of, a fruit or a kg; None: a kg where a shop price of it is stated, else a fruit.
    guess: None for the grower's own cleared crops, of those in finished_ids where these are given.
    turn_round_days: 0 to 365.
    """

    measure: Measure | None = None
    value_of_one: Decimal | None = None
    running_per_day: Decimal | None = None
    with_labour: bool = False
    labour_rate_per_h: Decimal | None = None
    guess: Guess | None = None
    finished_ids: tuple[str, ...] | None = None
    turn_round_days: int = USUAL_TURN_ROUND_DAYS


@dataclass(frozen=True)
class KeepView:
    """The answer, or why there is none, with what it rests on. labour_per_day: 0 where it does not count."""

    result: KeepOrClear | NotYet
    measure: Measure
    value_of_one: Decimal | None
    running_per_day: Decimal
    labour_per_day: Decimal
    successor: Successor | NotYet
    currency: str
    decimals: int
    notes: tuple[str, ...]


def keep_or_clear_of(log: OpenLogbook, crop_id: str, ask: KeepAsk | None = None, as_of: date | None = None) -> KeepView:
    """Keep or clear on a day, today if none is said. Not for the window's thread. LogbookProblem without the crop."""
    return weigh_up(keep_grounds_of(log, crop_id, as_of), ask or KeepAsk())


def weigh_up(grounds: KeepGrounds, ask: KeepAsk) -> KeepView:
    """The same from grounds that were read. ValueError for turn-round days or a guess outside their ranges."""
    measure, value = value_of_one(grounds, ask)
    running = grounds.running_per_day if ask.running_per_day is None else ask.running_per_day
    labour = _labour_per_day(grounds, ask)
    successor = _successor(grounds, ask, measure, value)
    costs = KeepingCosts(value or Decimal(0), running, labour, grounds.currency, grounds.decimals)
    result = _result(grounds, measure, value, costs, successor)
    return KeepView(
        result, measure, value, running, labour, successor, grounds.currency, grounds.decimals,
        tuple(_both_lose(result) + _notes(grounds, ask)),
    )  # fmt: skip


def value_of_one(grounds: KeepGrounds, ask: KeepAsk) -> tuple[Measure, Decimal | None]:
    """Of what, and how much: typed, else the shop price; None where neither is known."""
    measure = ask.measure or (Measure.FRUIT if grounds.per_kg is None and grounds.per_fruit else Measure.GRAMS)
    shop = grounds.per_fruit if measure is Measure.FRUIT else grounds.per_kg
    return measure, shop if ask.value_of_one is None else ask.value_of_one


def net_value(finished: FinishedCrop, measure: Measure, value: Decimal | None, labour_rate: Decimal) -> Decimal | None:
    """What a finished crop brought less its costs, on this crop's floor; None where nothing says what fruit is worth.

    At its own shop price; one of the same kind without a price at the value of this crop's.
    """
    worth = _worth(finished, measure, value)
    if worth is None:
        return None
    labour = labour_rate * Decimal(f"{finished.labour_minutes / 60:.6f}")
    return (worth - finished.costs - labour) * Decimal(f"{finished.floor_ratio:.6f}")


def _worth(finished: FinishedCrop, measure: Measure, value: Decimal | None) -> Decimal | None:
    kg, fruit = Decimal(f"{finished.weight_g / 1000:.6f}"), Decimal(finished.fruit_count)
    if finished.per_kg is not None and finished.weight_g:
        return finished.per_kg * kg
    if finished.per_fruit is not None:
        return finished.per_fruit * fruit
    if value is None or not finished.same_kind:
        return None
    return value * (fruit if measure is Measure.FRUIT else kg)


def _result(
    grounds: KeepGrounds, measure: Measure, value: Decimal | None, costs: KeepingCosts, successor: Successor | NotYet
) -> KeepOrClear | NotYet:
    forecast = grounds.forecast(measure)
    if isinstance(forecast, NotYet):
        return forecast
    if value is None:
        return NotYet(say("Say what a kg or a fruit is worth to you, or state a shop price with the crop."))
    if isinstance(successor, NotYet):
        return successor
    return keep_or_clear(forecast, costs, successor, grounds.season.day_zero)


def _labour_per_day(grounds: KeepGrounds, ask: KeepAsk) -> Decimal:
    return _labour_rate(grounds, ask) * Decimal(f"{grounds.labour_minutes_per_day / 60:.6f}")


def _labour_rate(grounds: KeepGrounds, ask: KeepAsk) -> Decimal:
    if not ask.with_labour:
        return Decimal(0)
    rate = grounds.labour_rate_per_h if ask.labour_rate_per_h is None else ask.labour_rate_per_h
    return rate or Decimal(0)


def _successor(grounds: KeepGrounds, ask: KeepAsk, measure: Measure, value: Decimal | None) -> Successor | NotYet:
    if ask.guess is not None:
        return successor_guess(ask.guess.net_value, ask.guess.days, ask.turn_round_days)
    wanted = [f for f in grounds.finished if ask.finished_ids is None or f.crop_id in ask.finished_ids]
    if grounds.finished and not wanted:
        return NotYet(say("Choose at least one of your cleared crops, or take a guess."))
    rate = _labour_rate(grounds, ask)
    valued = [(f, net_value(f, measure, value, rate)) for f in wanted]
    found = [ClearedCrop(net, f.days) for f, net in valued if net is not None]
    if wanted and not found:
        return NotYet(say("Nothing says what the fruit of your cleared crops was worth: type what another one would "
                          "bring, or state their shop prices."))  # fmt: skip
    return successor_like(found, ask.turn_round_days)


def _both_lose(result: KeepOrClear | NotYet) -> list[str]:
    if isinstance(result, NotYet) or result.weeks[0].high >= 0 or result.weeks[0].instead >= 0:
        return []
    return [say("At this value both cost more than their fruit brings.")]


def _notes(grounds: KeepGrounds, ask: KeepAsk) -> list[str]:
    found = []
    if ask.running_per_day is None and not grounds.running_per_day:
        found.append(say("No running costs are known of the last two weeks, so none are taken off."))
    if ask.with_labour and not _labour_rate(grounds, ask):
        found.append(say("What an hour of labour is worth is not stated, so labour is not counted."))
    if ask.guess is None and any(abs(f.floor_ratio - 1) > 0.005 for f in grounds.finished):
        found.append(say("Cleared crops are scaled to the floor that this one stands on."))
    return found + list(grounds.season.notes)
