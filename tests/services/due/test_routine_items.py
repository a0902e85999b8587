"""Routines in the list of what is due: what entries do by themselves, whose they are, and when they are asked for."""

from dataclasses import replace
from datetime import date

from growlog.records.crop import Crop
from growlog.records.entry import (
    Calibration,
    Feed,
    FruitCheck,
    OwnerKind,
    Pollination,
    PottingOn,
    Reading,
    StageSeen,
    Training,
)
from growlog.records.routine import RoutineFor, RoutineWhen
from growlog.services.crops import clear_crop
from growlog.services.due import DueHow, change_routine, due_items, due_marks
from growlog.services.entries import remove_entry
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import TODAY, add_plant, furnish, plant_crop, write, write_for
from tests.services.due.routines import day, keep, titles, today_of
from tests.services.photo_rows import photo_on

FLOWERS, FEMALES = RoutineWhen.WHILE_FLOWERING, RoutineWhen.WHILE_FEMALES_OPEN


def test_an_entry_of_its_kind_does_a_routine_without_a_tick(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Feed", "feed")
    write(log, crop, day(-1), Feed(volume_l=1.0))
    assert titles(log) == ["Feed"]
    fed = write(log, crop, TODAY, Feed(volume_l=1.0))
    assert titles(log) == []
    assert titles(log, day(1)) == ["Feed"]
    remove_entry(log, fed.id)
    assert titles(log) == ["Feed"]


def test_entries_of_a_plant_and_of_the_tank_count_for_the_crop_that_stood_there(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Feed", "feed")
    keep(log, "Train", "training")
    other = plant_crop(log, "Landing Light", species="chilli")
    _, tank = furnish(log, crop)
    write_for(log, OwnerKind.TANK, tank.id, TODAY, Feed(volume_l=5))
    write_for(log, OwnerKind.PLANT, add_plant(log, crop).id, TODAY, Training(stems_tied=1))
    assert {(i.title, i.crop_name) for i in today_of(log)} == {("Feed", other.name), ("Train", other.name)}


def test_a_photo_of_the_day_does_the_photo_routine(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Photo", "photo")
    assert [i.how for i in today_of(log)] == [DueHow.PHOTO]
    photo_on(log, crop, TODAY, leads=True)
    assert titles(log) == []


def test_a_weekly_routine_that_was_missed_says_how_late_it_is(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Read the air", "reading", every_days=7)
    write(log, crop, day(-10), Reading(air_temperature_c=22.0))
    item = today_of(log)[0]
    assert (item.late_days, item.since, item.due_day) == (3, day(-3), TODAY)
    assert item.why == "Every 7 days, last 25 February 2026."


def test_a_routine_of_the_room_is_asked_for_once(log: OpenLogbook, crop: Crop) -> None:
    plant_crop(log, "Landing Light", species="chilli")
    room, _ = furnish(log, crop)
    keep(log, "Calibrate the meters", "calibration", 30, who=RoutineFor.ROOM)
    assert [(i.title, i.crop_id, i.crop_name) for i in today_of(log)] == [("Calibrate the meters", None, "")]
    write_for(log, OwnerKind.ROOM, room.id, day(-4), Calibration("pH"))
    assert titles(log) == []
    assert titles(log, day(26)) == ["Calibrate the meters"]


def test_only_growing_crops_and_routines_that_are_on_ask(log: OpenLogbook, crop: Crop) -> None:
    routine = keep(log, "Feed", "feed")
    clear_crop(log, crop.id, TODAY)
    assert titles(log) == []
    other = plant_crop(log, "Landing Light", species="chilli")
    assert [i.crop_id for i in today_of(log)] == [other.id]
    change_routine(log, replace(routine, is_on=False))
    assert titles(log) == []


def test_a_routine_for_one_crop_leaves_the_others_alone(log: OpenLogbook, crop: Crop) -> None:
    plant_crop(log, "Landing Light", species="chilli")
    keep(log, "Turn the pot", who=RoutineFor.CROP, crop_id=crop.id)
    assert [(i.title, i.crop_id) for i in today_of(log)] == [("Turn the pot", crop.id)]


def test_a_plant_age_is_asked_for_until_it_is_done_but_not_of_crops_that_passed_it_before_the_routine_began(
    log: OpenLogbook,
) -> None:
    young = plant_crop(log, "Young", sown=day(-22))
    plant_crop(log, "Old", sown=day(-90))
    keep(log, "Pot on", "potting-on", None, RoutineWhen.AT_AGE, from_day=day(-30), at_age=20)
    assert [(i.crop_name, i.late_days) for i in today_of(log)] == [("Young", 2)]
    write(log, young, day(-1), PottingOn(6.5))
    assert titles(log) == []


def test_a_day_is_asked_for_from_that_day_on(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Order seed", every_days=None, when=RoutineWhen.ON_DAY, who=RoutineFor.ROOM, from_day=day(3))
    assert titles(log) == []
    assert [(i.title, i.due_day) for i in due_items(log, TODAY, day(9))] == [("Order seed", day(3))]


def test_pollinating_is_asked_for_while_females_were_seen_lately(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Pollinate", "pollination", when=FEMALES, in_the_morning=True)
    assert titles(log) == []
    write(log, crop, day(-9), StageSeen(("51",)))
    write(log, crop, day(-3), StageSeen(("61",)))
    assert titles(log) == ["Pollinate"]
    assert titles(log, day(1)) == []
    write(log, crop, day(-2), Pollination(females_pollinated=1))
    assert titles(log, day(1)) == ["Pollinate"]
    write(log, crop, day(-1), FruitCheck(females_open=0, hanging=2))
    assert titles(log) == []


def test_females_are_not_asked_for_once_the_stage_is_over_nor_of_flowers_that_are_not_apart(
    log: OpenLogbook, crop: Crop
) -> None:
    keep(log, "Pollinate", "pollination", when=FEMALES)
    chilli = plant_crop(log, "Landing Light", species="chilli")
    write(log, chilli, TODAY, StageSeen(("61",)))
    write(log, crop, day(-2), StageSeen(("65",)))
    assert [i.crop_name for i in today_of(log)] == [crop.name]
    write(log, crop, TODAY, StageSeen(("81",)))
    assert titles(log) == []


def test_trusses_are_shaken_for_flowers_that_hold_both_and_flowers_cleaned_up_for_all(
    log: OpenLogbook, crop: Crop
) -> None:
    keep(log, "Shake", "pollination", when=FLOWERS)
    keep(log, "Clean up", every_days=3, when=FLOWERS)
    chilli = plant_crop(log, "Landing Light", species="chilli")
    for one in (crop, chilli):
        write(log, one, day(-5), StageSeen(("61",)))
    assert {(i.title, i.crop_name) for i in today_of(log)} == {
        ("Shake", chilli.name), ("Clean up", chilli.name), ("Clean up", crop.name)
    }  # fmt: skip


def test_where_flowering_was_never_noted_as_a_stage_flowers_seen_within_a_week_are_flowering(
    log: OpenLogbook, crop: Crop
) -> None:
    keep(log, "Clean up", when=FLOWERS)
    write(log, crop, day(-40), StageSeen(("13",)))
    write(log, crop, day(-7), Pollination(males_open=2))
    assert titles(log) == ["Clean up"]
    assert titles(log, day(1)) == []


def test_what_belongs_to_the_morning_stands_before_the_rest_and_late_things_before_all(
    log: OpenLogbook, crop: Crop
) -> None:
    keep(log, "A note")
    keep(log, "Water early", in_the_morning=True)
    keep(log, "Weigh", every_days=5, from_day=day(-2))
    assert titles(log) == ["Weigh", "Water early", "A note"]


def test_keys_and_days_are_the_same_on_every_look(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Feed", "feed")
    keep(log, "Clean", every_days=3)
    first = due_items(log, TODAY, day(20))
    assert first == due_items(log, TODAY, day(20))
    assert len({(i.key, i.since) for i in first}) == len(first)
    assert isinstance(first[0].since, date)


def test_a_note_of_the_room_is_only_ticked_since_notes_belong_to_crops(log: OpenLogbook, crop: Crop) -> None:
    keep(log, "Sweep", "note", who=RoutineFor.ROOM)
    assert [i.how for i in today_of(log)] == [DueHow.TICK]


def test_the_board_shows_the_crops_and_the_rooms_things_and_each_daily_one_once(log: OpenLogbook, crop: Crop) -> None:
    plant_crop(log, "Landing Light", species="chilli")
    keep(log, "Feed", "feed")
    keep(log, "Sweep", every_days=3, who=RoutineFor.ROOM, from_day=day(-1))
    keep(log, "Weigh", every_days=5, from_day=day(2))
    marks = due_marks(due_items(log, TODAY, day(20)), crop.id, crop.day_zero, day(7))
    zero = (TODAY - crop.day_zero).days
    assert [(m.age - zero, m.text) for m in marks] == [
        (0, "Sweep, late"), (0, "Feed"), (2, "Weigh"), (3, "Sweep"), (6, "Sweep"), (7, "Weigh")
    ]  # fmt: skip
