"""Reads a logger's file line by line into arrays, as written: units and the wall clock are judged afterwards."""

import csv
import re
from array import array
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, field, replace
from itertools import islice
from math import isfinite, nan
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from growlog.sharing.logger_csv.headings import unit_of
from growlog.sharing.logger_csv.shape import LoggerFileUnreadable, LoggerShape, cells_of, columns_of, shape_of
from growlog.sharing.logger_csv.stamps import StampNotRead, StampReader
from growlog.words import say

TELL_EVERY = 2000
REFUSED_LISTED = 1000
_TEXT_SHOWN = 120
MOST_ROWS = 20_000_000
UNITS = ("", "C", "F", "K", "percent", "fraction")  # a code is the place in this list
_CODE = {unit: code for code, unit in enumerate(UNITS)}
_NUMBER = re.compile(r"([+\-−]?\d{1,7}(?:[.,]\d*)?(?:[eE][+-]?\d{1,2})?)\s*(\D{0,12})")
_NO_VALUE = frozenset(("", "-", "--", "---", "nan", "n/a", "na", "null", "none", "err", "error", "inf"))

Progress = Callable[[int, int], None]  # bytes read so far and in all
Cancelled = Callable[[], bool]


@dataclass(frozen=True)
class RefusedRow:
    """A line that could not be read. line: from 1. text: what it said, cut short."""

    line: int
    reason: str
    text: str


@dataclass(frozen=True, eq=False)
class LoggerRows:
    """The rows of a file as written, in the order of the file.

    stamp_s: seconds since 1970, of UTC where is_utc, else of the wall clock. Values are NaN where none was written;
    their unit codes are places in UNITS. order_open: days could be read as day-month or as month-day.
    """

    shape: LoggerShape
    line: NDArray[np.int64]
    stamp_s: NDArray[np.int64]
    is_utc: NDArray[np.bool_]
    temperature: NDArray[np.float64]
    temperature_unit: NDArray[np.int8]
    humidity: NDArray[np.float64]
    humidity_unit: NDArray[np.int8]
    refused: tuple[RefusedRow, ...]
    refused_count: int
    order_open: bool
    order: str


def read_logger_file(
    path: Path, order: str = "", on_progress: Progress | None = None, cancelled: Cancelled | None = None
) -> LoggerRows | None:
    """All rows of a file, None where cancelled; LoggerFileUnreadable with a sentence, or OSError.

    order: "dmy" or "mdy", how days are written that do not begin with the year; "": as the file itself proves.
    """
    shape = shape_of(path)
    reading = _Reading(shape, StampReader(order or "dmy"))
    if not reading.run(path, on_progress, cancelled):
        return None
    shown = reading.stamps.order_shown
    if not order and shown == "mdy":  # what was read as day-month proves to be month-day
        reading = _Reading(shape, StampReader("mdy"))
        if not reading.run(path, on_progress, cancelled):
            return None
    ambiguous = not order and not shown and reading.stamps.most_first > 0
    return reading.rows(ambiguous)


def texts_of_lines(path: Path, encoding: str, numbers: Collection[int]) -> dict[int, str]:
    """What lines say, by their number from 1, cut short; without those of a file that is gone by now."""
    wanted = frozenset(numbers)
    try:
        with path.open(encoding=encoding, errors="replace", newline="") as file:
            lines = islice(enumerate(file, start=1), max(wanted, default=0))
            return {number: _cut(line) for number, line in lines if number in wanted}
    except OSError:
        return {}


def _cut(line: str) -> str:
    return line.strip()[:_TEXT_SHOWN]


