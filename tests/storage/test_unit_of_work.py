"""The unit of work: it rolls back unless told to commit, keeps history, and guards versions."""

import sqlite3
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, date, datetime, time
from pathlib import Path

import pytest

from growlog.records.change import ChangeAction
from growlog.records.crop import Crop, Placement, Plant
from growlog.records.cultivar import Cultivar, FloweringHabit
from growlog.records.entry import (
    KINDS,
    Calibration,
    Cull,
    CullCause,
    Detail,
    Entry,
    Feed,
    FlowerFate,
    FruitCheck,
    LightChange,
    MeterReading,
    Note,
    Owner,
    OwnerKind,
    Pick,
    Pollination,
    PollinationWay,
    PottingOn,
    ProblemSeen,
    ProblemSort,
    Reading,
    StageSeen,
    TaggedFruit,
    TagSeen,
    TankCare,
    TankDose,
    TankWork,
    Training,
    Treatment,
)
from growlog.records.logbook import LogbookFacts
from growlog.records.problems import RecordRefused
from growlog.records.recipe import Mix, MixPart
from growlog.records.room import Tank
from growlog.storage.logbook_folder import LogbookFolder, open_logbook
from growlog.storage.problems import LogbookNotWritable, RecordMissing, RecordMoved
from growlog.storage.row_translation import MODELS
from growlog.storage.unit_of_work import record_of
from tests.storage.examples import PRODUCT, RECORDS, WATER

NOW = datetime(2026, 3, 7, 12, tzinfo=UTC)
DAY = date(2026, 1, 18)
CULTIVAR = Cultivar("cv", "pattypan", "Boxroom Gold", FloweringHabit.SEPARATE, 58)
CROP = Crop("crop", "Boxroom Gold", "cv", sown_on=date(2025, 11, 15))
MIX = Mix("mix", "A + B", 1, (MixPart("A", 2.0), MixPart("B", 2.0)))
DETAILS: dict[str, Detail] = {
    "feed": Feed("mix", 80.0, 2.8, 1.88, 5.9, 0.6, 2.24, 6.1),
    "reading": Reading(24.6, 58, 21.0, 40.5, 5200.0, 480.0, 26000.0, "led-white"),
    "training": Training(2, 1, 1, 2, 1),
    "pollination": Pollination(2, 9, 1, PollinationWay.BRUSH, ("11", "12")),
    "fruit-check": FruitCheck(1, 2, 3, 4, 5, (TagSeen("11", FlowerFate.SET), TagSeen("12", FlowerFate.DROPPED))),
    "pick": Pick(
        2,
        171.0,
        (93.0, 78.0),
        (Cull(1, CullCause.CRACKED, 40.0), Cull(2, CullCause.OVERSIZE)),
        (TaggedFruit("11", 93.0), TaggedFruit("14")),
    ),
    "stage": StageSeen(("61", "71")),
    "problem": ProblemSeen(ProblemSort.DISEASE, "powdery mildew", 2),
    "treatment": Treatment("bicarbonate", "mildew", "5 g/L", 4.0, 1),
    "light": LightChange(16.0, time(6), 40.0, 200.0),
    "potting-on": PottingOn(11.0, "coir"),
    "calibration": Calibration("pH", 7.0, 7.2),
    "tank-care": TankCare(
        TankWork.CORRECTION, 18.0, 2.0, 1.0, 1.7, 2.0, 6.4, 5.8, "mix", (TankDose("Base A", 12.0, "mL", "product"),)
    ),
    "meter": MeterReading(10432.5, starts_anew=True),
    "note": Note(),
}


@pytest.fixture
def disk(empty_logbook: Path) -> Iterator[LogbookFolder]:
    opened = open_logbook(empty_logbook, lambda: NOW)
    with opened.unit() as unit:
        unit.add("start", CULTIVAR, CROP, MIX, PRODUCT, WATER)
        unit.commit()
    yield opened
    opened.close()


def entry(detail: Detail, id_: str = "e") -> Entry:
    return Entry(id_, Owner(OwnerKind.CROP, "crop"), DAY, detail, time(8, 5), 4, "a note")


