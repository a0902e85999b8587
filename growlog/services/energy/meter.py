"""Meter readings held against the estimate from programme and devices."""

from dataclasses import dataclass
from datetime import date
from itertools import pairwise

from growlog.calculations.energy import difference_percent
from growlog.calculations.light_programme import days_between
from growlog.records.entry import Entry, MeterReading
from growlog.services.energy.day_use import RoomPower, room_power
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

_DAY_MINUTES = 24 * 60


@dataclass(frozen=True)
class MeterCheck:
    """Between two readings of a meter. difference: the estimate less what the meter counted; problem: "" if none."""

    from_day: date
    until_day: date
    meter_kwh: float
    estimate_kwh: float
    difference_kwh: float
    difference_percent: float | None
    problem: str = ""


def meter_checks(log: OpenLogbook, room_id: str, until: date | None = None) -> list[MeterCheck]:
    """Each time between two readings of a room's meter, in order. A reading without a time counts at the day's end.

    Where the meter started anew nothing is said of the time before.
    """
    with log.unit() as unit:
        return room_meter_checks(unit, room_id, until or log.today())


def room_meter_checks(unit: UnitOfWork, room_id: str, until: date) -> list[MeterCheck]:
    """The same within a unit of work."""
    readings = [e for e in unit.entries.all(room_id=room_id, kind="meter") if e.day <= until]
    if len(readings) < 2:
        return []
    power = room_power(unit, room_id, readings[0].day, readings[-1].day)
    checks = []
    for before, after in pairwise(readings):
        first, second = before.detail, after.detail
        if isinstance(first, MeterReading) and isinstance(second, MeterReading) and not second.starts_anew:
            checks.append(_check(power, before, after, (second.meter_kwh or 0) - (first.meter_kwh or 0)))
    return checks


def _check(power: RoomPower, before: Entry, after: Entry, meter_kwh: float) -> MeterCheck:
    estimate = _estimate(power, before, after)
    problem = ""
    if meter_kwh < 0:
        problem = say("The meter shows less than before. Was it changed? Then say that counting starts anew.")
    percent = difference_percent(estimate, meter_kwh) if meter_kwh > 0 else None
    return MeterCheck(before.day, after.day, meter_kwh, estimate, estimate - meter_kwh, percent, problem)


def _estimate(power: RoomPower, before: Entry, after: Entry) -> float:
    total = 0.0
    for day in days_between(before.day, after.day):
        lamps, devices, _ = power.minutes(day)
        start = _minute(before) if day == before.day else 0
        end = _minute(after) if day == after.day else _DAY_MINUTES
        total += float((lamps + devices)[start:end].sum()) / 60_000
    return total


def _minute(entry: Entry) -> int:
    return _DAY_MINUTES if entry.at is None else entry.at.hour * 60 + entry.at.minute
