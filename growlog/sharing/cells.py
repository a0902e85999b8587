"""Values to the text of a CSV cell and back, without loss, and safe to open in a spreadsheet."""

import math
import re
from dataclasses import dataclass
from datetime import UTC, date, datetime, time
from decimal import Decimal
from enum import StrEnum
from typing import Any

from growlog.records.limits import Limit
from growlog.words import say

# What a spreadsheet takes for the start of a formula, behind any apostrophes that were there before.
_FORMULA = re.compile(r"'*[=+\-@\t\r]")
_GUARDED = re.compile(r"'+[=+\-@\t\r]")
_WHOLE = re.compile(r"-?[0-9]{1,18}")
_NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_TIME = re.compile(r"[0-9]{2}:[0-9]{2}:[0-9]{2}(\.[0-9]{6})?")
_MOMENT = re.compile(rf"{_DATE.pattern}T{_TIME.pattern}Z")


class Sort(StrEnum):
    """The types of Table Schema that are used."""

    STRING = "string"
    INTEGER = "integer"
    NUMBER = "number"
    BOOLEAN = "boolean"
    DATE = "date"
    TIME = "time"
    DATETIME = "datetime"


@dataclass(frozen=True)
class Column:
    """A column of a table. required: no cell is empty; empty_is_none: an empty cell is None, else an empty text.

    lowest, highest: of a number, None for no bound. points_to: the table whose id it holds. default: its value where a
    package has no such column.
    """

    name: str
    sort: Sort
    description: str
    required: bool = False
    empty_is_none: bool = True
    words: type[StrEnum] | None = None
    choices: tuple[str, ...] = ()
    lowest: float | None = None
    highest: float | None = None
    bound: Limit | None = None
    points_to: str = ""
    default: Any = None


def guard(text: str) -> str:
    """The text, with an apostrophe before it where a spreadsheet would take it for a formula."""
    return f"'{text}" if _FORMULA.match(text) else text


def unguard(text: str) -> str:
    """The text that `guard` was given."""
    return text[1:] if _GUARDED.match(text) else text


def write_cell(value: Any) -> str:
    """The text of a cell: dates and times by ISO 8601, moments in UTC with Z, numbers without an exponent."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return _decimal_text(value)
    if isinstance(value, datetime):
        return f"{value.astimezone(UTC).replace(tzinfo=None).isoformat()}Z"
    if isinstance(value, (date, time)):
        return value.isoformat()
    return guard(str(value))


def read_cell(column: Column, text: str) -> Any:
    """The value of a cell; ValueError with a sentence for a text that is none of this column."""
    if text == "":
        if column.required:
            raise ValueError(say("This must not be empty."))
        return None if column.empty_is_none else ""
    if column.sort is Sort.STRING:
        return _word(column, unguard(text))
    if column.sort in (Sort.INTEGER, Sort.NUMBER):
        return _bounded(column, text)
    if column.sort is Sort.BOOLEAN:
        if text not in ("true", "false"):
            raise ValueError(say("{value} is neither true nor false.", value=text))
        return text == "true"
    return _moment(column.sort, text)


def _decimal_text(value: float) -> str:
    text = format(Decimal(repr(value)), "f")
    return text[:-2] if text.endswith(".0") else text


def _word(column: Column, text: str) -> Any:
    if column.choices and text not in column.choices:
        raise ValueError(say("{value} is none of: {words}.", value=text, words=", ".join(column.choices)))
    return column.words(text) if column.words else text


def _bounded(column: Column, text: str) -> float:
    value = _number(column.sort, text)
    below = column.lowest is not None and value < column.lowest
    above = column.highest is not None and value > column.highest
    if below or above:
        raise ValueError(say("{value} is outside {allowed}.", value=text, allowed=_allowed(column)))
    return value


def _number(sort: Sort, text: str) -> float:
    if sort is Sort.INTEGER:
        if not _WHOLE.fullmatch(text):
            raise ValueError(say("{value} is not a whole number.", value=text))
        return int(text)
    value = float(text) if _NUMBER.fullmatch(text) else math.inf
    if math.isinf(value):
        raise ValueError(say("{value} is not a number with a decimal point.", value=text))
    return value


def _allowed(column: Column) -> str:
    if column.highest is None:
        return say("what is allowed, at least {lowest}", lowest=write_cell(column.lowest))
    unit = column.bound.unit if column.bound else ""
    highest = f"{write_cell(float(column.highest))} {unit}".strip()
    return say("what is allowed, {lowest} to {highest}", lowest=write_cell(float(column.lowest or 0)), highest=highest)


def _moment(sort: Sort, text: str) -> date | time:
    patterns = {Sort.DATE: _DATE, Sort.TIME: _TIME, Sort.DATETIME: _MOMENT}
    forms = {Sort.DATE: "2026-01-18", Sort.TIME: "18:41:02", Sort.DATETIME: "2026-01-18T17:41:02Z"}
    try:
        if not patterns[sort].fullmatch(text):
            raise ValueError
        if sort is Sort.DATETIME:
            return datetime.fromisoformat(text[:-1]).replace(tzinfo=UTC)
        return (date if sort is Sort.DATE else time).fromisoformat(text)
    except ValueError as error:
        raise ValueError(say("{value} is not of the form {form}.", value=text, form=forms[sort])) from error