def test_what_was_not_committed_is_gone(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        unit.add("g", entry(Pick(1)))
    with disk.unit() as unit:
        assert unit.entries.all() == []
        assert unit.history("g") == []


def test_an_error_inside_undoes_what_was_done_before_it(disk: LogbookFolder) -> None:
    def fail_half_way() -> None:
        with disk.unit() as unit:
            unit.add("g", entry(Pick(1)))
            raise ZeroDivisionError

    with pytest.raises(ZeroDivisionError):
        fail_half_way()
    with disk.unit() as unit:
        assert unit.entries.find("e") is None


@pytest.mark.parametrize("kind", KINDS)
def test_an_entry_of_each_kind_comes_back_as_it_was_written(disk: LogbookFolder, kind: str) -> None:
    written = entry(DETAILS[kind])
    with disk.unit() as unit:
        unit.add("g", written)
        unit.commit()
    with disk.unit() as unit:
        assert unit.entries.all(crop_id="crop") == [written]


@pytest.mark.parametrize("kind", KINDS)
def test_a_corrected_entry_replaces_all_that_its_kind_adds(disk: LogbookFolder, kind: str) -> None:
    with disk.unit() as unit:
        unit.add("g", entry(DETAILS[kind]))
        after = unit.change("h", replace(entry(DETAILS[kind]), note="corrected"))
        unit.commit()
    with disk.unit() as unit:
        assert unit.entries.get("e") == after
        assert (after.version, after.note, after.detail) == (2, "corrected", DETAILS[kind])


def test_records_of_each_other_type_come_back_as_they_were_written(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        for record in RECORDS:
            unit.add("g", record)
        unit.commit()
    with disk.unit() as unit:
        for record in (PRODUCT, WATER, *RECORDS):
            assert unit.store(type(record)).get(record.id) == record
        assert {type(r) for r in (PRODUCT, WATER, *RECORDS)} | {
            LogbookFacts,
            Tank,
            Cultivar,
            Crop,
            Plant,
            Placement,
        } == (set(MODELS) - {Entry})


def test_a_changed_record_replaces_all_that_it_lists(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        after = unit.change("h", replace(PRODUCT, analysis=PRODUCT.analysis[:1]))
        unit.commit()
    with disk.unit() as unit:
        assert unit.products.get("product") == after
        assert after.analysis == PRODUCT.analysis[:1]


def test_each_record_is_in_the_history_as_it_was(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        for record in RECORDS:
            unit.add("g", record)
        assert [record_of(row.record, row.after or "") for row in unit.history("g")] == list(RECORDS)


def test_a_removed_record_is_in_the_bin_and_can_come_back(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        unit.add("g", entry(Pick(1)))
        gone = unit.remove("h", unit.entries.get("e"))
        assert unit.entries.all() == []
        assert unit.entries.all(removed=True) == [gone]
        unit.restore("i", gone)
        assert [e.id for e in unit.entries.all()] == ["e"]


def test_each_change_leaves_what_was_before_and_after_in_the_same_transaction(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        unit.add("g", entry(Pick(1)))
        unit.change("h", replace(entry(Pick(1)), detail=Pick(3)))
        (row,) = unit.history("h")
    assert (row.action, row.record, row.record_id, row.at) == (ChangeAction.CHANGE, "Entry", "e", NOW)
    assert record_of(row.record, row.before or "").detail == Pick(1)
    assert record_of(row.record, row.after or "").detail == Pick(3)


def test_the_history_cannot_be_rewritten(disk: LogbookFolder) -> None:
    connection = sqlite3.connect(disk.folder / "logbook.sqlite3")
    for statement in ("UPDATE change SET action = 'add'", "DELETE FROM change"):
        with pytest.raises(sqlite3.IntegrityError, match="append-only"):
            connection.execute(statement)
    connection.close()


def test_a_write_over_a_version_that_has_moved_is_refused(disk: LogbookFolder) -> None:
    with disk.unit() as unit:
        unit.add("g", entry(Pick(1)))
        unit.change("h", entry(Pick(2)))
        with pytest.raises(RecordMoved):
            unit.change("i", entry(Pick(3)))


def test_a_record_that_is_not_true_is_refused_before_it_is_written(disk: LogbookFolder) -> None:
    with disk.unit() as unit, pytest.raises(RecordRefused):
        unit.add("g", entry(Pick(-1)))
    with disk.unit() as unit, pytest.raises(RecordMissing):
        unit.entries.get("e")


def test_foreign_keys_hold(disk: LogbookFolder) -> None:
    from sqlalchemy.exc import IntegrityError

    with pytest.raises(IntegrityError), disk.unit() as unit:
        unit.add("g", Plant("p", "no such crop", "1", DAY))


def test_a_logbook_opened_for_reading_takes_no_change(disk: LogbookFolder) -> None:
    reader = open_logbook(disk.folder, lambda: NOW, read_only=True)
    with reader.unit() as unit:
        assert unit.crops.get("crop") == CROP
        with pytest.raises(LogbookNotWritable, match="reading only"):
            unit.add("g", entry(Pick(1)))
    reader.close()


def test_a_full_disk_is_a_sentence_and_leaves_the_logbook_whole(disk: LogbookFolder) -> None:
    from sqlalchemy import event

    def small(connection: sqlite3.Connection, _record: object) -> None:
        connection.execute("PRAGMA max_page_count = 1")  # SQLite raises it to the pages in use: no room for more

    event.listen(disk._engine, "connect", small)
    disk._engine.dispose()
    many = [replace(entry(Note(), str(n)), note="x" * 4000) for n in range(200)]
    with pytest.raises(LogbookNotWritable, match="full"), disk.unit() as unit:
        unit.add("g", *many)
    event.remove(disk._engine, "connect", small)
    disk._engine.dispose()
    with disk.unit() as unit:
        assert unit.entries.all() == []
        assert unit.crops.get("crop") == CROP
