"""Wall-clock times that wander a little from day to day, as a person's do."""

from datetime import time

from .growth_curves import organ_chance


def at_about(hour: int, minute: int, *what: object, spread_min: float = 7.0) -> time:
    """A time near the given one that belongs to `what`; never more than twice the spread away."""
    shift = organ_chance("time", *what).gauss(0, spread_min)
    minutes = hour * 60 + minute + round(max(-2 * spread_min, min(2 * spread_min, shift)))
    return time(minutes // 60, minutes % 60)
