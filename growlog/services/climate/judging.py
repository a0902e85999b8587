"""The rows of a logger file judged: units made one, the wall clock to UTC, and what cannot be true refused."""

from collections.abc import Mapping
from dataclasses import dataclass
from zoneinfo import ZoneInfo

import numpy as np
from numpy.typing import NDArray

from growlog.calculations.climate_day import AirSamples
from growlog.records.limits import limit
from growlog.services.climate.wall_clock import RepeatedHour, moments_of
from growlog.sharing.logger_csv.reader import REFUSED_LISTED, UNITS, LoggerRows, RefusedRow
from growlog.sharing.logger_csv.stamps import FIRST_YEAR
from growlog.words import say

Floats = NDArray[np.float64]
Mask = NDArray[np.bool_]
_CELSIUS, _FAHRENHEIT, _KELVIN, _PERCENT, _FRACTION = (UNITS.index(u) for u in ("C", "F", "K", "percent", "fraction"))
_FIRST_S = int(np.datetime64(f"{FIRST_YEAR}-01-01", "s").astype(np.int64))


@dataclass(frozen=True, eq=False)
class Judged:
    """The samples that can go in, in the order of time and each moment once, and what was found about the file.

    small_humidities: rows whose humidity is up to 1 without a word on it. temperature_unit_open: some rows name none.
    """

    at_s: NDArray[np.int64]
    temperature_c: Floats
    humidity_percent: Floats
    refused: tuple[RefusedRow, ...]
    refused_count: int
    repeated_count: int
    in_repeated_hour: int
    small_humidities: int
    temperature_unit_open: bool
    mixed_units: bool

    @property
    def samples(self) -> AirSamples:
        """The samples for calculations."""
        return AirSamples(self.at_s, self.temperature_c, self.humidity_percent)


def judged(
    rows: LoggerRows, zone: ZoneInfo, *, temperature_unit: str, humidity: str, repeated: RepeatedHour, latest_s: int
) -> Judged:
    """The rows judged by the answers given; temperature_unit and humidity "" where not answered.

    Stamps before the year 2000 and after latest_s are refused: the logger's clock was not set.
    """
    wall = ~rows.is_utc
    moments = moments_of(rows.stamp_s[wall], zone, repeated)
    at_s = rows.stamp_s.copy()
    at_s[wall] = moments.utc_s
    missing = np.zeros(len(at_s), np.bool_)
    missing[wall] = moments.missing
    temperature_c = _celsius(rows, temperature_unit)
    small = _small(rows)
    humidity_percent = _percent(rows, small, humidity)
    refused = _Refused(list(rows.refused), rows.refused_count, rows.line)
    good = refused.add_all({
        say("This hour did not exist: the clocks went forward over it."): missing,
        say("The logger's clock was not set: this day cannot be."): (at_s < _FIRST_S) | (at_s > latest_s),
        say("The temperature is outside what a room can have."): _outside(temperature_c, "air_temperature_c"),
        say("The humidity is outside 0 to 100 %."): _outside(humidity_percent, "relative_humidity_percent"),
    })  # fmt: skip
    kept, repeats = _each_moment_once(at_s, temperature_c, humidity_percent, good, refused)
    units = set(np.unique(rows.temperature_unit[~np.isnan(rows.temperature)]).tolist())
    humid_units = set(np.unique(rows.humidity_unit[~np.isnan(rows.humidity)]).tolist())
    return Judged(
        at_s[kept], temperature_c[kept], humidity_percent[kept],
        tuple(sorted(refused.listed, key=lambda r: r.line)), refused.count, repeats,
        int(moments.repeated.sum()), int(small.sum()), 0 in units, len(units) > 1 or len(humid_units) > 1,
    )  # fmt: skip


@dataclass
class _Refused:
    listed: list[RefusedRow]
    count: int
    line: NDArray[np.int64]

    def add_all(self, reasons: Mapping[str, Mask]) -> Mask:
        """Refuses what each reason holds for, each row by its first; the rows that are left."""
        good = np.ones(len(self.line), np.bool_)
        for reason, mask in reasons.items():
            self.add(reason, np.flatnonzero(mask & good))
            good &= ~mask
        return good

    def add(self, reason: str, where: NDArray[np.intp]) -> None:
        self.count += len(where)
        room = max(0, REFUSED_LISTED - len(self.listed))
        self.listed += [RefusedRow(int(self.line[i]), reason, "") for i in where[:room]]


def _celsius(rows: LoggerRows, answer: str) -> Floats:
    unit = np.where(rows.temperature_unit == 0, UNITS.index(answer or "C"), rows.temperature_unit)
    value = np.where(unit == _FAHRENHEIT, (rows.temperature - 32) / 1.8, rows.temperature)
    return np.asarray(np.round(np.where(unit == _KELVIN, value - 273.15, value), 4), np.float64)


def _small(rows: LoggerRows) -> Mask:
    """Humidities above 0 and up to 1 that no heading or cell calls a part of one."""
    return np.asarray((rows.humidity > 0) & (rows.humidity <= 1) & (rows.humidity_unit != _FRACTION))


def _percent(rows: LoggerRows, small: Mask, answer: str) -> Floats:
    parts = (rows.humidity_unit == _FRACTION) | (small if answer == "fraction" else np.zeros(len(small), np.bool_))
    return np.asarray(np.round(np.where(parts, rows.humidity * 100, rows.humidity), 4), np.float64)


def _outside(values: Floats, key: str) -> Mask:
    bound = limit(key)
    return np.asarray((values < bound.lowest) | (values > bound.highest))


def _each_moment_once(
    at_s: NDArray[np.int64], temperature: Floats, humidity: Floats, good: Mask, refused: _Refused
) -> tuple[NDArray[np.intp], int]:
    """The rows to keep in the order of time. Of two with one stamp the first counts; the other is a repeat if it says
    the same, else it is refused."""
    ordered = np.flatnonzero(good)
    ordered = ordered[np.argsort(at_s[ordered], kind="stable")]
    if not len(ordered):
        return ordered, 0
    starts = np.concatenate([[True], np.diff(at_s[ordered]) > 0])
    first = ordered[np.maximum.accumulate(np.where(starts, np.arange(len(ordered)), 0))]
    same = _alike(temperature, ordered, first) & _alike(humidity, ordered, first)
    refused.add(say("This moment stands in the file already, with other values."), ordered[~starts & ~same])
    return ordered[starts], int((~starts & same).sum())


def _alike(values: Floats, one: NDArray[np.intp], other: NDArray[np.intp]) -> Mask:
    return np.asarray((values[one] == values[other]) | (np.isnan(values[one]) & np.isnan(values[other])))
