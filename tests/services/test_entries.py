"""Entries: on which crops and days they may be, whose they are, and what is asked before a pick."""

from dataclasses import replace
from datetime import date, time, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import KINDS, Feed, Note, OwnerKind, Pick, Reading, Training, Treatment
from growlog.records.problems import RecordRefused
from growlog.services.crops import clear_crop
from growlog.services.entries import (
    add_entries,
    add_entry,
    check_entry,
    correct_entry,
    entries_of_crop,
    new_entry,
    owners_for,
    remove_entry,
)
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.rooms import place_crop
from growlog.words import show_day
from tests.logbooks import SOWN, TODAY, add_plant, content_of, entry_on, furnish, plant_crop, write, write_for

DAY = date(2026, 1, 18)


def shown_on(log: OpenLogbook, crop: Crop) -> list[str]:
    with log.unit() as unit:
        return [e.id for e in entries_of_crop(unit, unit.crops.get(crop.id))]


@pytest.mark.parametrize(
    ("day", "sentence"),
    [(SOWN - timedelta(days=1), "before day 0 of Boxroom Gold"), (TODAY + timedelta(days=1), "not come yet")],
)
def test_an_entry_on_an_impossible_day_is_refused(log: OpenLogbook, crop: Crop, day: date, sentence: str) -> None:
    with pytest.raises(RecordRefused, match=sentence) as error:
        write(log, crop, day, Pick(1, 90.0))
    assert [p.field for p in error.value.problems] == ["day"]
    assert shown_on(log, crop) == []


def test_an_entry_after_clearing_is_refused(log: OpenLogbook, crop: Crop) -> None:
    clear_crop(log, crop.id, date(2026, 2, 1))
    with pytest.raises(RecordRefused, match=f"was cleared on {show_day(date(2026, 2, 1))}"):
        write(log, crop, date(2026, 2, 2), Note())
    write(log, crop, date(2026, 2, 1), Note())


def test_the_first_and_the_last_day_are_good_days(log: OpenLogbook, crop: Crop) -> None:
    entries = [write(log, crop, day, Pick(1, 90.0)) for day in (SOWN, TODAY)]
    assert shown_on(log, crop) == [e.id for e in entries]


@pytest.mark.parametrize("kind", KINDS)
def test_an_empty_entry_of_each_kind_can_be_checked(log: OpenLogbook, crop: Crop, kind: str) -> None:
    entry = new_entry(entry_on(crop, DAY, Note()).owner, DAY, kind)
    assert entry.kind == kind
    assert all(p.sentence for p in check_entry(log, entry))
    assert shown_on(log, crop) == []


def test_a_pick_within_the_harvest_interval_is_asked_about_and_can_be_written(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, DAY, Treatment("Leaf wash", "mildew", "", 4, 3))
    for days, asked in ((-1, False), (0, True), (2, True), (3, False)):
        problems = check_entry(log, entry_on(crop, DAY + timedelta(days=days), Pick(1, 90.0)))
        assert bool(problems) == asked
        assert all(p.asks for p in problems)
    (question,) = check_entry(log, entry_on(crop, DAY + timedelta(days=2), Pick(1, 90.0)))
    assert f"The label of Leaf wash asks for no pick before {show_day(date(2026, 1, 21))}." in question.sentence
    assert "the label rules" in question.sentence
    write(log, crop, DAY + timedelta(days=2), Pick(1, 90.0))


def test_of_two_harvest_intervals_the_one_that_ends_last_is_named(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, DAY, Treatment("Leaf wash", harvest_interval_days=3))
    write(log, crop, DAY + timedelta(days=1), Treatment("Soft soap", harvest_interval_days=7))
    (question,) = check_entry(log, entry_on(crop, DAY + timedelta(days=2), Pick(1, 90.0)))
    assert "Soft soap" in question.sentence
    assert show_day(date(2026, 1, 26)) in question.sentence


