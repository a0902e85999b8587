"""Whether the flowers of late bring what the season's set rate promises: a plant that wanes sets less than it did."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp

from growlog.calculations.flower_likelihood import ready_by
from growlog.calculations.flower_records import Flowers
from growlog.calculations.fruit_set import FruitSet
from growlog.calculations.yield_curve import PickPoint
from growlog.words import say

LATE_DAYS = 14
# How much is believed before anything is seen, in fruit; how much picks scatter; when a difference is worth a sentence.
# Common practice, no source.
_BELIEF, _DISPERSION, _TOLD_BELOW = 2.0, 1.5, 0.75
_MOST = 1.5


@dataclass(frozen=True)
class LatePicks:
    """Fruit picked in the last three weeks, culls too, and how many the flowers promised at the season's set rate."""

    picked: int
    promised: float

    @property
    def share(self) -> float:
        """Picked over promised, drawn towards 1 where little was to be seen; at most 1.5."""
        seen = (_BELIEF + self.picked / _DISPERSION) / (_BELIEF + self.promised / _DISPERSION)
        return min(seen, _MOST)

    @property
    def sentence(self) -> str:
        """That fewer came than promised, "" where they did come."""
        if self.share >= _TOLD_BELOW:
            return ""
        return say(
            "In the last {days} days the flowers brought {n} fruit where that set rate promised about {m}: the plant "
            "may be waning, so less is reckoned with.", days=LATE_DAYS, n=self.picked, m=round(self.promised),
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
