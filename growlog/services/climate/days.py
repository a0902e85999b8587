"""The derived days of a room's climate: made of the samples of all its files, and made again when these change."""

from collections.abc import Iterable
from datetime import date, timedelta

import numpy as np

from growlog.calculations.climate_day import (
    BRIDGED_S,
    WATCHED_HUMIDITY_PERCENT,
    AirDay,
    AirSamples,
    DayBounds,
    air_days,
    first_counts,
)
from growlog.records.climate_day import ClimateDay, ClimateSample
from growlog.records.entry import Entry, OwnerKind
from growlog.records.light_plan import LightStep
from growlog.records.logger_file import LoggerFile
from growlog.services.climate.wall_clock import day_edges, day_of, moment, utc_of, zone_of
from growlog.services.light.programme import dark_times
from growlog.services.light.statements import step_day
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork

_MOST_DAYS = 400  # days made in one go, so that a long series is not held in memory whole


def rebuild_days(log: OpenLogbook, room_id: str, humid_above_percent: float = WATCHED_HUMIDITY_PERCENT) -> int:
    """Makes all days of a room again from its samples, such as for another humidity to watch; how many there are."""
    with log.unit() as unit:
        count = make_days(unit, room_id, humid_above_percent=humid_above_percent)
        unit.commit()
    return count


def make_days(
    unit: UnitOfWork,
    room_id: str,
    first: date | None = None,
    last: date | None = None,
    *,
    humid_above_percent: float = WATCHED_HUMIDITY_PERCENT,
) -> int:
    """Makes the days of a room within a unit of work, from first to last, all where None; how many were written."""
    files = unit.logger_files.all(room_id=room_id)
    unit.climate_samples.forget_days(room_id, first, last)
    if not files:
        return 0
    room = unit.rooms.get(room_id)
    zone = zone_of(room.zone)
    begins = max(first or date.min, min(day_of(int(f.first_at.timestamp()), zone) for f in files))
    ends = min(last or date.max, max(day_of(int(f.last_at.timestamp()), zone) for f in files))
    count = 0
    while begins <= ends:
        until = min(ends, begins + timedelta(days=_MOST_DAYS - 1))
        days = _days(unit, room_id, files, begins, until, humid_above_percent)
        unit.climate_samples.write_days(room_id, days)
        count += len(days)
        begins = until + timedelta(days=1)
    return count


def _days(
    unit: UnitOfWork, room_id: str, files: list[LoggerFile], first: date, last: date, humid_above: float
) -> list[ClimateDay]:
    zone = zone_of(unit.rooms.get(room_id).zone)
    edges = day_edges(first, last, zone)
    samples = merged_samples(unit, room_id, files, int(edges[0]) - BRIDGED_S, int(edges[-1]) + BRIDGED_S)
    dark = dark_times(unit, room_id, first, last)
    dark_s = None if dark is None else tuple((utc_of(a, zone), utc_of(b, zone)) for a, b in dark)
    found = air_days(samples, DayBounds(edges, dark_s), humid_above_percent=humid_above)
    return [_record(first + timedelta(days=i), day) for i, day in enumerate(found) if day.sample_count]


def remake_days(unit: UnitOfWork, *changed: object) -> None:
    """Makes the days again that depend on changed records: logger files, steps of the light plan, light changes.

    Other records concern no day of the climate. Called where such a record was written, in its unit of work.
    """
    light_from: dict[str, date | None] = {}
    for record in changed:
        if isinstance(record, LoggerFile):
            zone = zone_of(unit.rooms.get(record.room_id).zone)
            first, last = (day_of(int(at.timestamp()), zone) for at in (record.first_at, record.last_at))
            make_days(unit, record.room_id, first - timedelta(days=1), last + timedelta(days=1))
        elif isinstance(record, LightStep):
            _note(light_from, record.room_id, step_day(unit, record))
        elif isinstance(record, Entry) and record.kind == "light":
            for room_id in _rooms_of(unit, record):
                _note(light_from, room_id, record.day)
    for room_id, day in light_from.items():
        if unit.logger_files.all(room_id=room_id):
            make_days(unit, room_id, day)


def _note(light_from: dict[str, date | None], room_id: str, day: date | None) -> None:
    """Keeps the earliest day of each room; None for all of them."""
    before = light_from.get(room_id, day)
    light_from[room_id] = None if before is None or day is None else min(before, day)


def _rooms_of(unit: UnitOfWork, entry: Entry) -> set[str]:
    owner = entry.owner
    if owner.kind is OwnerKind.ROOM:
        return {owner.id}
    crop_id = unit.plants.get(owner.id).crop_id if owner.kind is OwnerKind.PLANT else owner.id
    return {p.room_id for p in unit.placements.all(crop_id=crop_id)}


def merged_samples(unit: UnitOfWork, room_id: str, files: list[LoggerFile], from_s: int, to_s: int) -> AirSamples:
    """A room's samples from one moment until before another; a later file fills only what earlier ones leave open."""
    at = np.zeros(0, np.int64)
    temperature, humidity = np.zeros(0), np.zeros(0)
    for file in sorted(files, key=lambda f: (f.added_at, f.id)):
        if file.last_at.timestamp() < from_s or file.first_at.timestamp() >= to_s:
            continue
        own = as_arrays(unit.climate_samples.samples(room_id, moment(from_s), moment(to_s), file_id=file.id))
        keep = first_counts(at, own.at_s)
        order = np.argsort(joined := np.concatenate([at, own.at_s[keep]]), kind="stable")
        at = joined[order]
        temperature = np.concatenate([temperature, own.temperature_c[keep]])[order]
        humidity = np.concatenate([humidity, own.humidity_percent[keep]])[order]
    return AirSamples(at, temperature, humidity)


def as_arrays(samples: Iterable[ClimateSample]) -> AirSamples:
    """Samples as arrays."""
    rows = [(s.at_utc.timestamp(), _number(s.air_temperature_c), _number(s.relative_humidity_percent)) for s in samples]
    table = np.array(rows, np.float64).reshape(-1, 3)
    return AirSamples(table[:, 0].astype(np.int64), table[:, 1], table[:, 2])


def _number(value: float | None) -> float:
    return float("nan") if value is None else value


def _record(day: date, found: AirDay) -> ClimateDay:
    values = {name: value for name, value in vars(found).items() if name != "covered_minutes"}
    return ClimateDay(day, **values)
