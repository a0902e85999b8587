"""The shape of a logger's file: encoding, separator, and which column holds what."""

import csv
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from growlog.sharing.logger_csv.headings import Heading, LoggerColumn, heading_of
from growlog.words import say

SEPARATORS = (";", "\t", ",", "|")
_LOOKED_AT_BYTES = 1 << 18
_HEADING_LINES = 80


class LoggerFileUnreadable(Exception):
    """The file is no logger file that can be read; str() is the sentence for the user."""


@dataclass(frozen=True)
class LoggerShape:
    """How a file is read. stamp: the columns of the stamp, one, or two for day and time.

    temperature, humidity: columns, None where there is none. Their units as headings name them, "" where they do not.
    offset_s: what the stamps' heading says they are ahead of UTC, None where it says nothing. heading_line: from 1.
    left_out: headings of further temperatures and humidities.
    """

    encoding: str
    separator: str
    heading_line: int
    stamp: tuple[int, ...]
    temperature: int | None
    humidity: int | None
    temperature_unit: str = ""
    humidity_unit: str = ""
    offset_s: int | None = None
    left_out: tuple[str, ...] = ()


def shape_of(path: Path) -> LoggerShape:
    """The shape of a file; LoggerFileUnreadable where no heading names a time and a temperature or humidity."""
    with path.open("rb") as file:
        start = file.read(_LOOKED_AT_BYTES)
    encoding = _encoding(start)
    # The last line may be cut off in the middle by the end of what was looked at.
    lines = start.decode(encoding, "replace").splitlines()
    if len(start) == _LOOKED_AT_BYTES:
        lines.pop()
    for number, line in enumerate(lines[:_HEADING_LINES], start=1):
        for separator in SEPARATORS:
            if found := columns_of(cells_of(line, separator)):
                return _shape(encoding, separator, number, found)
    raise LoggerFileUnreadable(
        say("No line of this file heads a time and a temperature or a humidity. Is it a logger's file as CSV?")
    )


@dataclass(frozen=True)
class Columns:
    """The columns that a heading line names, with what each means."""

    stamp: tuple[int, ...]
    temperature: int | None
    humidity: int | None
    headings: dict[int, Heading]
    left_out: tuple[str, ...]


def columns_of(cells: Sequence[str]) -> Columns | None:
    """The columns of a heading line, None where the line heads no time, or neither temperature nor humidity."""
    headings = {i: found for i, cell in enumerate(cells) if (found := heading_of(cell)) is not None}
    stamp = _stamp_columns(headings)
    temperature, more = _first(headings, LoggerColumn.TEMPERATURE, "C")
    humidity, more_humid = _first(headings, LoggerColumn.HUMIDITY, "percent")
    if not stamp or (temperature is None and humidity is None):
        return None
    return Columns(stamp, temperature, humidity, headings, tuple(cells[i].strip() for i in (*more, *more_humid)))


def cells_of(line: str, separator: str) -> list[str]:
    """The cells of a single line."""
    if '"' not in line:
        return line.rstrip("\r\n").split(separator)
    return next(csv.reader([line], delimiter=separator), [])


def _shape(encoding: str, separator: str, line: int, columns: Columns) -> LoggerShape:
    def unit(column: int | None) -> str:
        return "" if column is None else columns.headings[column].unit

    offsets = [h.offset_s for i in columns.stamp if (h := columns.headings[i]).offset_s is not None]
    return LoggerShape(
        encoding, separator, line, columns.stamp, columns.temperature, columns.humidity,
        unit(columns.temperature), unit(columns.humidity), offsets[0] if offsets else None, columns.left_out,
    )  # fmt: skip


def _encoding(start: bytes) -> str:
    if start.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "utf-16"
    if b"\x00" in start:
        raise LoggerFileUnreadable(say("This is not a table as text. Save the logger's file as CSV."))
    try:
        start[: start.rfind(b"\n") + 1].decode("utf-8-sig")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8-sig"


def _stamp_columns(headings: dict[int, Heading]) -> tuple[int, ...]:
    where = {h.column: i for i, h in reversed(headings.items())}
    if LoggerColumn.STAMP in where:
        return (where[LoggerColumn.STAMP],)
    both = LoggerColumn.DAY in where and LoggerColumn.TIME in where
    if both:
        return where[LoggerColumn.DAY], where[LoggerColumn.TIME]
    alone = where.get(LoggerColumn.TIME, where.get(LoggerColumn.DAY))
    return () if alone is None else (alone,)


def _first(headings: dict[int, Heading], column: LoggerColumn, preferred: str) -> tuple[int | None, tuple[int, ...]]:
    """The column taken of those with one meaning: the first in the preferred unit, else the first; then the others."""
    all_of_it = [i for i, heading in headings.items() if heading.column is column]
    if not all_of_it:
        return None, ()
    taken = next((i for i in all_of_it if headings[i].unit == preferred), all_of_it[0])
    return taken, tuple(i for i in all_of_it if i != taken)
