"""A computed figure that carries how it was worked out: its inputs, the method in words, the source, how sure it is."""

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from growlog.words import mark

Value = float | int | str | Decimal


class Sure(StrEnum):
    """How sure a figure is: by a published formula or factor, by the habit of the trade, or only roughly."""

    PUBLISHED = "published"
    COMMON_PRACTICE = "common practice"
    ESTIMATE = "estimate"


DEFINITION = mark("by definition")
COMMON_PRACTICE = mark("common practice, no source")


@dataclass(frozen=True)
class Input:
    """A number that went in, as used. date: the civil day that it holds for, None where it has none."""

    name: str
    value: Value
    unit: str = ""
    date: dt.date | None = None


@dataclass(frozen=True)
class Figure:
    """A figure with its explanation.

    value: None where there is none yet, such as a cost per fruit before the first fruit. low, high: the range within
    which it lies, None where it has none. method: the formula in words. source: author, title, year, or "common
    practice, no source". as_of: the day up to which it counts, None where days do not matter.
    """

    key: str
    value: Value | None
    unit: str
    inputs: tuple[Input, ...]
    method: str
    source: str
    sure: Sure
    low: Value | None = None
    high: Value | None = None
    as_of: dt.date | None = None
