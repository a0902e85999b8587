"""Where the labels of a chart's axis stand."""

from itertools import pairwise
from math import ceil, floor, log10

from growlog.words import show_number


def round_steps(low: float, high: float, most: int, whole: bool = False) -> list[float]:
    """Multiples of 1, 2 or 5 times a power of ten within the range, about as many as fit and at most `most`."""
    span = high - low
    if span <= 0 or most < 1:
        return [low]
    step = _step(span / most)
    if whole:
        step = max(1.0, float(ceil(step)))
    first, last = ceil(low / step - 1e-9), floor(high / step + 1e-9)
    return [n * step for n in range(first, last + 1)]


def number_words(values: list[float]) -> list[str]:
    """Numbers in the locale's form with as many decimals as tell them apart."""
    gap = min((b - a for a, b in pairwise(values)), default=1.0)
    decimals = max(0, -floor(log10(gap) + 1e-9)) if gap > 0 else 0
    return [show_number(v, min(decimals, 6)) for v in values]


def _step(least: float) -> float:
    power = 10.0 ** floor(log10(least))
    return float(next(m * power for m in (1, 2, 5, 10) if m * power >= least * (1 - 1e-9)))
