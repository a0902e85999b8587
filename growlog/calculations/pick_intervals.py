"""Picks as what was gathered between sessions, so that no fruit is counted in more than one observation."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import pairwise
from math import isfinite
from statistics import median

from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_curve import PickPoint
from growlog.words import say

NEAR_DAYS = 3  # sessions nearer than this are taken together: what one leaves hanging the next one takes
LONGEST_USUAL_GAP = 10.0
LIGHTEST_G = 0.001  # less than that is no weight


class Measure(StrEnum):
    """What is counted: fruit, or grams."""

    FRUIT = "fruit"
    GRAMS = "g"


@dataclass(frozen=True)
class PickIntervals:
    """Marketable yield between sessions. Interval i runs from edges[i] (not with it) to edges[i + 1] (with it).

    edges: plant ages in days. amounts: fruit or g of each interval. usual_gap: days between sessions, the median.
    unit_amount: what one fruit is in the measure, 1 for fruit.
    """

    measure: Measure
    edges: tuple[float, ...]
    amounts: tuple[float, ...]
    usual_gap: float
    sessions: int
    unit_amount: float

    @property
    def total(self) -> float:
        """All of it."""
        return sum(self.amounts)

    @property
    def first_age(self) -> float:
        """The plant age of the first session with yield."""
        return self.edges[0] + self.usual_gap


def pick_intervals(
    picks: Iterable[PickPoint], measure: Measure, up_to_age: int | None = None
) -> PickIntervals | NotYet:
    """The intervals up to and with a plant age, or why there are none.

    An unweighed pick counts with the mean weight of the fruit weighed at all (a weight without a count, with as many
    fruit); the first interval begins one usual gap before the first pick. Common practice, no source.
    """
    seen = sorted((p for p in picks if up_to_age is None or p.age <= up_to_age), key=lambda p: p.age)
    if not all(_is_possible(p) for p in seen):
        return NotYet(say("A pick here has less than no fruit or weight: mend it first."))
    mean_g = _mean_fruit_g(seen)
    by_age: dict[int, float] = {}
    for pick in seen:
        amount = _amount(pick, measure, mean_g)
        if amount is None:
            return _no_measure(measure)
        by_age[pick.age] = by_age.get(pick.age, 0.0) + amount
    ages = _from_first_yield(by_age)
    if len(ages) < 2:
        return _too_few(len(ages), sum(p.age in ages for p in seen), any(p.culled_count for p in seen))
    gap = min(float(median(b - a for a, b in pairwise(ages))), LONGEST_USUAL_GAP)
    unit = 1.0 if measure is Measure.FRUIT else (mean_g or max(by_age.values()) / 3)
    edges, amounts = _taken_together(ages, [by_age[a] for a in ages], gap)
    return PickIntervals(measure, tuple(edges), tuple(amounts), gap, sum(by_age[a] > 0 for a in ages), unit)


def _from_first_yield(by_age: dict[int, float]) -> list[int]:
    ages = sorted(by_age)
    first = next((i for i, age in enumerate(ages) if by_age[age] > 0), len(ages))
    return ages[first:]


def _taken_together(ages: Sequence[int], amounts: Sequence[float], gap: float) -> tuple[list[float], list[float]]:
    edges, sums = [ages[0] - gap, float(ages[0])], [amounts[0]]
    for age, amount in zip(ages[1:], amounts[1:], strict=True):
        if edges[-1] - edges[-2] < NEAR_DAYS:
            edges[-1] = float(age)
            sums[-1] += amount
        else:
            edges.append(float(age))
            sums.append(amount)
    return edges, sums


def _amount(pick: PickPoint, measure: Measure, mean_g: float | None) -> float | None:
    """None where it cannot be told."""
    has_weight = pick.weight_g is not None and pick.weight_g > LIGHTEST_G
    if measure is Measure.FRUIT:
        if pick.fruit_count or not has_weight:
            return float(pick.fruit_count)
        return None if mean_g is None else (pick.weight_g or 0.0) / mean_g
    if has_weight or not pick.fruit_count:
        return pick.weight_g or 0.0 if has_weight else 0.0
    return None if mean_g is None else pick.fruit_count * mean_g


def _mean_fruit_g(picks: Iterable[PickPoint]) -> float | None:
    both = [(p.fruit_count, p.weight_g or 0.0) for p in picks if (p.weight_g or 0.0) > LIGHTEST_G and p.fruit_count]
    return sum(g for _, g in both) / sum(n for n, _ in both) if both else None


def _is_possible(pick: PickPoint) -> bool:
    weight = 0.0 if pick.weight_g is None else pick.weight_g
    return isfinite(weight) and weight >= 0 and isfinite(pick.fruit_count) and pick.fruit_count >= 0


def _no_measure(measure: Measure) -> NotYet:
    if measure is Measure.GRAMS:
        return NotYet(say("No fruit was weighed, so nothing can be said by weight; by count it can."))
    return NotYet(say("Some picks have a weight but no count, and no fruit was weighed with its count."))


def _too_few(days: int, picks: int, culled: bool) -> NotYet:
    if days == 0:
        return NotYet(say("All fruit picked so far was culled.") if culled else say("Nothing was picked yet."))
    if picks == 1:
        return NotYet(say("One pick so far: how fast more follow cannot be told from it."))
    return NotYet(say("All picks so far fell on one day: how fast more follow cannot be told from them."))
