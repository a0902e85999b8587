"""A computed figure with how it is worked out: inputs, method, source and how sure it is, beside the calculation."""

import datetime
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from growlog.words import mark

Value = float | int | str | Decimal
DEFINITION = mark("by definition")


class Sure(StrEnum):
    """How sure a figure is."""

    PUBLISHED = "published"
    COMMON_PRACTICE = "common practice"
    ESTIMATE = "estimate"


@dataclass(frozen=True)
class Input:
    """What went into a figure, with the civil date it holds for, where it has one."""

    name: str
    value: Value
    unit: str = ""
    date: datetime.date | None = None


@dataclass(frozen=True)
class Figure:
    """A figure. value None: none yet. low, high: its range, where it has one. method: in words."""

    key: str
    value: Value | None
    unit: str
    inputs: tuple[Input, ...]
    method: str
    source: str
    sure: Sure
    low: Value | None = None
    high: Value | None = None
    as_of: datetime.date | None = None
