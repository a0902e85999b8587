"""Logger files carried in: raw samples kept, days derived, all undone."""

from dataclasses import replace
from datetime import date, datetime, time
from pathlib import Path

import pytest

from growlog.records.climate_day import ClimateDay
from growlog.records.crop import Crop
from growlog.records.entry import LightChange, OwnerKind
from growlog.records.problems import RecordRefused
from growlog.records.room import Room
from growlog.services.climate.carry_in import carry_in_logger, logger_files_of, remove_logger_file
from growlog.services.climate.days import rebuild_days
from growlog.services.climate.logger_plan import LoggerAnswers, LoggerPlan, answered, plan_logger_file
from growlog.services.climate.of_crop import climate_of_room
from growlog.services.open_logbook import OpenLogbook
from growlog.services.rooms import rooms_of, save_thing
from growlog.services.undo import undo
from tests.logbooks import write_for
from tests.services.climate.conftest import WriteLogger

pytestmark = pytest.mark.slow

DAY = datetime(2026, 1, 10)  # noqa: DTZ001 - the wall clock of the room


def planned(log: OpenLogbook, path: Path, room: Room) -> LoggerPlan:
    plan = plan_logger_file(log, path, room.id)
    assert plan is not None
    return plan


def raw_count(log: OpenLogbook, room: Room) -> int:
    with log.unit() as unit:
        return sum(1 for _ in unit.climate_samples.samples(room.id))


def day_of(log: OpenLogbook, room: Room) -> ClimateDay:
    (found,) = climate_of_room(log, room.id, DAY.date(), DAY.date())
    return found