@dataclass
class _Reading:
    """The arrays while they grow."""

    shape: LoggerShape
    stamps: StampReader
    line: "array[int]" = field(default_factory=lambda: array("q"))
    stamp_s: "array[int]" = field(default_factory=lambda: array("q"))
    is_utc: "array[int]" = field(default_factory=lambda: array("b"))
    temperature: "array[float]" = field(default_factory=lambda: array("d"))
    temperature_unit: "array[int]" = field(default_factory=lambda: array("b"))
    humidity: "array[float]" = field(default_factory=lambda: array("d"))
    humidity_unit: "array[int]" = field(default_factory=lambda: array("b"))
    refused: list[RefusedRow] = field(default_factory=list)
    refused_count: int = 0

    def run(self, path: Path, on_progress: Progress | None, cancelled: Cancelled | None) -> bool:
        """Reads the file; False where cancelled."""
        total = path.stat().st_size
        with path.open(encoding=self.shape.encoding, errors="replace", newline="") as file:
            lines = _told(file, total, on_progress, cancelled)
            for number, line in enumerate(lines, start=1):
                if line is None:
                    return False
                if number > self.shape.heading_line and line.strip():
                    self._take(number, line)
        if len(self.line) > MOST_ROWS:
            raise LoggerFileUnreadable(say("This file has too many rows. Divide it into smaller ones."))
        if on_progress is not None:
            on_progress(total, total)
        return True

    def rows(self, order_open: bool) -> LoggerRows:
        """The arrays as they stand."""
        return LoggerRows(
            self.shape, np.array(self.line, np.int64), np.array(self.stamp_s, np.int64),
            np.array(self.is_utc, np.bool_), np.array(self.temperature), np.array(self.temperature_unit, np.int8),
            np.array(self.humidity), np.array(self.humidity_unit, np.int8),
            tuple(self.refused), self.refused_count, order_open, self.stamps.order,
        )  # fmt: skip

    def _take(self, number: int, line: str) -> None:
        try:
            cells = cells_of(line, self.shape.separator)
            stamp_s, is_utc = self._stamp(cells)
            temperature, its_unit = _value(cells, self.shape.temperature, self.shape.temperature_unit)
            humidity, humid_unit = _value(cells, self.shape.humidity, self.shape.humidity_unit)
        except StampNotRead:
            if not self._is_heading(line):
                self._refuse(number, line, say("The day and time of this row cannot be read."))
        except (_NoNumber, csv.Error) as error:
            self._refuse(number, line, say("{cell} is not a number.", cell=str(error)[:40]))
        else:
            if temperature != temperature and humidity != humidity:
                self._refuse(number, line, say("This row has neither a temperature nor a humidity."))
                return
            self.line.append(number)
            self.stamp_s.append(stamp_s)
            self.is_utc.append(is_utc)
            self.temperature.append(temperature)
            self.temperature_unit.append(its_unit)
            self.humidity.append(humidity)
            self.humidity_unit.append(humid_unit)

    def _stamp(self, cells: list[str]) -> tuple[int, bool]:
        try:
            text = " ".join(cells[i].strip() for i in self.shape.stamp)
        except IndexError as error:
            raise StampNotRead from error
        stamp_s, is_utc = self.stamps.read(text)
        if not is_utc and self.shape.offset_s is not None:
            return stamp_s - self.shape.offset_s, True
        return stamp_s, is_utc

    def _is_heading(self, line: str) -> bool:
        """Whether a logger that started anew wrote its heading again; its units hold from there on."""
        columns = columns_of(cells_of(line, self.shape.separator))
        if columns is None:
            return False
        units = (columns.headings[i].unit if i is not None else "" for i in (columns.temperature, columns.humidity))
        temperature_unit, humidity_unit = units
        self.shape = replace(
            self.shape, stamp=columns.stamp, temperature=columns.temperature, humidity=columns.humidity,
            temperature_unit=temperature_unit, humidity_unit=humidity_unit,
        )  # fmt: skip
        return True

    def _refuse(self, number: int, line: str, reason: str) -> None:
        self.refused_count += 1
        if len(self.refused) < REFUSED_LISTED:
            self.refused.append(RefusedRow(number, reason, _cut(line)))


class _NoNumber(Exception):
    """A cell that should hold a number; str() is the cell."""


def _value(cells: list[str], column: int | None, unit: str) -> tuple[float, int]:
    if column is None or column >= len(cells):
        return nan, 0
    cell = cells[column].strip()
    try:
        value = float(cell)
    except ValueError:
        return _written_value(cell, unit)
    return (value if isfinite(value) else nan), _CODE[unit]


def _written_value(cell: str, unit: str) -> tuple[float, int]:
    if cell.casefold() in _NO_VALUE:
        return nan, 0
    found = _NUMBER.fullmatch(cell)
    if found is None:
        raise _NoNumber(cell)
    own = unit_of(found[2]) if found[2] else ""
    if found[2].strip() and not own:
        raise _NoNumber(cell)
    return float(found[1].replace(",", ".").replace("−", "-")), _CODE[own or unit]


def _told(
    file: "Iterator[str]", total: int, on_progress: Progress | None, cancelled: Cancelled | None
) -> Iterator[str | None]:
    """The lines, telling now and then how far it is; None once cancelled."""
    seen = 0
    for number, line in enumerate(file):
        seen += len(line)
        if number % TELL_EVERY == 0:
            if cancelled is not None and cancelled():
                yield None
                return
            if on_progress is not None:
                on_progress(min(seen, total), total)
        yield line
