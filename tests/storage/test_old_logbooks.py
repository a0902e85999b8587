"""A logbook of every schema that ever was opens with every record as it was."""

from pathlib import Path

import pytest

from growlog.records.climate_day import ClimateSample
from growlog.storage.backup import last_backup
from growlog.storage.database import HEAD_REVISION, revision_of
from growlog.storage.logbook_folder import BACKUPS, DATABASE, open_logbook
from tests.storage.old_logbooks import FOLDER, all_records, clock, known_records, restore

REVISIONS = sorted(file.stem for file in FOLDER.glob("*.sql"))


def test_a_logbook_of_the_present_schema_is_kept() -> None:
    assert HEAD_REVISION in REVISIONS


@pytest.mark.parametrize("revision", REVISIONS)
def test_an_old_logbook_opens_with_every_record_as_it_was(tmp_path: Path, revision: str) -> None:
    restore(revision, tmp_path / "room")
    disk = open_logbook(tmp_path / "room", clock)
    try:
        found, known = all_records(disk), known_records(revision)
        assert sum(len(records) for records in known.values()) >= 24
        for name, records in known.items():
            assert found[name] == records, name
    finally:
        disk.close()


def test_an_older_logbook_is_copied_before_it_is_changed(tmp_path: Path) -> None:
    restore("0001", tmp_path / "room")
    open_logbook(tmp_path / "room", clock).close()
    copy = last_backup(tmp_path / "room" / BACKUPS)
    assert copy is not None
    assert revision_of(copy) == "0001"
    assert revision_of(tmp_path / "room" / DATABASE) == HEAD_REVISION


def test_samples_of_a_logger_are_kept_too(tmp_path: Path) -> None:
    restore("0002", tmp_path / "room")
    disk = open_logbook(tmp_path / "room", clock)
    with disk.unit() as unit:
        assert list(unit.climate_samples.samples("room-2")) == [ClimateSample(clock(), 21.5, 60.0)]
        assert [d.temperature_max_c for d in unit.climate_samples.days("room-2")] == [21.5]
    disk.close()


def test_an_altered_value_is_seen(tmp_path: Path) -> None:
    restore(HEAD_REVISION, tmp_path / "room")
    disk = open_logbook(tmp_path / "room", clock)
    try:
        with disk.unit() as unit:
            crop = unit.crops.get("crop")
            unit.change("3", type(crop)(**{**vars(crop), "note": "altered"}))
            unit.commit()
        assert all_records(disk)["Crop"] != known_records(HEAD_REVISION)["Crop"]
    finally:
        disk.close()
