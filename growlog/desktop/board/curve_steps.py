"""The yield curve as numbers to be drawn: steps, estimated parts, round axis labels."""

from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor, log10

import numpy as np
import numpy.typing as npt

from growlog.calculations.yield_curve import CurvePoint

Numbers = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Steps:
    """Corner points of a step curve in order of age."""

    ages: Numbers
    values: Numbers


@dataclass(frozen=True)
class DrawnCurve:
    """A curve in the parts that are drawn differently.

    whole: from day 0 to the last day. weighed: the same without what was only estimated. sure_until: the age up to
    which nothing is estimated, the last age where nothing ever is.
    """

    whole: Steps
    weighed: Steps
    sure_until: float

    @property
    def has_estimate(self) -> bool:
        """Whether a part is estimated."""
        return bool(self.sure_until < self.whole.ages[-1])

    def sure_part(self) -> Steps:
        """The steps before the first estimate."""
        return _cut(self.whole, self.whole.ages <= self.sure_until, self.has_estimate)

    def estimated_part(self) -> Steps:
        """The steps from the first estimate on."""
        first = int(np.searchsorted(self.whole.ages, self.sure_until, side="left"))
        return Steps(self.whole.ages[first:], self.whole.values[first:])


def drawn_curve(points: Sequence[CurvePoint], last_age: int, by_count: bool) -> DrawnCurve:
    """The curve of a crop, by count of fruit or by weight in g."""
    first_estimate = next((p.age for p in points if p.is_estimate and not by_count), None)
    end = max([last_age, *(p.age for p in points)])
    return DrawnCurve(
        _steps([(p.age, value_of(p, by_count)) for p in points], end),
        _steps([(p.age, value_of(p, by_count) - (0.0 if by_count else p.estimated_g)) for p in points], end),
        float(end if first_estimate is None else first_estimate),
    )


def value_of(point: CurvePoint, by_count: bool) -> float:
    """What the curve shows of a point."""
    return float(point.fruit_count) if by_count else point.weight_g


def point_at(points: Sequence[CurvePoint], age: int) -> CurvePoint | None:
    """The yield so far on a day; None before the first pick."""
    index = bisect_right([p.age for p in points], age)
    return points[index - 1] if index else None


def value_on(steps: Steps, age: float) -> float:
    """The height of a step curve at an age."""
    index = int(steps.ages.searchsorted(age, side="right")) - 1
    return float(steps.values[max(index, 0)])


def round_ticks(highest: float, most: int) -> list[float]:
    """0 and multiples of 1, 2 or 5 times a power of ten up to the highest value.

    As many as possible but at most `most` above 0; where that leaves none, as few as possible.
    """
    if highest <= 0:
        return [0.0]
    power = 10.0 ** (floor(log10(highest / max(most, 1))) - 1)
    steps = [m * power for m in (1, 2, 5, 10, 20, 50, 100)]
    fitting = [s for s in steps if 1 <= floor(highest / s + 1e-9) <= most]
    step = fitting[0] if fitting else max(s for s in steps if s <= highest * (1 + 1e-9))
    return [step * n for n in range(floor(highest / step + 1e-9) + 1)]


def count_ticks(highest: float, most: int) -> list[float]:
    """The same in whole numbers."""
    return [t for t in round_ticks(ceil(highest), most) if t == int(t)]


def _steps(values: Sequence[tuple[int, float]], end: int) -> Steps:
    ages, heights, before = [float(min(0, *(a for a, _ in values), 0))], [0.0], 0.0
    for age, value in values:
        ages += [float(age), float(age)]
        heights += [before, value]
        before = value
    return Steps(np.array([*ages, float(end)]), np.array([*heights, before]))


def _cut(steps: Steps, keep: npt.NDArray[np.bool_], drop_last: bool) -> Steps:
    ages, values = steps.ages[keep], steps.values[keep]
    return Steps(ages[:-1], values[:-1]) if drop_last and len(ages) > 1 else Steps(ages, values)
