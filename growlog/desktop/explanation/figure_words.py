"""A figure's values, range and certainty as they are read."""

import math
from decimal import Decimal

from growlog.calculations.explained_figure import Figure, Sure, Value
from growlog.records.display import THIN
from growlog.words import say, show_number

_DIGITS = 4  # significant: more than any meter, scale or label can tell


def value_text(value: Value | None, unit: str = "") -> str:
    """A value with its unit; numbers to four significant digits, "none yet" where there is none."""
    if value is None:
        return say("none yet")
    text = _number(value) if isinstance(value, (int, float, Decimal)) else str(value)
    return f"{text}{THIN}{unit}" if unit else text


def range_text(figure: Figure) -> str:
    """Within what it lies, "" where it has no range."""
    if figure.low is not None and figure.high is not None:
        return say("{low} to {high}", low=value_text(figure.low), high=value_text(figure.high, figure.unit))
    if figure.high is not None:
        return say("at most {high}", high=value_text(figure.high, figure.unit))
    return "" if figure.low is None else say("at least {low}", low=value_text(figure.low, figure.unit))


def sure_text(sure: Sure) -> str:
    """How sure it is, in words."""
    words = {
        Sure.PUBLISHED: say("by a published formula"),
        Sure.COMMON_PRACTICE: say("by common practice"),
        Sure.ESTIMATE: say("an estimate"),
    }
    return words[sure]


def _number(value: int | float | Decimal) -> str:
    if isinstance(value, int):
        return str(value)
    if not math.isfinite(value):
        return say("none yet")
    size = abs(float(value))
    decimals = _DIGITS if size == 0 else max(0, min(6, _DIGITS - 1 - math.floor(math.log10(size))))
    text = show_number(float(value), decimals)
    fraction = next((sign for sign in (".", ",", "\u066b") if sign in text), "")
    return text.rstrip("0").rstrip(fraction) if fraction else text
