"""The curves of crops beside each other, by what is counted, what it is held against, and how they are aligned."""

from bisect import bisect_right
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from growlog.calculations.yield_curve import CurvePoint
from growlog.records.money import decimals_of
from growlog.services.side_by_side.beside import CropBeside
from growlog.words import mark, say


class Counted(StrEnum):
    """What is drawn: g, fruit, or the cost so far of a kg."""

    WEIGHT = "weight"
    FRUIT = "fruit"
    COST = "cost"


class Per(StrEnum):
    """What weight and fruit are held against."""

    CROP = "crop"
    PLANT = "plant"
    FLOOR = "floor"


class Aligned(StrEnum):
    """Where day 0 of the axis is."""

    AGE = "age"
    FIRST_PICK = "first-pick"


PER_WORDS = {Per.CROP: mark("of the crop"), Per.PLANT: mark("for each plant alive"), Per.FLOOR: mark("for each m²")}


@dataclass(frozen=True)
class CropSeries:
    """A crop's steps: from days[i] on it stands at values[i], up to last_day. reason: why there are none."""

    crop_id: str
    name: str
    days: tuple[int, ...]
    values: tuple[float, ...]
    last_day: int
    reason: str = ""


def crop_series(beside: CropBeside, counted: Counted, per: Per, aligned: Aligned) -> CropSeries:
    """The series of a crop. Plants and floor are those at the last pick; a kg costs nothing yet before the first."""
    name, crop_id = beside.crop.name, beside.crop.id
    reason = _why_not(beside, counted, per)
    if reason or beside.first_pick_age is None:
        return CropSeries(crop_id, name, (), (), 0, reason or say("Nothing was picked yet."))
    start = beside.first_pick_age if aligned is Aligned.FIRST_PICK else 0
    steps = _cost_steps(beside) if counted is Counted.COST else _yield_steps(beside, counted, per)
    shown = [(age - start, value) for age, value in steps]
    return CropSeries(crop_id, name, tuple(d for d, _ in shown), tuple(v for _, v in shown), beside.last_age - start)


def unit_of(counted: Counted, per: Per, currency: str) -> str:
    """The unit of the values."""
    if counted is Counted.COST:
        return f"{currency}/kg" if currency else "/kg"
    unit = "g" if counted is Counted.WEIGHT else say("fruit")
    return unit + {Per.CROP: "", Per.PLANT: f"/{say('plant')}", Per.FLOOR: "/m²"}[per]


def _why_not(beside: CropBeside, counted: Counted, per: Per) -> str:
    if not beside.curve:
        return say("Nothing was picked yet.")
    if counted is not Counted.FRUIT and not beside.curve[-1].weight_g:
        return say("No fruit was weighed.")
    if counted is Counted.COST:
        return "" if beside.cost_by_age else say("No cost is known.")
    if per is Per.PLANT and not beside.plants_alive:
        return say("No plant was alive at the last pick.")
    if per is Per.FLOOR and not beside.floor_m2:
        return say("Its floor is not known.")
    return ""


def _yield_steps(beside: CropBeside, counted: Counted, per: Per) -> list[tuple[int, float]]:
    value: Callable[[CurvePoint], float] = _weight if counted is Counted.WEIGHT else _fruit
    by = {Per.CROP: 1.0, Per.PLANT: float(beside.plants_alive or 1), Per.FLOOR: beside.floor_m2 or 1.0}[per]
    return [(p.age, value(p) / by) for p in beside.curve]


def _cost_steps(beside: CropBeside) -> list[tuple[int, float]]:
    """Cost so far over kg so far, on every day from the first weight on."""
    main = 10 ** decimals_of(beside.currency)
    cost_ages, curve_ages = [age for age, _ in beside.cost_by_age], [p.age for p in beside.curve]
    first = next(p.age for p in beside.curve if p.weight_g)
    found = []
    for age in range(first, beside.last_age + 1):
        spent = bisect_right(cost_ages, age)
        cost = beside.cost_by_age[spent - 1][1] if spent else 0
        weight_g = beside.curve[bisect_right(curve_ages, age) - 1].weight_g
        found.append((age, cost / main / (weight_g / 1000)))
    return found


def _weight(point: CurvePoint) -> float:
    return point.weight_g


def _fruit(point: CurvePoint) -> float:
    return float(point.fruit_count)
