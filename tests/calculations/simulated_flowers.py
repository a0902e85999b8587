"""Invented crops whose flowers, fates and picks are known: for fruit set, days to pick and the next picks.

25 to 70 flowers over 25 to 50 days; a set rate of 40 to 90 %; 5 to 14 days to ready fruit, spread by 12 to 25 %, gamma
or normal where the estimate reckons with a lognormal; sessions every 1 to 4 days. What is called usual is off the truth
by a quarter either way. All ranges: common practice, no source.
"""

from dataclasses import dataclass

import numpy as np

from growlog.calculations.flower_records import Flowers, TaggedFlower, UsualLag
from growlog.calculations.yield_curve import PickPoint


@dataclass(frozen=True)
class SimulatedFlowers:
    """The truth, and what a grower would have written down. end_age: the last session; later: fruit picked by age."""

    rate: float
    days: float
    flowers: tuple[Flowers, ...]
    picks: tuple[PickPoint, ...]
    tags: tuple[TaggedFlower, ...]
    usual: UsualLag
    end_age: int
    ready_ages: tuple[float, ...]

    def picked_between(self, start: int, end: int) -> int:
        """Fruit that gets ready after one plant age and up to another."""
        return sum(start < age <= end for age in self.ready_ages)


def flowering_crop(seed: int) -> SimulatedFlowers:
    """One crop; the same seed gives the same one."""
    rng = np.random.default_rng(seed)
    rate, days, spread = rng.uniform(0.4, 0.9), rng.uniform(5, 14), rng.uniform(0.12, 0.25)
    count, length = int(rng.integers(25, 70)), int(rng.integers(25, 50))
    ages = np.sort(rng.integers(40, 40 + length, count))
    sets = rng.random(count) < rate
    lag = rng.gamma(1 / spread**2, days * spread**2, count) if seed % 2 else rng.normal(days, spread * days, count)
    ready = ages + np.maximum(lag, 1.0)
    sessions = _sessions(int(ages.max()) + int(rng.integers(0, 8)), rng)
    picks = []
    for before, age in zip([0, *sessions], sessions, strict=False):
        fruit = int(np.sum(sets & (ready > before) & (ready <= age)))
        picks += [PickPoint(age, fruit, None)] if fruit else []
    tags = tuple(_tag(int(a), bool(s), float(r), sessions) for a, s, r in zip(ages, sets, ready, strict=True))
    usual = days * rng.lognormal(0, 0.25)
    return SimulatedFlowers(
        rate, days,
        tuple(Flowers(int(age), int(n)) for age, n in zip(*np.unique(ages, return_counts=True), strict=True)),
        tuple(picks), tags, UsualLag(usual / 1.4, usual * 1.4, "simulated"), sessions[-1], tuple(ready[sets].tolist()),
    )  # fmt: skip


def _sessions(end: int, rng: np.random.Generator) -> list[int]:
    ages = [41]
    while ages[-1] < end:
        ages.append(min(ages[-1] + int(rng.integers(1, 5)), end))
    return ages


def _tag(age: int, sets: bool, ready: float, sessions: list[int]) -> TaggedFlower:
    if not sets:
        return TaggedFlower(age, dropped_age=age + 3 if age + 3 <= sessions[-1] else None)
    picked = next((s for s in sessions if s >= ready), None)
    before = None if picked is None else max((s for s in sessions if s < picked), default=None)
    return TaggedFlower(age, picked, before)
