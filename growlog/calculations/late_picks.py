"""Whether the flowers of late bring what the season's set rate promises: a plant that wanes sets less than it did.

It is told, not reckoned with: on simulated seasons a rate scaled by the last weeks' picks foresaw no better.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp

from growlog.calculations.flower_likelihood import ready_by
from growlog.calculations.flower_records import Flowers
from growlog.calculations.fruit_set import FruitSet
from growlog.calculations.yield_curve import PickPoint
from growlog.words import say

LATE_DAYS = 14
_TOLD_BELOW, _LEAST_PROMISED = 0.7, 3.0  # when a difference is worth a sentence; common practice, no source


@dataclass(frozen=True)
class LatePicks:
    """Fruit picked in the last two weeks, culls too, and how many the flowers promised at the season's set rate."""

    picked: int
    promised: float

    @property
    def sentence(self) -> str:
        """That fewer came than promised, "" where they did come or too few were to be expected to tell."""
        if self.promised < _LEAST_PROMISED or self.picked >= _TOLD_BELOW * self.promised:
            return ""
        return say(
            "In the last {days} days {n} fruit came where this set rate promised about {m}: if the plant is waning, "
            "fewer will come.", days=LATE_DAYS, n=self.picked, m=round(self.promised),
        )  # fmt: skip


def late_picks(every: Sequence[Flowers], picks: Sequence[PickPoint], known: FruitSet, as_of_age: int) -> LatePicks:
    """every: all flowers written down, whatever became of them. The days end with the last session, or where one was
    to be expected and none came."""
    end = max(known.last_session_age, as_of_age - _usual_gap(picks))
    start = end - LATE_DAYS
    median, spread = exp(float(known.numbers[1])), exp(float(known.numbers[2]))
    share = sum(
        f.count * float(ready_by(end - f.age, median, spread) - ready_by(start - f.age, median, spread))
        for f in every if f.age < end
    )  # fmt: skip
    picked = sum(p.fruit_count + p.culled_count for p in picks if start < p.age <= end)
    return LatePicks(picked, known.rate.value * share)


def _usual_gap(picks: Sequence[PickPoint]) -> int:
    """The mean days from one session to the next, rounded up."""
    ages = sorted({p.age for p in picks})
    return -(-(ages[-1] - ages[0]) // (len(ages) - 1)) if len(ages) > 1 else LATE_DAYS
