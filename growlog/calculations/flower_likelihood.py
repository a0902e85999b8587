"""The likelihood of a set rate and of days from flower to ready fruit, and where it is highest."""

from collections.abc import Sequence
from math import exp, log

import numpy as np
import numpy.typing as npt

from growlog.calculations.curve_shapes import Floats
from growlog.calculations.flower_records import ExplainedSession, Flowers, SetCheck, TaggedFlower, UsualLag

# Weak beliefs: a spread of days of a fifth of them; a set rate of anything. Common practice, no source.
USUAL_SPREAD, SPREAD_SD, LOGIT_SD = 0.2, 0.4, 2.0
LEAST_LAG_SD = 0.2
_STEP = 1e-4


def ready_by(days: npt.ArrayLike, median_days: float, spread: float) -> Floats:
    """The share of set fruit that is ready so many days after flowering (lognormal), 0 before the flower."""
    from scipy.special import ndtr  # here, since loading it takes longer than most commands run

    safe = np.maximum(np.asarray(days, dtype=float), 1e-9)
    return np.asarray(ndtr((np.log(safe) - log(median_days)) / spread))


class FlowerLikelihood:
    """Of logit rate, log median days and log spread, given all that is known of the flowers."""

    def __init__(
        self, flowers: Sequence[Flowers], sessions: Sequence[ExplainedSession], tags: Sequence[TaggedFlower],
        checks: Sequence[SetCheck], usual: UsualLag, as_of_age: int,
    ) -> None:  # fmt: skip
        self.flowers, self.sessions, self.tags, self.usual = list(flowers), list(sessions), list(tags), usual
        self._counts = np.array([f.count for f in flowers], dtype=float)
        ages = np.array([f.age for f in flowers], dtype=float)
        self._since = np.array([s.age for s in sessions], dtype=float)[:, None] - ages[None, :]
        self._before = np.array([s.previous_age for s in sessions], dtype=float)[:, None] - ages[None, :]
        self._picked = np.array([s.explained for s in sessions], dtype=float)
        self._set = sum(max(c.fruit_set, 0) for c in checks)
        self._dropped = sum(max(c.dropped, 0) for c in checks)
        self._read_tags(as_of_age)

    def maximum(self) -> tuple[Floats, Floats]:
        """The most likely numbers and their covariance."""
        from scipy.optimize import minimize

        start = np.array([0.5, log(self.usual.middle), log(USUAL_SPREAD)])
        found = minimize(self.cost, start, method="L-BFGS-B", bounds=[(-7, 7), (-1.5, 5.5), (-3.5, 0.5)])
        numbers = np.asarray(found.x)
        return numbers, self._covariance(numbers)

    def cost(self, numbers: Floats) -> float:
        """Minus the logarithm of likelihood and weak beliefs."""
        expected = self._expected(numbers)
        picks = float(np.sum(expected - self._picked * np.log(expected)))
        return picks + self._followed(numbers) + self._beliefs(numbers)

    def _expected(self, numbers: Floats) -> Floats:
        return np.asarray(np.maximum(self._chances(numbers) @ self._counts, 1e-6))

    def _chances(self, numbers: Floats) -> Floats:
        """Of each session (row) to pick a flower of each day (column)."""
        rate, median, spread = _meaning(numbers)
        return np.asarray(rate * (ready_by(self._since, median, spread) - ready_by(self._before, median, spread)))

    def _followed(self, numbers: Floats) -> float:
        """Of tags and checks, each flower by itself."""
        rate, median, spread = _meaning(numbers)
        picked = rate * (ready_by(self._tag_since, median, spread) - ready_by(self._tag_before, median, spread))
        hangs = rate * (1 - ready_by(self._hanging, median, spread)) + (1 - rate) * self._not_dropped
        known = np.log(np.maximum(np.concatenate([picked, hangs]), 1e-9)).sum()
        return -float(known) - self._set * log(rate) - self._dropped * log(1 - rate)

    def _read_tags(self, as_of_age: int) -> None:
        """Days of flowers picked, to their pick and to the session before, and of those that still hang."""
        picked = [(t, t.picked_age) for t in self.tags if t.picked_age is not None]
        self._tag_since = np.array([age - t.flower_age for t, age in picked], dtype=float)
        self._tag_before = np.array(
            [0 if t.previous_session is None else t.previous_session - t.flower_age for t, _ in picked], dtype=float
        )
        fallen = [t.dropped_age - t.flower_age for t in self.tags if t.picked_age is None and t.dropped_age is not None]
        self._dropped += len(fallen)
        self._hanging = np.array(
            [as_of_age - t.flower_age for t in self.tags if t.picked_age is None and t.dropped_age is None], dtype=float
        )
        self._not_dropped = np.array([_not_dropped_by(days, fallen) for days in self._hanging])

    def _beliefs(self, numbers: Floats) -> float:
        lag_sd = max(LEAST_LAG_SD, log(max(self.usual.high_days / max(self.usual.low_days, 0.5), 1.0)) / 2)
        off = (
            numbers[0] / LOGIT_SD,
            (numbers[1] - log(self.usual.middle)) / lag_sd,
            (numbers[2] - log(USUAL_SPREAD)) / SPREAD_SD,
        )
        return 0.5 * float(sum(o * o for o in off))

    def _covariance(self, numbers: Floats) -> Floats:
        """Sandwich: curvature of the whole, with the true variance of the picks in place of Poisson's."""
        steps = np.eye(3) * _STEP
        curvature = np.array([[self._second(numbers, a, b) for b in steps] for a in steps])
        slope = np.array([(self._expected(numbers + a) - self._expected(numbers - a)) / (2 * _STEP) for a in steps])
        expected, chances = self._expected(numbers), self._chances(numbers)
        variance = np.diag(expected) - (chances * self._counts) @ chances.T
        scaled = slope / expected
        middle = curvature - scaled @ np.diag(expected) @ scaled.T + scaled @ variance @ scaled.T
        bread = np.linalg.pinv(_positive(curvature))
        return np.asarray(bread @ _positive(middle) @ bread)

    def _second(self, numbers: Floats, a: Floats, b: Floats) -> float:
        cost = self.cost
        return (cost(numbers + a + b) - cost(numbers + a - b) - cost(numbers - a + b) + cost(numbers - a - b)) / (
            4 * _STEP**2
        )


def _meaning(numbers: Floats) -> tuple[float, float, float]:
    rate = 1 / (1 + exp(-min(max(float(numbers[0]), -8.0), 8.0)))
    return rate, exp(float(numbers[1])), exp(float(numbers[2]))


def _not_dropped_by(days: float, drop_days: Sequence[int]) -> float:
    """Of flowers that fail, the share still hanging; all where no drop was noted.

    Failures show sooner than fruit, so a flower that still hangs says more than that its time has not come.
    """
    return sum(d > days for d in drop_days) / len(drop_days) if drop_days else 1.0


def _positive(matrix: Floats) -> Floats:
    """The nearest matrix that can be a covariance."""
    values, vectors = np.linalg.eigh((matrix + matrix.T) / 2)
    return np.asarray((vectors * np.maximum(values, 1e-6)) @ vectors.T)
