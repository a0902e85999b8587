"""What is known of flowers, and which picked fruit they can have brought at all."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import groupby
from math import sqrt

from growlog.calculations.yield_curve import PickPoint
from growlog.words import mark

# A fruit this much sooner or later than usual is not from that flower. Common practice, no source.
SOONEST_OF_LOW, LATEST_OF_HIGH = 0.6, 2.0


class FlowerSource(StrEnum):
    """Which flowers were counted: those pollinated by hand, or those seen open, for crops that set by themselves."""

    POLLINATED = "pollinated"
    SEEN_OPEN = "seen-open"


FLOWER_WORDS = {
    FlowerSource.POLLINATED: mark("flowers pollinated"),
    FlowerSource.SEEN_OPEN: mark("flowers seen open"),
}


@dataclass(frozen=True)
class Flowers:
    """So many flowers of one day, at a plant age."""

    age: int
    count: int


@dataclass(frozen=True)
class SetCheck:
    """What fruit checks saw of flowers whose fate was clear: set and dropped, none of them counted twice."""

    fruit_set: int
    dropped: int


@dataclass(frozen=True)
class TaggedFlower:
    """One flower followed: when open, picked or dropped. previous_session: the last one before its pick, if any."""

    flower_age: int
    picked_age: int | None = None
    previous_session: int | None = None
    dropped_age: int | None = None


@dataclass(frozen=True)
class UsualLag:
    """A crop's usual days from flower to pick (above 0, low not above high), and the source in words."""

    low_days: float
    high_days: float
    source: str

    @property
    def middle(self) -> float:
        """The geometric mean."""
        return sqrt(max(self.low_days, 0.5) * max(self.high_days, 0.5))


@dataclass(frozen=True)
class ExplainedSession:
    """Fruit of one session, culls included, that reported flowers can have brought, and those they cannot."""

    age: int
    previous_age: int
    explained: int
    unexplained: int


def explained_picks(flowers: Sequence[Flowers], picks: Sequence[PickPoint], usual: UsualLag) -> list[ExplainedSession]:
    """Sessions in order, with as many fruit explained as can be at once: each takes the oldest flower that fits it.

    flowers, picks: by age. A flower fits a session from 0.6 times the usual low on until the session after twice the
    usual high.
    """
    left = [[f.age, f.count] for f in flowers]
    soonest, latest = SOONEST_OF_LOW * usual.low_days, LATEST_OF_HIGH * usual.high_days
    sessions: list[ExplainedSession] = []
    previous = -10_000
    for age, same_day in groupby(picks, key=lambda p: p.age):
        fruit = sum(max(p.fruit_count, 0) + max(p.culled_count, 0) for p in same_day)
        explained = 0
        for flower in left:
            fits = age - flower[0] >= soonest and (previous - flower[0] < latest)
            if fits and explained < fruit:
                taken = min(flower[1], fruit - explained)
                flower[1] -= taken
                explained += taken
        sessions.append(ExplainedSession(age, previous, explained, fruit - explained))
        previous = age
    return sessions
