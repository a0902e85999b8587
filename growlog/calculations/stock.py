"""What is left in a bottle, for how many days, and what a mL or g of it cost."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import Decimal

from growlog.calculations.allowed import require
from growlog.calculations.explained_figure import COMMON_PRACTICE, Figure, Input, Sure
from growlog.words import mark

BOUGHT, USED, COUNTED, THROWN_AWAY = "bought", "used", "counted", "thrown-away"
USE_DAYS = 28
FEWEST_DAYS = 7

_LEVEL_METHOD = mark(
    "What was bought, less what was used and thrown away, from the last count on; a count is the level itself. Moves of"
    " one day follow each other as they were written. Never below 0."
)
_DAYS_METHOD = mark(
    "What is left, divided by the use per day over the last 28 days, or since the first use where that is shorter, but"
    " at least over a week."
)
_COST_METHOD = mark(
    "What was paid for all packs bought, divided by what they held; where none has a price, the price of a pack divided"
    " by its content."
)


@dataclass(frozen=True)
class Move:
    """A change of a level. sort: one of the four words; amount in mL or g, of a count what is there; price_minor:
    paid."""

    day: date
    sort: str
    amount: float
    price_minor: int | None = None


@dataclass(frozen=True)
class Level:
    """amount: 0 or more; None where nothing was ever bought or counted. short_by: used beyond what was known of."""

    amount: float | None
    short_by: float = 0.0


def stock_level(moves: Sequence[Move], until: date) -> Level:
    """The level at the end of a day from moves in the order they were written; ValueError for a negative amount."""
    level: float | None = None
    for move in sorted(moves, key=lambda m: m.day):  # stable: within a day as written
        require("amount", move.amount, 0, float("inf"))
        if move.day > until:
            break
        level = _after(level, move)
    if level is None:
        return Level(None)
    return Level(max(level, 0.0), max(-level, 0.0))


def use_per_day(moves: Sequence[Move], until: date, days: int = USE_DAYS) -> float:
    """mL or g used a day over the last days (1 and more) up to a day, or since the first use if that is later, but at
    least over a week; 0 where nothing was used."""
    require("days", days, 1, 36500)
    used = [m for m in moves if m.sort == USED and m.day <= until]
    if not used:
        return 0.0
    since_first = (until - min(m.day for m in used)).days + 1
    counted_over = min(days, max(since_first, FEWEST_DAYS))
    first_day = until - timedelta(days=counted_over - 1)
    return sum(m.amount for m in used if m.day >= first_day) / counted_over


def days_left(level: float | None, per_day: float) -> float | None:
    """Days until a bottle is empty at the present use; None where the level is not known or nothing is used."""
    return None if level is None or per_day <= 0 else level / per_day


def cost_per_unit(
    moves: Sequence[Move], pack_amount: float | None = None, pack_price_minor: int | None = None
) -> Decimal | None:
    """Minor units of the currency per mL or g: all packs bought with a price, weighted by what they held, else the pack
    of the label; None where neither has a price."""
    priced = [m for m in moves if m.sort == BOUGHT and m.price_minor is not None and m.amount > 0]
    if priced:
        return Decimal(sum(m.price_minor or 0 for m in priced)) / sum(Decimal(str(m.amount)) for m in priced)
    if pack_price_minor is None or not pack_amount:
        return None
    return Decimal(pack_price_minor) / Decimal(str(pack_amount))


def explain_level(moves: Sequence[Move], until: date, measure: str) -> Figure:
    """The level in mL or g (measure) with its moves since the last count."""
    counted = [m for m in moves if m.day <= until]
    last = max((i for i, m in enumerate(counted) if m.sort == COUNTED), default=0)
    inputs = tuple(Input(m.sort, m.amount, measure, m.day) for m in counted[last:])
    value = stock_level(moves, until).amount
    return Figure("level", value, measure, inputs, _LEVEL_METHOD, COMMON_PRACTICE, Sure.COMMON_PRACTICE, as_of=until)


def explain_days_left(moves: Sequence[Move], until: date, measure: str) -> Figure:
    """Days left at the present use."""
    level, per_day = stock_level(moves, until).amount, use_per_day(moves, until)
    inputs = [Input(mark("use per day"), per_day, measure)]
    inputs += [Input(mark("left"), level, measure)] if level is not None else []
    value = days_left(level, per_day)
    return Figure("days-left", value, "d", tuple(inputs), _DAYS_METHOD, COMMON_PRACTICE, Sure.ESTIMATE, as_of=until)


def explain_cost(
    moves: Sequence[Move], pack_amount: float | None, pack_price_minor: int | None, measure: str
) -> Figure:
    """Minor units per mL or g, with the packs that it comes from."""
    packs = [m for m in moves if m.sort == BOUGHT and m.price_minor is not None]
    inputs = tuple(Input(f"{m.amount:g} {measure}", m.price_minor or 0, "", m.day) for m in packs)
    value = cost_per_unit(moves, pack_amount, pack_price_minor)
    return Figure("cost", value, f"/{measure}", inputs, _COST_METHOD, COMMON_PRACTICE, Sure.COMMON_PRACTICE)


def _after(level: float | None, move: Move) -> float | None:
    if move.sort == COUNTED:
        return move.amount
    if move.sort == BOUGHT:
        return max(level or 0.0, 0.0) + move.amount
    return None if level is None else level - move.amount
