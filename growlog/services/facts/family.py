"""A family of figures: the keys that it promises and how it works them out."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date

from growlog.calculations.explained_figure import COMMON_PRACTICE, DEFINITION, Figure, Input, Sure, Value
from growlog.services.facts.source import FactSource

__all__ = [
    "COMMON_PRACTICE",
    "DEFINITION",
    "FactFamily",
    "FactKey",
    "Figure",
    "Input",
    "Sure",
    "not_told",
    "of_definition",
]


@dataclass(frozen=True)
class FactKey:
    """A figure's key, its unit ("" where it has none or where it is money) and what it means, to be translated."""

    key: str
    unit: str
    meaning: str


@dataclass(frozen=True)
class FactFamily:
    """Figures that belong together. work: gives one figure for each key, its value None where there is none yet."""

    key: str
    name: str
    keys: tuple[FactKey, ...]
    work: Callable[[FactSource], Iterable[Figure]]


def of_definition(
    key: str,
    value: Value | None,
    unit: str,
    inputs: tuple[Input, ...],
    method: str,
    as_of: date,
    *,
    source: str = DEFINITION,
    sure: Sure = Sure.PUBLISHED,
    low: Value | None = None,
    high: Value | None = None,
) -> Figure:
    """A figure as of a day; what binary fractions add to its last digits is taken off."""
    value, low, high = (round(v, 9) if isinstance(v, float) else v for v in (value, low, high))
    return Figure(key, value, unit, inputs, method, source, sure, low, high, as_of)


def not_told(key: str, unit: str, reason: str, source: FactSource) -> Figure:
    """A figure that cannot be told, with the reason in place of the method."""
    return Figure(key, None, unit, (), reason, DEFINITION, Sure.PUBLISHED, as_of=source.as_of)
