"""Logbooks: made, opened by one writer, read beside it, and kept in dated copies."""

import shutil
from datetime import date
from pathlib import Path

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Pick
from growlog.services.board import board_of
from growlog.services.crops import crops_of
from growlog.services.logbooks import clock_as_of, facts_of, keep_copy, new_logbook, open_log
from growlog.services.open_logbook import LogbookInUse, LogbookNotWritable, NotALogbook, OpenLogbook
from tests.logbooks import TODAY, content_of, plant_crop, still_clock, write

pytestmark = pytest.mark.slow


def test_a_new_logbook_has_its_name_or_that_of_its_folder(tmp_path: Path) -> None:
    for name, shown in (("Cellar", "Cellar"), ("", "second")):
        folder = tmp_path / ("first" if name else "second")
        new_logbook(folder, still_clock(), name)
        log = open_log(folder, still_clock(), tmp_path / "cache")
        assert (facts_of(log).name, facts_of(log).made_at) == (shown, still_clock().now())
        log.close()


def test_a_name_that_no_database_can_keep_is_kept_as_well_as_can_be(tmp_path: Path) -> None:
    new_logbook(tmp_path / "room", still_clock(), "Cellar \udcff")
    log = open_log(tmp_path / "room", still_clock(), tmp_path / "cache")
    assert facts_of(log).name == "Cellar ?"
    log.close()


def test_a_folder_with_something_else_in_it_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "letter.txt").write_text("dear")
    with pytest.raises(NotALogbook, match="not empty"):
        new_logbook(tmp_path, still_clock())
    with pytest.raises(NotALogbook, match="not a logbook"):
        open_log(tmp_path, still_clock(), tmp_path / "cache")
    assert [p.name for p in tmp_path.iterdir()] == ["letter.txt"]


def test_a_second_window_is_told_and_may_read_but_not_write(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    with pytest.raises(LogbookInUse, match="only be read"):
        open_log(log.folder, log.clock, tmp_path / "cache")
    reader = open_log(log.folder, log.clock, tmp_path / "cache", read_only=True)
    write(log, crop, TODAY, Pick(1, 90.0))
    assert not reader.writable
    assert board_of(reader, crop.id).total.weight_g == 90.0
    with pytest.raises(LogbookNotWritable, match="reading only"):
        plant_crop(reader, "Shelf Ember")
    assert [s.crop.name for s in crops_of(reader)] == ["Boxroom Gold"]
    reader.close()


def test_a_closed_logbook_lets_the_next_writer_in(log: OpenLogbook, tmp_path: Path) -> None:
    log.close()
    log.close()
    again = open_log(log.folder, log.clock, tmp_path / "cache")
    assert again.writable
    again.close()


def test_a_dated_copy_is_a_whole_logbook(log: OpenLogbook, crop: Crop, tmp_path: Path) -> None:
    write(log, crop, TODAY, Pick(1, 90.0))
    copy = keep_copy(log)
    assert copy.parent == log.folder / "backups"
    assert copy.name.startswith("2026-03-07_120000")
    before = content_of(log)
    write(log, crop, TODAY, Pick(2, 170.0))
    (tmp_path / "old").mkdir()
    shutil.copy(copy, tmp_path / "old" / "logbook.sqlite3")
    restored = open_log(tmp_path / "old", log.clock, tmp_path / "cache")
    assert content_of(restored) == before
    restored.close()


@pytest.mark.parametrize("in_the_way", ["backups", "backups/2026-03-07_120000.part"])
def test_a_copy_that_cannot_be_kept_is_a_plain_sentence(log: OpenLogbook, crop: Crop, in_the_way: str) -> None:
    shutil.rmtree(log.folder / "backups")
    if in_the_way == "backups":
        (log.folder / in_the_way).write_text("a file where the folder should be")
    else:
        (log.folder / in_the_way).mkdir(parents=True)
    with pytest.raises(LogbookNotWritable, match="No copy could be kept"):
        keep_copy(log)
    assert [s.crop.id for s in crops_of(log)] == [crop.id]


def test_today_is_the_day_that_was_asked_for() -> None:
    assert clock_as_of(date(2025, 1, 2)).today() == date(2025, 1, 2)
    assert clock_as_of().today() == clock_as_of().now().astimezone().date()
