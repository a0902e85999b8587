"""Entries that were read before are not put together again, and never stale."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from growlog.records.entry import Feed, Pick
from growlog.services.entries import correct_entry
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.stores import EntryStore
from tests.logbooks import logbook, plant_crop, write

DAY = date(2026, 3, 1)


def entries_of(log: OpenLogbook) -> list[object]:
    """What all entries hold."""
    with log.unit() as unit:
        return [e.detail for e in unit.entries.all()]


def test_what_was_read_once_is_not_read_from_its_rows_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    with logbook(tmp_path) as log:
        write(log, plant_crop(log), DAY, Feed(volume_l=1))
        assert entries_of(log) == [Feed(volume_l=1)]
        monkeypatch.delattr(EntryStore, "_read_kind")
        assert entries_of(log) == [Feed(volume_l=1)]


def test_a_corrected_entry_is_read_anew(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        entry = write(log, plant_crop(log), DAY, Feed(volume_l=1))
        assert entries_of(log) == [Feed(volume_l=1)]
        correct_entry(log, replace(entry, detail=Feed(volume_l=2)))
        assert entries_of(log) == [Feed(volume_l=2)]


def test_what_was_rolled_back_is_not_remembered(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        entry = write(log, plant_crop(log), DAY, Pick(1))
        with log.unit() as unit:
            unit.change("g", replace(entry, detail=Pick(7)))
            assert [e.detail for e in unit.entries.all()] == [Pick(7)]
        correct_entry(log, replace(entry, detail=Pick(3)))
        assert entries_of(log) == [Pick(3)]


def test_a_removed_entry_is_gone_and_comes_back(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        entry = write(log, plant_crop(log), DAY, Pick(1))
        assert len(entries_of(log)) == 1
        with log.unit() as unit:
            removed = unit.remove("g", entry)
            unit.commit()
        assert entries_of(log) == []
        with log.unit() as unit:
            unit.restore("g", removed)
            unit.commit()
        assert entries_of(log) == [Pick(1)]
