"""Answers to what is due: each is one change that can be taken back."""

from dataclasses import replace

import pytest

from growlog.records.crop import Crop
from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import Calibration, Feed, Note, OwnerKind, Pollination, PollinationWay
from growlog.records.problems import RecordRefused
from growlog.records.routine import RoutineFor, RoutineWhen
from growlog.services.due import (
    DueHow,
    change_routine,
    drafted_entry,
    due_items,
    leave_out,
    mark_done,
    put_off,
    remove_routine,
    routines_of,
    starting_routines,
    tick,
)
from growlog.services.due.routines import add_routines
from growlog.services.entries import remove_entry
from growlog.services.open_logbook import OpenLogbook
from growlog.services.undo import undo
from tests.logbooks import TODAY, furnish, write, write_for
from tests.services.due.routines import day, keep, titles, today_of


def entries(log: OpenLogbook, kind: str) -> list[object]:
    """What was written of a kind today."""
    with log.unit() as unit:
        return [e.detail for e in unit.entries.all(kind=kind) if e.day == TODAY]


def test_one_key_gives_the_last_feed_again_but_measures_nothing(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Feed", "feed")
    write(log, crop, day(-2), Feed(volume_l=1.1, ec_ms_per_cm=1.8, ph=5.9, drain_l=0.2))
    item = today_of(log)[0]
    assert (item.how, item.offer) == (DueHow.WRITES, "1.1\u2009L")
    change = mark_done(log, item)
    assert entries(log, "feed") == [Feed(volume_l=1.1)]
    assert titles(log) == []
    undo(log, change)
    assert titles(log) == ["Feed"]


def test_a_feed_that_was_never_measured_out_wants_its_form(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Feed", "feed")
    item = today_of(log)[0]
    assert item.how is DueHow.FORM
    with pytest.raises(ValueError, match="done by a form"):
        mark_done(log, item)
    assert drafted_entry(log, item, crop.id).detail == Feed()


def test_a_feed_from_the_tank_is_given_to_the_tank_again(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Feed", "feed")
    _, tank = furnish(log, crop)
    write_for(log, OwnerKind.TANK, tank.id, day(-1), Feed(volume_l=5))
    assert drafted_entry(log, today_of(log)[0], crop.id).owner.id == tank.id


def test_flowers_are_counted_anew_and_meters_take_turns(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Pollinate", "pollination")
    keep(log, "Calibrate", "calibration", 30, who=RoutineFor.ROOM)
    room, _ = furnish(log, crop)
    write(log, crop, day(-1), Pollination(females_pollinated=3, way=PollinationWay.BRUSH))
    write_for(log, OwnerKind.ROOM, room.id, day(-60), Calibration("EC", 1.413))
    write_for(log, OwnerKind.ROOM, room.id, day(-50), Calibration("pH", 7.01))
    drafts = {i.title: drafted_entry(log, i, crop.id) for i in today_of(log)}
    assert drafts["Pollinate"].detail == Pollination(way=PollinationWay.BRUSH)
    assert drafts["Calibrate"].detail == Calibration("EC", 1.413)
    assert drafts["Calibrate"].owner.id == room.id


def test_a_note_routine_writes_its_words_and_other_notes_do_not_count_for_it(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Looked for mites", "note")
    write(log, crop, TODAY, Note(), note="warm")
    change = mark_done(log, today_of(log)[0])
    with log.unit() as unit:
        assert sorted(e.note for e in unit.entries.all(kind="note")) == ["Looked for mites", "warm"]
    assert titles(log) == []
    remove_entry(log, change.record_ids[0])
    assert titles(log) == ["Looked for mites"]


def test_a_tick_is_taken_back_by_undo(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Turn the pot", every_days=3)
    change = tick(log, today_of(log)[0])
    assert titles(log) == []
    assert titles(log, day(3)) == ["Turn the pot"]
    undo(log, change)
    assert titles(log) == ["Turn the pot"]


def test_what_is_put_off_comes_on_its_new_day_and_can_be_put_off_again(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Turn the pot", every_days=7, from_day=day(-2))
    put_off(log, today_of(log)[0], day(3))
    assert titles(log) == []
    assert [(i.due_day, i.late_days) for i in due_items(log, TODAY, day(12))] == [(day(3), 0), (day(10), 0)]
    with pytest.raises(RecordRefused, match="later day"):
        put_off(log, due_items(log, TODAY, day(3))[0], TODAY)


def test_leaving_out_wants_a_reason_and_counts_the_rhythm_on_from_today(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Turn the pot", every_days=7, from_day=day(-30))
    item = today_of(log)[0]
    with pytest.raises(RecordRefused, match="why it is left out"):
        leave_out(log, item, "  ")
    change = leave_out(log, item, "away")
    assert [i.due_day for i in due_items(log, TODAY, day(8))] == [day(7)]
    undo(log, change)
    assert titles(log) == ["Turn the pot"]


def test_routines_are_changed_removed_and_brought_back(log: OpenLogbook, crop: Crop) -> None:
    routine = keep(log, "Feed", "feed")
    change_routine(log, replace(routine, name="Give feed"))
    change = remove_routine(log, routine.id)
    assert (routines_of(log), titles(log)) == ([], [])
    undo(log, change)
    assert [r.name for r in routines_of(log)] == ["Give feed"]


def test_a_routine_without_what_its_rule_needs_is_refused(log: OpenLogbook) -> None:
    routine = starting_routines([], TODAY)[0].routine
    for wrong in ({"name": " "}, {"every_days": None}, {"entry_kind": "dance"}, {"when": RoutineWhen.AT_AGE}):
        with pytest.raises(RecordRefused):
            add_routines(log, [replace(routine, **wrong)])  # type: ignore[arg-type]
    assert routines_of(log) == []


def test_the_starting_set_fits_what_grows_and_is_written_as_one_change(log: OpenLogbook, crop: Crop) -> None:
    offered = starting_routines([FloweringHabit.SEPARATE], TODAY)
    assert {o.routine.name: o.fits for o in offered} == {
        "Feed": True, "Photo": True, "Pollinate": True, "Shake the trusses": False,
        "Clean up dropped flowers": True, "Calibrate the meters": True,
    }  # fmt: skip
    change = add_routines(log, [o.routine for o in offered if o.fits])
    assert set(titles(log)) == {"Feed", "Photo", "Calibrate the meters"}
    undo(log, change)
    assert routines_of(log) == []
