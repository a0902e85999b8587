"""Logger samples and the days made of them."""

from collections.abc import Iterator
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy.exc import IntegrityError

from growlog.records.climate_day import ClimateDay, ClimateSample
from growlog.records.logger_file import LoggerFile
from growlog.records.room import Room
from growlog.storage.logbook_folder import LogbookFolder, open_logbook
from growlog.storage.problems import LogbookNotWritable

START = datetime(2026, 1, 18, tzinfo=UTC)
DAY = date(2026, 1, 18)


def logger_file(id_: str, room_id: str = "room") -> LoggerFile:
    return LoggerFile(id_, room_id, f"{id_}.csv", id_ * 32, 1, START, START + timedelta(days=7), START)


def samples(count: int, start: datetime = START) -> Iterator[ClimateSample]:
    return (ClimateSample(start + timedelta(minutes=n), 20 + n % 7, 55.5) for n in range(count))


@pytest.fixture
def disk(empty_logbook: Path) -> Iterator[LogbookFolder]:
    opened = open_logbook(empty_logbook, lambda: START)
    with opened.unit() as unit:
        unit.add("start", Room("room", "Room"), Room("other", "Other"))
        unit.add("start", logger_file("f1"), logger_file("f2"), logger_file("f3", "other"))
        unit.commit()
    yield opened
    opened.close()


def test_ten_thousand_samples_come_back_in_the_order_of_time(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        assert unit.climate_samples.insert("f1", "room", reversed(list(samples(10_000)))) == 10_000
        unit.commit()
    with disk.unit() as unit:
        assert list(unit.climate_samples.samples("room")) == list(samples(10_000))


def test_samples_are_asked_for_from_one_moment_until_before_another(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        unit.climate_samples.insert("f1", "room", samples(10))
        unit.climate_samples.insert("f3", "other", samples(10))
        found = unit.climate_samples.samples("room", START + timedelta(minutes=3), START + timedelta(minutes=5))
        assert [s.at_utc for s in found] == [START + timedelta(minutes=3), START + timedelta(minutes=4)]


def test_samples_of_a_file_in_the_bin_are_left_out_until_it_comes_back(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        unit.climate_samples.insert("f1", "room", samples(2))
        unit.climate_samples.insert("f2", "room", samples(2, START + timedelta(hours=1)))
        gone = unit.remove("bin", unit.logger_files.get("f1"))
        assert [s.at_utc.hour for s in unit.climate_samples.samples("room")] == [1, 1]
        unit.restore("back", gone)
        assert [s.at_utc.hour for s in unit.climate_samples.samples("room")] == [0, 0, 1, 1]


def test_a_value_that_the_logger_did_not_give_stays_unknown(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        unit.climate_samples.insert("f1", "room", [ClimateSample(START, None, 60.0)])
        assert list(unit.climate_samples.samples("room")) == [ClimateSample(START, None, 60.0)]


def test_samples_need_their_file_and_each_moment_once(disk: LogbookFolder) -> None:
    for file_id, rows in (("nowhere", list(samples(1))), ("f1", [*samples(1), *samples(1)])):
        with pytest.raises(IntegrityError), disk.unit() as unit:
            unit.climate_samples.insert(file_id, "room", rows)


def test_days_are_written_over_and_can_be_forgotten(disk: LogbookFolder) -> None:
    first = ClimateDay(DAY, 1440, 18.0, 21.5, 25.0, 50.0, 60.0, 70.0, 68.0, 1.1, 1.6, 15.2, 2.5, 5.0)
    second = ClimateDay(DAY + timedelta(days=1), 3)
    with disk.unit() as unit:
        unit.climate_samples.write_days("room", [ClimateDay(DAY, 7), second])
        unit.climate_samples.write_days("room", [first])
        assert unit.climate_samples.days("room") == [first, second]
        assert unit.climate_samples.days("room", until_day=DAY) == [first]
        assert unit.climate_samples.days("room", DAY + timedelta(days=1)) == [second]
        assert unit.climate_samples.days("other") == []
        unit.climate_samples.forget_days("room")
        assert unit.climate_samples.days("room") == []


def test_a_logbook_opened_for_reading_takes_no_samples(disk: LogbookFolder) -> None:
    reader = open_logbook(disk.folder, lambda: START, read_only=True)
    with reader.unit() as unit, pytest.raises(LogbookNotWritable, match="reading only"):
        unit.climate_samples.insert("f1", "room", samples(1))
    reader.close()