def test_samples_are_kept_and_days_made_of_them(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    path = logger_file(start=DAY, count=288)
    change = carry_in_logger(log, planned(log, path, room))
    assert change is not None
    assert raw_count(log, room) == 288
    days = climate_of_room(log, room.id)
    assert [(d.day, d.sample_count) for d in days] == [(date(2026, 1, 10), 144), (date(2026, 1, 11), 144)]
    assert (days[0].temperature_mean_c, days[0].humidity_max_percent) == (pytest.approx(21.5), 60)
    (file,) = logger_files_of(log, room.id)
    assert (file.name, file.sample_count) == ("logger.csv", 288)


def test_the_same_file_is_refused(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    path = logger_file(start=DAY, count=3)
    carry_in_logger(log, planned(log, path, room))
    again = planned(log, path, room)
    assert again.problem == "This file is in the logbook already, as logger.csv."
    with pytest.raises(RecordRefused, match="in the logbook already"):
        carry_in_logger(log, again)
    assert raw_count(log, room) == 3


def test_a_file_with_an_open_question_does_not_go_in(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file(["2026-01-10 13:00,21,0.6"]), room)
    with pytest.raises(RecordRefused) as refused:
        carry_in_logger(log, plan)
    assert [p.field for p in refused.value.problems] == ["humidity"]
    assert raw_count(log, room) == 0


def test_undo_takes_the_file_and_its_days_away_and_redo_brings_them_back(
    log: OpenLogbook, room: Room, logger_file: WriteLogger
) -> None:
    change = carry_in_logger(log, planned(log, logger_file(start=DAY, count=10), room))
    assert change is not None
    undone = undo(log, change)
    assert (climate_of_room(log, room.id), raw_count(log, room), logger_files_of(log, room.id)) == ([], 0, [])
    undo(log, undone)
    assert (day_of(log, room).sample_count, raw_count(log, room)) == (10, 10)


def test_a_file_taken_out_may_come_in_again(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    path = logger_file(start=DAY, count=10)
    carry_in_logger(log, planned(log, path, room))
    remove_logger_file(log, logger_files_of(log, room.id)[0].id)
    carry_in_logger(log, planned(log, path, room))
    assert day_of(log, room).sample_count == 10


def test_a_second_file_fills_only_what_is_missing(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    first = logger_file(start=DAY, count=13, cells="20,50")
    second = logger_file(start=DAY.replace(minute=5), count=24, cells="30,90", name="other.csv")
    carry_in_logger(log, planned(log, first, room))
    plan = planned(log, second, room)
    assert plan.overlap_count == 12
    assert any("fill only what is missing" in note for note in plan.notes)
    carry_in_logger(log, plan)
    day = day_of(log, room)
    assert (day.sample_count, raw_count(log, room)) == (13 + 12, 13 + 24)
    remove_logger_file(log, logger_files_of(log, room.id)[0].id)
    assert (day_of(log, room).sample_count, day_of(log, room).temperature_mean_c) == (24, 30)


def test_a_file_of_humidity_alone_fills_one_of_temperature_alone(
    log: OpenLogbook, room: Room, logger_file: WriteLogger
) -> None:
    for name, cells in (("warm.csv", "25,"), ("moist.csv", ",60")):
        carry_in_logger(log, planned(log, logger_file(start=DAY, count=3, cells=cells, name=name), room))
    day = day_of(log, room)
    assert (day.sample_count, day.temperature_mean_c, day.humidity_mean_percent) == (3, 25, 60)
    assert day.vpd_mean_kpa == pytest.approx(1.267, abs=1e-3)  # FAO-56, equations 10 and 11


def test_nothing_is_kept_of_a_file_that_was_stopped(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    plan = planned(log, logger_file(start=DAY, count=50), room)
    assert carry_in_logger(log, plan, cancelled=lambda: True) is None
    assert (raw_count(log, room), logger_files_of(log, room.id), climate_of_room(log, room.id)) == (0, [], [])


def test_the_night_follows_the_light_whenever_that_is_entered(
    log: OpenLogbook, crop: Crop, room: Room, logger_file: WriteLogger
) -> None:
    rows = [f"2026-01-10 {h:02d}:{m:02d},20,{90 if h < 6 else 50}" for h in range(24) for m in (0, 30)]
    carry_in_logger(log, planned(log, logger_file(rows), room))
    assert day_of(log, room).night_humidity_mean_percent is None
    write_for(log, OwnerKind.ROOM, room.id, date(2026, 1, 1), LightChange(18, time(6)))
    found = day_of(log, room).night_humidity_mean_percent
    assert found == pytest.approx(90, abs=2)


def test_days_are_made_again_for_another_humidity(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    carry_in_logger(log, planned(log, logger_file(start=DAY, count=144, cells="21,70"), room))
    assert day_of(log, room).hours_above_humidity == 0
    assert rebuild_days(log, room.id, humid_above_percent=65) == 1
    assert day_of(log, room).hours_above_humidity == pytest.approx(23 + 50 / 60)


def test_a_day_begins_at_the_rooms_own_midnight(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    carry_in_logger(log, planned(log, logger_file(["2026-01-10T22:59:00Z,20,50", "2026-01-10T23:01:00Z,20,50"]), room))
    assert [(d.day.day, d.sample_count) for d in climate_of_room(log, room.id)] == [(10, 1), (11, 1)]


@pytest.mark.slow
def test_half_a_million_rows_go_in_with_progress(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    path = logger_file(start=datetime(2025, 3, 1), count=500_000, every_min=1)  # noqa: DTZ001
    read, written = [], []
    plan = plan_logger_file(log, path, room.id, None, lambda done, _: read.append(done))
    assert plan is not None
    # The repeated hour of the autumn is in it; a minute of each is asked about.
    assert [q.asked.value for q in plan.open_questions] == ["repeated-hour"]
    plan = answered(log, plan, LoggerAnswers(repeated_hour="earlier"))
    assert carry_in_logger(log, plan, lambda done, _: written.append(done)) is not None
    assert (len(read) > 100, len(written) > 100) == (True, True)
    assert sum(d.sample_count for d in climate_of_room(log, room.id)) == plan.sample_count


def test_the_logbook_can_be_read_while_a_file_goes_in(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    path = logger_file(start=DAY, count=40_000, every_min=1)
    seen: list[int] = []

    def look(_done: int, _total: int) -> None:
        with log.unit() as unit:  # fails with a locked database where written pages went to the file before the end
            seen.append(len(unit.crops.all()))

    assert carry_in_logger(log, planned(log, path, room), look) is not None
    assert set(seen) == {1}


def test_another_zone_of_the_room_moves_its_days(log: OpenLogbook, room: Room, logger_file: WriteLogger) -> None:
    carry_in_logger(log, planned(log, logger_file(["2026-01-10T23:30:00Z,20,50"]), room))
    assert [d.day.day for d in climate_of_room(log, room.id)] == [11]
    change = save_thing(log, replace(rooms_of(log)[0].room, zone="UTC"))
    assert [d.day.day for d in climate_of_room(log, room.id)] == [10]
    undo(log, change)
    assert [d.day.day for d in climate_of_room(log, room.id)] == [11]
