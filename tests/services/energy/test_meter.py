"""Meter readings against the estimate."""

from datetime import date, time, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Entry, LightChange, MeterReading, Owner, OwnerKind
from growlog.records.room import Lamp, Room
from growlog.services.energy.meter import meter_checks
from growlog.services.entries import add_entry
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import save_thing
from tests.logbooks import SOWN, furnish, write_for


def at(age: int) -> date:
    return SOWN + timedelta(days=age)


@pytest.fixture
def room(log: OpenLogbook, crop: Crop) -> Room:
    made = furnish(log, crop)[0]
    save_thing(log, Lamp(new_id(), made.id, "Lamp", wall_w=100))
    write_for(log, OwnerKind.ROOM, made.id, at(0), LightChange(12, time(6)))
    return made


def read(log: OpenLogbook, room: Room, age: int, kwh: float, hour: int | None = None, **more: bool) -> None:
    when = None if hour is None else time(hour)
    add_entry(log, Entry(new_id(), Owner(OwnerKind.ROOM, room.id), at(age), MeterReading(kwh, **more), at=when))


def test_the_estimate_is_held_against_what_the_meter_counted(log: OpenLogbook, room: Room) -> None:
    read(log, room, 0, 1000)
    read(log, room, 10, 1010)
    (check,) = meter_checks(log, room.id)
    assert (check.meter_kwh, check.estimate_kwh) == (10, pytest.approx(12))
    assert (check.difference_kwh, check.difference_percent) == (pytest.approx(2), pytest.approx(20))


def test_a_reading_at_an_hour_counts_from_that_hour(log: OpenLogbook, room: Room) -> None:
    read(log, room, 1, 0, 12)
    read(log, room, 2, 1, 9)
    assert meter_checks(log, room.id)[0].estimate_kwh == pytest.approx(0.6 + 0.3)


def test_a_meter_that_starts_anew_says_nothing_of_the_time_before(log: OpenLogbook, room: Room) -> None:
    read(log, room, 0, 1000)
    read(log, room, 5, 0, starts_anew=True)
    read(log, room, 10, 6)
    assert [(c.from_day, c.meter_kwh) for c in meter_checks(log, room.id)] == [(at(5), 6)]


def test_a_meter_that_went_back_is_asked_about(log: OpenLogbook, room: Room) -> None:
    read(log, room, 0, 1000)
    read(log, room, 5, 900)
    (check,) = meter_checks(log, room.id)
    assert "less than before" in check.problem
    assert check.difference_percent is None
