"""The derived days of a room's climate: made of the samples of all its files, and made again when these change."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta

import numpy as np

from growlog.calculations.climate_day import (
    BRIDGED_S,
    WATCHED_HUMIDITY_PERCENT,
    AirDay,
    AirSamples,
    DayBounds,
    Floats,
    Seconds,
    air_days,
    first_counts,
)
from growlog.records.climate_day import ClimateDay, ClimateSample
from growlog.records.entry import Entry, OwnerKind
from growlog.records.light_plan import LightStep
from growlog.records.logger_file import LoggerFile
from growlog.records.room import Room
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
    in_hand: Mapping[str, AirSamples] | None = None,
) -> int:
    """Makes the days of a room within a unit of work, from first to last, all where None; how many were written.

    in_hand: samples of files, by their ids, that need not be read again.
    """
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
        days = _days(unit, files, begins, until, humid_above_percent, in_hand or {})
        unit.climate_samples.write_days(room_id, days)
        count += len(days)
        begins = until + timedelta(days=1)
    return count


def _days(
    unit: UnitOfWork,
    files: list[LoggerFile],
    first: date,
    last: date,
    humid_above: float,
    in_hand: Mapping[str, AirSamples],
) -> list[ClimateDay]:
    room_id = files[0].room_id
    zone = zone_of(unit.rooms.get(room_id).zone)
    edges = day_edges(first, last, zone)
    from_s, to_s = int(edges[0]) - BRIDGED_S, int(edges[-1]) + BRIDGED_S
    parts = []
    for file in sorted(files, key=lambda f: (f.added_at, f.id)):
        if file.last_at.timestamp() >= from_s and file.first_at.timestamp() < to_s:
            parts.append(
                _within(in_hand[file.id], from_s, to_s) if file.id in in_hand else _read(unit, file, from_s, to_s)
            )
    dark = dark_times(unit, room_id, first, last)
    dark_s = None if dark is None else tuple((utc_of(a, zone), utc_of(b, zone)) for a, b in dark)
    found = air_days(merged(parts), DayBounds(edges, dark_s), humid_above_percent=humid_above)
    return [_record(first + timedelta(days=i), day) for i, day in enumerate(found) if day.sample_count]


def _read(unit: UnitOfWork, file: LoggerFile, from_s: int, to_s: int) -> AirSamples:
    found = unit.climate_samples.samples(file.room_id, moment(from_s), moment(to_s), file_id=file.id)
    return as_arrays(found)


def _within(samples: AirSamples, from_s: int, to_s: int) -> AirSamples:
    part = slice(*np.searchsorted(samples.at_s, [from_s, to_s]).tolist())
    return AirSamples(samples.at_s[part], samples.temperature_c[part], samples.humidity_percent[part])


def remake_days(unit: UnitOfWork, *changed: object, in_hand: Mapping[str, AirSamples] | None = None) -> None:
    """Makes the days again that depend on changed records: logger files, rooms, steps of the light plan, light changes.

    Other records concern no day of the climate. Called where such a record was written, in its unit of work.
    """
    light_from: dict[str, date | None] = {}
    for record in changed:
        if isinstance(record, LoggerFile):
            zone = zone_of(unit.rooms.get(record.room_id).zone)
            first, last = (day_of(int(at.timestamp()), zone) for at in (record.first_at, record.last_at))
            days = first - timedelta(days=1), last + timedelta(days=1)
            make_days(unit, record.room_id, *days, in_hand=in_hand)
        elif isinstance(record, Room):
            _note(light_from, record.id, None)
        elif isinstance(record, LightStep):
            _note(light_from, record.room_id, step_day(unit, record))
        elif isinstance(record, Entry) and record.kind == "light":
            for room_id in _rooms_of(unit, record):
                _note(light_from, room_id, record.day)
    for room_id, day in light_from.items():
        if unit.logger_files.all(room_id=room_id):
            make_days(unit, room_id, day)


def moved_rooms(before: object, after: object) -> list[Room]:
    """A room whose zone was changed, so that its days begin at other moments; nothing for any other change."""
    moved = isinstance(before, Room) and isinstance(after, Room) and before.zone != after.zone
    return [after] if moved and isinstance(after, Room) else []


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


def merged(files: Sequence[AirSamples]) -> AirSamples:
    """The samples of a room's files, in the order in which they were read in, as one series. A later file fills only
    what the earlier ones leave open, for temperature and humidity each by itself."""
    temperature = _filled([(f.at_s, f.temperature_c) for f in files])
    humidity = _filled([(f.at_s, f.humidity_percent) for f in files])
    at_s = np.union1d(temperature[0], humidity[0])
    columns = np.full((2, len(at_s)), np.nan)
    for column, (own_s, values) in zip(columns, (temperature, humidity), strict=True):
        column[np.searchsorted(at_s, own_s)] = values
    return AirSamples(at_s, columns[0], columns[1])


def _filled(parts: Sequence[tuple[Seconds, Floats]]) -> tuple[Seconds, Floats]:
    at_s, values = np.zeros(0, np.int64), np.zeros(0)
    for own_s, own in parts:
        known = np.isfinite(own)
        keep = np.flatnonzero(known)[first_counts(at_s, own_s[known])]
        joined = np.concatenate([at_s, own_s[keep]])
        order = np.argsort(joined, kind="stable")
        at_s, values = joined[order], np.concatenate([values, own[keep]])[order]
    return at_s, values


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
