"""Small curves that every plant of the model shares, and the fixed chance of one organ."""

import math
import random

from .scenario import SEED


def logistic(age: float, middle: float, spread: float) -> float:
    """Rises from 0 to 1 round `middle`; `spread` in the units of age."""
    return 1.0 / (1.0 + math.exp(-(age - middle) / spread))


def growth(age: float, middle: float, spread: float) -> float:
    """The logistic, shifted so that it starts at exactly 0 at age 0 and ends at 1."""
    start = logistic(0.0, middle, spread)
    return max(0.0, (logistic(age, middle, spread) - start) / (1.0 - start))


def ramp(value: float, low: float, high: float) -> float:
    """0 up to low, 1 from high, straight between."""
    return min(1.0, max(0.0, (value - low) / (high - low)))


def organ_chance(*what: object) -> random.Random:
    """Random numbers that belong to one organ and stay the same on every day and in every run."""
    return random.Random(":".join(str(part) for part in (SEED, *what)))


GOLDEN_ANGLE_DEG = 137.50776
