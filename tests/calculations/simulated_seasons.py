"""Invented picking seasons of five shapes, drawn from a seed; the fits know two of them (and a steady rate).

A season runs from its first pick to a planned clearing 35 to 100 days later. Fruit ripen at random about the shape's
rate, which also drifts from week to week by a third; the grower comes every 2 to 5 days, misses a week now and then,
takes all that is ripe, and comes a last time on the day of clearing. All ranges: common practice, no source.
"""

from dataclasses import dataclass
from enum import StrEnum

import numpy as np
import numpy.typing as npt

from growlog.calculations.yield_curve import PickPoint

Rates = npt.NDArray[np.float64]


class SeasonShape(StrEnum):
    """How the true rate of ripening runs."""

    LOGISTIC = "logistic"
    GOMPERTZ = "Gompertz"
    STEADY = "slow start, then steady"
    TWO_FLUSHES = "two flushes"
    SUDDEN_STOP = "sudden stop"


@dataclass(frozen=True)
class SimulatedSeason:
    """Picks by plant age up to the planned clearing, where first pick is the first with fruit."""

    shape: SeasonShape
    picks: tuple[PickPoint, ...]
    planned_end: int

    @property
    def first_age(self) -> int:
        """Of the first pick."""
        return self.picks[0].age

    @property
    def total(self) -> int:
        """All fruit."""
        return sum(p.fruit_count for p in self.picks)

    def age_at(self, share: float) -> int:
        """The plant age at a share of the time from first pick to planned clearing."""
        return round(self.first_age + share * (self.planned_end - self.first_age))

    def remaining(self, age: int) -> int:
        """Fruit picked after a plant age."""
        return sum(p.fruit_count for p in self.picks if p.age > age)


def season(shape: SeasonShape, seed: int) -> SimulatedSeason:
    """One season; the same seed gives the same one. Drawn again (from the same stream) where under 12 fruit come."""
    rng = np.random.default_rng([seed, list(SeasonShape).index(shape)])
    while True:
        first, days = int(rng.integers(35, 76)), int(rng.integers(35, 101))
        total = float(np.clip(rng.lognormal(np.log(60), 0.6), 20, 250))
        rate = _rate(shape, (np.arange(days) + 0.5) / days, rng)
        ripe = rng.poisson(total * rate / rate.sum() * _drift(days, rng))
        if shape is SeasonShape.SUDDEN_STOP:
            ripe[int(rng.uniform(0.4, 0.95) * days) :] = 0
        picks = _picks(ripe, first, rng)
        if sum(p.fruit_count for p in picks) >= 12:
            return SimulatedSeason(shape, picks, first + days)


def seasons(count_each: int, first_seed: int) -> list[SimulatedSeason]:
    """So many of each shape, from a seed upwards."""
    return [season(shape, first_seed + i) for shape in SeasonShape for i in range(count_each)]


def _rate(shape: SeasonShape, u: Rates, rng: np.random.Generator) -> Rates:
    if shape is SeasonShape.LOGISTIC:
        z = (u - rng.uniform(0.3, 0.6)) / rng.uniform(0.08, 0.2)
        return np.asarray(np.exp(-z) / (1 + np.exp(-z)) ** 2)
    if shape is SeasonShape.GOMPERTZ:
        z = (u - rng.uniform(0.2, 0.5)) / rng.uniform(0.12, 0.3)
        return np.asarray(np.exp(-z - np.exp(-z)))
    if shape is SeasonShape.TWO_FLUSHES:
        one = np.exp(-0.5 * ((u - rng.uniform(0.12, 0.28)) / rng.uniform(0.07, 0.12)) ** 2)
        two = np.exp(-0.5 * ((u - rng.uniform(0.62, 0.85)) / rng.uniform(0.07, 0.12)) ** 2)
        return np.asarray(one + rng.uniform(0.5, 1.2) * two + 0.08)
    if shape is SeasonShape.SUDDEN_STOP:
        return _rate(SeasonShape.LOGISTIC if rng.random() < 0.5 else SeasonShape.STEADY, u, rng)
    return np.minimum(u / rng.uniform(0.05, 0.2), 1.0) * (1 + rng.uniform(-0.4, 0.4) * u)


def _drift(days: int, rng: np.random.Generator) -> Rates:
    weeks = rng.gamma(9.0, 1 / 9.0, size=days // 7 + 1)
    return np.asarray(np.repeat(weeks, 7)[:days])


def _picks(ripe: npt.NDArray[np.int64], first: int, rng: np.random.Generator) -> tuple[PickPoint, ...]:
    usual = rng.uniform(2, 4.5)
    day, taken, picks = 0, 0, []
    while day < len(ripe):
        gap = 8 if rng.random() < 0.04 else max(1, round(rng.normal(usual, 0.8)))
        day = min(day + gap, len(ripe))
        count = int(ripe[taken:day].sum())
        taken = day
        if count:  # a session that finds nothing is not written down
            picks.append(PickPoint(first + day, count, float(np.round(count * rng.normal(90, 8), 0))))
    return tuple(picks)
