"""A logbook of every schema that ever was opens with every record as it was."""

from pathlib import Path

import pytest

from growlog.storage.database import HEAD_REVISION
from growlog.storage.logbook_folder import open_logbook
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