def test_a_treatment_of_the_room_closes_the_harvest_of_the_crops_in_it(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    write_for(log, OwnerKind.ROOM, room.id, DAY, Treatment("Leaf wash", harvest_interval_days=3))
    assert [p.asks for p in check_entry(log, entry_on(crop, DAY, Pick(1, 90.0)))] == [True]


def test_entries_of_room_and_tank_show_on_the_crops_that_stood_there_that_day(log: OpenLogbook, crop: Crop) -> None:
    room, tank = furnish(log, crop, SOWN + timedelta(days=10))
    other, elsewhere = plant_crop(log, "Shelf Ember"), plant_crop(log, "Sill Green")
    place_crop(log, other.id, room.id, DAY, floor_share=0.5)  # by another tank
    air = [
        write_for(log, OwnerKind.ROOM, room.id, day, Reading(24.0, 60))
        for day in (SOWN + timedelta(days=9), SOWN + timedelta(days=10), DAY, TODAY)
    ]
    feed = write_for(log, OwnerKind.TANK, tank.id, DAY, Feed(volume_l=2.0))
    clear_crop(log, crop.id, DAY)
    assert set(shown_on(log, crop)) == {air[1].id, air[2].id, feed.id}
    assert set(shown_on(log, other)) == {air[2].id, air[3].id}
    assert shown_on(log, elsewhere) == []


def test_an_entry_of_the_room_shows_once_on_a_crop_that_moved_within_it(log: OpenLogbook, crop: Crop) -> None:
    room, tank = furnish(log, crop)
    place_crop(log, crop.id, room.id, DAY, floor_share=0.8, tank_id=tank.id)
    air = [write_for(log, OwnerKind.ROOM, room.id, d, Reading(24.0)) for d in (DAY - timedelta(days=1), DAY)]
    assert shown_on(log, crop) == [e.id for e in air]


def test_an_entry_of_a_plant_is_the_crops_and_held_by_its_dates(log: OpenLogbook, crop: Crop) -> None:
    plant = add_plant(log, crop)
    entry = write_for(log, OwnerKind.PLANT, plant.id, DAY, Pick(1, 90.0))
    assert shown_on(log, crop) == [entry.id]
    with pytest.raises(RecordRefused, match="before day 0"):
        write_for(log, OwnerKind.PLANT, plant.id, SOWN - timedelta(days=1), Pick(1, 90.0))


def test_a_change_names_the_crops_it_concerns_and_all_of_them_for_a_room(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    assert add_entry(log, entry_on(crop, DAY, Pick(1, 90.0))).crop_ids == {crop.id}
    shared = write_for(log, OwnerKind.ROOM, room.id, DAY, Reading(24.0))
    assert remove_entry(log, shared.id).crop_ids is None


def test_a_day_is_told_in_the_order_of_its_times_and_what_has_none_comes_last(log: OpenLogbook, crop: Crop) -> None:
    late = write(log, crop, DAY, Note(), at=time(18, 40))
    untimed = write(log, crop, DAY, Pick(1, 90.0))
    early = write(log, crop, DAY, Feed(volume_l=2.0), at=time(7, 5))
    before = write(log, crop, DAY - timedelta(days=1), Note())
    assert shown_on(log, crop) == [before.id, early.id, late.id, untimed.id]


def test_entries_made_together_share_a_group_and_one_undoable_change(log: OpenLogbook, crop: Crop) -> None:
    made = [entry_on(crop, DAY, Pick(1, 90.0)), entry_on(crop, DAY, Training(2))]
    change = add_entries(log, made, "Morning round")
    with log.unit() as unit:
        groups = {e.group_id for e in unit.entries.all(crop_id=crop.id)}
    assert groups == {change.group_id}
    assert (change.title, set(change.record_ids)) == ("Morning round", {e.id for e in made})


def test_a_single_entry_has_no_group(log: OpenLogbook, crop: Crop) -> None:
    write(log, crop, DAY, Pick(1, 90.0))
    with log.unit() as unit:
        assert [e.group_id for e in unit.entries.all()] == [None]


def test_of_entries_made_together_all_or_none_are_written_and_all_that_is_wrong_is_said(
    log: OpenLogbook, crop: Crop
) -> None:
    made = [entry_on(crop, DAY, Pick(1, 90.0)), entry_on(crop, DAY, Feed()), entry_on(crop, DAY, Training())]
    with pytest.raises(RecordRefused) as error:
        add_entries(log, made)
    assert {p.field for p in error.value.problems} == {"volume_l", "old_leaves_removed"}
    assert shown_on(log, crop) == []


def test_a_corrected_entry_is_written_over_the_version_that_was_read(log: OpenLogbook, crop: Crop) -> None:
    entry = write(log, crop, DAY, Pick(1, 90.0))
    correct_entry(log, replace(entry, detail=Pick(2, 170.0), day=DAY + timedelta(days=1)))
    with log.unit() as unit:
        corrected = unit.entries.get(entry.id)
    assert (corrected.detail, corrected.day, corrected.version) == (Pick(2, 170.0), date(2026, 1, 19), 2)


def test_a_correction_of_a_stale_version_is_refused_and_changes_nothing(log: OpenLogbook, crop: Crop) -> None:
    entry = write(log, crop, DAY, Pick(1, 90.0))
    correct_entry(log, replace(entry, detail=Pick(2, 170.0)))
    before = content_of(log)
    with pytest.raises(LogbookProblem, match="changed elsewhere"):
        correct_entry(log, replace(entry, detail=Pick(3, 250.0)))
    assert content_of(log) == before


def test_a_removed_entry_shows_nowhere(log: OpenLogbook, crop: Crop) -> None:
    entry = write(log, crop, DAY, Pick(1, 90.0))
    remove_entry(log, entry.id)
    assert shown_on(log, crop) == []
    with log.unit() as unit:
        assert unit.entries.get(entry.id).removed_at == log.clock.now()


def test_an_entry_may_belong_to_crop_plant_tank_or_room_as_they_stood_that_day(log: OpenLogbook, crop: Crop) -> None:
    assert [b.name for b in owners_for(log, crop.id, DAY)] == ["Boxroom Gold"]
    furnish(log, crop, DAY)
    add_plant(log, crop, "2", DAY)
    names = [b.name for b in owners_for(log, crop.id, DAY)]
    assert names == ["Boxroom Gold", "plant 1", "plant 2", "Blue tank", "Box room"]
    assert [b.name for b in owners_for(log, crop.id, DAY - timedelta(days=1))] == ["Boxroom Gold"]
