"""Very many entries at once: the same answers as one by one, all or nothing."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.entry import Entry, Note, OwnerKind, Pick, Treatment
from growlog.records.problems import RecordRefused
from growlog.services.crops import clear_crop
from growlog.services.entries import check_entry, correct_entry
from growlog.services.entry_batches import StandingChecks, add_many_entries
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.undo import undo
from growlog.services.undo_of_many import MANY
from tests.logbooks import SOWN, content_of, entry_on, furnish, write, write_for

DAY = date(2026, 1, 10)


def many(log: OpenLogbook, crop: Crop, n: int = MANY) -> tuple[Change, list[Entry]]:
    """So many picks, written."""
    entries = [entry_on(crop, SOWN + timedelta(k % 50), Pick(k % 9 + 1, None, (65.0,)), note="n") for k in range(n)]
    return add_many_entries(log, entries, "many"), entries


def test_each_is_judged_as_it_would_be_alone(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, DAY, Treatment("soap", harvest_interval_days=3))
    clear_crop(log, crop.id, date(2026, 2, 20))
    days = [SOWN - timedelta(1), SOWN, DAY, DAY + timedelta(2), DAY + timedelta(3), date(2026, 2, 21), date(2026, 4, 1)]
    entries = [entry_on(crop, day, detail) for day in days for detail in (Pick(1), Note())]
    with log.unit() as unit:
        checks = StandingChecks(unit, [crop.id], log.today())
    assert [e.problems() + checks.problems(e) for e in entries] == [check_entry(log, e) for e in entries]


def test_one_that_is_refused_keeps_all_out(log: OpenLogbook, crop: Crop) -> None:
    before = content_of(log)
    for wrong in (entry_on(crop, SOWN - timedelta(1), Pick(1)), entry_on(crop, DAY, Pick(0))):
        with pytest.raises(RecordRefused):
            add_many_entries(log, [entry_on(crop, DAY, Pick(1)), wrong], "two")
        assert content_of(log) == before


def test_entries_of_a_room_are_not_written_in_batches(log: OpenLogbook, crop: Crop) -> None:
    room, _tank = furnish(log, crop)
    entry = write_for(log, OwnerKind.ROOM, room.id, DAY, Note())
    with pytest.raises(ValueError, match="crops"):
        add_many_entries(log, [entry], "none")


def test_undo_and_redo_of_very_many_bring_back_the_same(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, DAY, Pick(2))
    before = content_of(log)
    change, _ = many(log, crop)
    after = content_of(log)
    undone = undo(log, change)
    assert content_of(log) == before
    redone = undo(log, undone)
    assert content_of(log) == after
    undo(log, redone)
    assert content_of(log) == before


def test_very_many_of_which_one_changed_since_are_not_taken_back(log: OpenLogbook, crop: Crop) -> None:
    change, _ = many(log, crop)
    with log.unit() as unit:
        one = unit.entries.all()[7]
    correct_entry(log, replace(one, note="other"))
    before = content_of(log)
    with pytest.raises(LogbookProblem, match="changed again since"):
        undo(log, change)
    assert content_of(log) == before


def test_very_many_do_not_come_back_onto_days_on_which_the_crop_no_longer_stood(log: OpenLogbook, crop: Crop) -> None:
    undone = undo(log, many(log, crop)[0])
    clear_crop(log, crop.id, SOWN + timedelta(20))
    with pytest.raises(LogbookProblem, match="was cleared"):
        undo(log, undone)
