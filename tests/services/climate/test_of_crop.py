"""The climate a crop stood in: loggers first, readings where none was, warnings, degree days."""

from datetime import date, datetime, time

import pytest

from growlog.calculations.degree_days import DegreeDayMethod
from growlog.records.crop import Crop
from growlog.records.entry import LightChange, OwnerKind, Reading
from growlog.records.room import Room
from growlog.services.climate.carry_in import carry_in_logger
from growlog.services.climate.logger_plan import plan_logger_file
from growlog.services.climate.of_crop import climate_of_crop, degree_days_of_crop
from growlog.services.crops import clear_crop
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import SOWN, write, write_for
from tests.services.climate.conftest import WriteLogger

DAY = datetime(2026, 1, 10)  # noqa: DTZ001 - the wall clock of the room


def carry(log: OpenLogbook, room: Room, logger_file: WriteLogger, rows: list[str]) -> None:
    plan = plan_logger_file(log, logger_file(rows), room.id)
    assert plan is not None
    carry_in_logger(log, plan)


def test_a_logger_goes_before_readings_and_readings_fill_its_days(
    log: OpenLogbook, crop: Crop, room: Room, logger_file: WriteLogger
) -> None:
    carry(log, room, logger_file, ["2026-01-10 12:00,20,", "2026-01-10 12:10,22,"])
    write_for(log, OwnerKind.ROOM, room.id, date(2026, 1, 10), Reading(30, 55))
    write(log, crop, date(2026, 1, 12), Reading(25, 60))
    write(log, crop, date(2026, 1, 12), Reading(27, 40))
    logged, read = climate_of_crop(log, crop.id).days
    assert (logged.from_logger, logged.climate.temperature_max_c, logged.climate.humidity_mean_percent) == (
        True,
        22,
        55,
    )
    assert (read.age, read.reading_count, read.climate.temperature_mean_c, read.from_logger) == (58, 2, 26, False)
    # FAO Irrigation and Drainage Paper 56, equations 10 and 11: 25 °C at 60 % and 27 °C at 40 %.
    assert read.climate.vpd_max_kpa == pytest.approx(2.1390, abs=1e-3)
    assert read.climate.vpd_mean_kpa == pytest.approx((1.2671 + 2.1390) / 2, abs=1e-3)


def test_days_before_the_crop_and_after_its_clearing_are_not_its_own(
    log: OpenLogbook, crop: Crop, room: Room, logger_file: WriteLogger
) -> None:
    carry(log, room, logger_file, ["2025-11-01 12:00,20,50", "2026-01-10 12:00,20,50", "2026-01-20 12:00,20,50"])
    clear_crop(log, crop.id, date(2026, 1, 15))
    assert [d.day for d in climate_of_crop(log, crop.id).days] == [date(2026, 1, 10)]


def test_moist_air_on_a_cool_surface_is_warned_of(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, date(2026, 1, 10), Reading(25, 90))  # dew point 23.2 °C by FAO-56, equation 11 turned over
    write(log, crop, date(2026, 1, 10), Reading(18, 60))
    write(log, crop, date(2026, 1, 11), Reading(25, 50))
    (warning,) = climate_of_crop(log, crop.id).warnings
    assert (warning.kind, warning.age) == ("condensation", (date(2026, 1, 10) - SOWN).days)
    assert "23.2" in warning.sentence


def test_nights_above_a_humidity_are_listed(log: OpenLogbook, crop: Crop, room: Room, logger_file: WriteLogger) -> None:
    write_for(log, OwnerKind.ROOM, room.id, date(2026, 1, 1), LightChange(18, time(6)))
    carry(log, room, logger_file, [f"2026-01-10 {h:02d}:00,24,{88 if h < 6 else 40}" for h in range(24)])
    (warning,) = climate_of_crop(log, crop.id).warnings
    assert warning.kind == "humid-night"
    assert climate_of_crop(log, crop.id, humid_above_percent=90).warnings == ()


def test_degree_days_are_added_up_and_missing_days_said(log: OpenLogbook, crop: Crop) -> None:
    # By definition: (30 + 20) / 2 - 10 = 15 °C·d a day.
    for day in (10, 11):
        write(log, crop, date(2026, 1, day), Reading(30, 50))
        write(log, crop, date(2026, 1, day), Reading(20, 50))
    found = degree_days_of_crop(log, crop.id, DegreeDayMethod.SIMPLE_AVERAGE, 10)
    assert (found.figure.value, found.days_counted, found.by_age[-1]) == (30, 2, (57, 30))
    assert found.days_missing == 113 - 2
    with pytest.raises(ValueError, match="needs a ceiling"):
        degree_days_of_crop(log, crop.id, DegreeDayMethod.MAXIMUM_MIRRORED, 10)
    early = degree_days_of_crop(log, crop.id, DegreeDayMethod.SIMPLE_AVERAGE, 10, as_of=date(2026, 1, 10))
    assert early.figure.value == 15
