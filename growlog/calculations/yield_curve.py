"""The yield so far: cumulative marketable fruit by count and by weight, with estimates named as such."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby


@dataclass(frozen=True)
class PickPoint:
    """One pick: plant age, marketable fruit, their weight in g (None: not weighed), culled fruit."""

    age: int
    fruit_count: int
    weight_g: float | None
    culled_count: int = 0


@dataclass(frozen=True)
class CurvePoint:
    """The yield up to and with a plant age. estimated_g: the part of weight_g that was never on a scale."""

    age: int
    fruit_count: int
    weight_g: float
    estimated_g: float

    @property
    def is_estimate(self) -> bool:
        """Whether any of the weight is an estimate."""
        return self.estimated_g > 0


@dataclass(frozen=True)
class YieldSoFar:
    """Totals up to a plant age. mean_fruit_g: of weighed fruit only, None where none was weighed."""

    fruit_count: int
    culled_count: int
    weight_g: float
    estimated_g: float
    mean_fruit_g: float | None
    unknown_count: int  # fruit that was never weighed and has no weighed one to estimate it by


def cumulative_yield(picks: Iterable[PickPoint], up_to_age: int | None = None) -> list[CurvePoint]:
    """One point per day with a pick, in order of age, up to and with up_to_age.

    Unweighed fruit counts with the mean weight of the fruit weighed up to its own day, never of later ones, so
    that the figure of a day does not change when more is picked after it. Before any fruit was weighed it counts
    with 0 g, and with the mean of the first day that has one from that day on. Common practice, no source.
    """
    seen = sorted((p for p in picks if up_to_age is None or p.age <= up_to_age), key=lambda p: p.age)
    points: list[CurvePoint] = []
    count, weighed_count, weighed_g, estimated_g, waiting = 0, 0, 0.0, 0.0, 0
    for age, same_day in groupby(seen, key=lambda p: p.age):
        for pick in same_day:
            count += pick.fruit_count
            if pick.weight_g is None:
                waiting += pick.fruit_count
            elif pick.fruit_count:
                weighed_count += pick.fruit_count
                weighed_g += pick.weight_g
        if weighed_count:
            estimated_g += waiting * weighed_g / weighed_count
            waiting = 0
        points.append(CurvePoint(age, count, weighed_g + estimated_g, estimated_g))
    return points


def yield_so_far(picks: Iterable[PickPoint], up_to_age: int | None = None) -> YieldSoFar:
    """Totals up to and with a plant age; weights in g."""
    seen = [p for p in picks if up_to_age is None or p.age <= up_to_age]
    curve = cumulative_yield(seen)
    mean_g = _mean_fruit_g(seen)
    return YieldSoFar(
        fruit_count=sum(p.fruit_count for p in seen),
        culled_count=sum(p.culled_count for p in seen),
        weight_g=curve[-1].weight_g if curve else 0.0,
        estimated_g=curve[-1].estimated_g if curve else 0.0,
        mean_fruit_g=mean_g,
        unknown_count=0 if mean_g is not None else sum(p.fruit_count for p in seen if p.weight_g is None),
    )


def first_pick_age(picks: Iterable[PickPoint]) -> int | None:
    """The plant age of the first marketable fruit."""
    return min((p.age for p in picks if p.fruit_count), default=None)


def _mean_fruit_g(picks: Iterable[PickPoint]) -> float | None:
    weighed = [p for p in picks if p.weight_g is not None and p.fruit_count]
    count = sum(p.fruit_count for p in weighed)
    return sum(p.weight_g or 0.0 for p in weighed) / count if count else None
