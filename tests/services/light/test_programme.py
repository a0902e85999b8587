"""The light of a crop by plan, entries and readings, and what does not agree about it."""

from dataclasses import replace
from datetime import date, time, timedelta

import pytest

from growlog.calculations.lamp_light import own_factor, with_own_factor
from growlog.calculations.light_programme import CanopyWay
from growlog.records.crop import Crop
from growlog.records.entry import LightChange, OwnerKind, Reading
from growlog.records.light_plan import LightStep
from growlog.records.problems import RecordRefused
from growlog.records.room import Lamp, Room
from growlog.services.board import board_of
from growlog.services.crops import clear_crop
from growlog.services.entries import add_entry, check_entry
from growlog.services.light.programme import light_of_crop
from growlog.services.light.steps import check_step, light_steps_of, new_step, remove_step, save_step
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import save_thing
from growlog.services.undo import undo
from tests.logbooks import SOWN, entry_on, furnish, plant_crop, write, write_for


def at(age: int) -> date:
    return SOWN + timedelta(days=age)


@pytest.fixture
def room(log: OpenLogbook, crop: Crop) -> Room:
    return furnish(log, crop)[0]


def by_age(room: Room, crop: Crop, age: int, hours: float, **more: object) -> LightStep:
    return LightStep(new_id(), room.id, None, crop.id, age, hours, **more)  # type: ignore[arg-type]


def test_stages_by_plant_age_and_entries_make_the_light_of_each_day(log: OpenLogbook, crop: Crop, room: Room) -> None:
    save_step(log, by_age(room, crop, 0, 18, on_at=time(20), canopy_ppfd_umol=200))
    save_step(log, by_age(room, crop, 42, 12, dimming_percent=100))
    write_for(log, OwnerKind.ROOM, room.id, at(60), LightChange(14))
    light = light_of_crop(log, crop.id)
    hours = [d.setting.photoperiod_h for d in light.days]
    assert (hours[0], hours[41], hours[42], hours[59], hours[60], len(hours)) == (18, 18, 12, 12, 14, 113)
    assert light.days[0].dli_mol == pytest.approx(12.96)  # 200 × 18 × 0.0036
    assert light.usual is not None
    assert light.age_of(light.days[42]) == 42


def test_the_boards_lane_follows_the_plan(log: OpenLogbook, crop: Crop, room: Room) -> None:
    save_step(log, by_age(room, crop, 10, 18))
    save_step(log, by_age(room, crop, 42, 12))
    board = board_of(log, crop.id)
    assert [(s.start_age, s.end_age, s.photoperiod_h) for s in board.light] == [(10, 41, 18), (42, 112, 12)]


def test_an_entry_of_the_same_day_wins_over_the_plan(log: OpenLogbook, crop: Crop, room: Room) -> None:
    save_step(log, replace(new_step(room.id, at(5)), photoperiod_h=18))
    write(log, crop, at(5), LightChange(13))
    assert light_of_crop(log, crop.id).days[0].setting.photoperiod_h == 13


def test_a_step_by_the_age_of_a_crop_that_was_cleared_before_never_starts(
    log: OpenLogbook, crop: Crop, room: Room
) -> None:
    save_step(log, by_age(room, crop, 60, 12))
    assert [v.day for v in light_steps_of(log, room.id)] == [at(60)]
    clear_crop(log, crop.id, at(50))
    (view,) = light_steps_of(log, room.id)
    assert (view.day, "day 60 of Boxroom Gold" in view.label) == (None, True)


def test_a_sensor_goes_before_lux_and_both_before_what_was_stated(log: OpenLogbook, crop: Crop, room: Room) -> None:
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(16, None, 50, 300))
    write(log, crop, at(10), Reading(canopy_lux=8200, lamp_kind="hps"))
    write(log, crop, at(20), Reading(canopy_ppfd_umol=150))
    days = {d.day: d.setting.canopy for d in light_of_crop(log, crop.id).days}
    stated, lux, sensor = days[at(9)], days[at(10)], days[at(20)]
    assert stated is not None
    assert lux is not None
    assert sensor is not None
    assert (stated.way, lux.way, sensor.way) == (CanopyWay.STATED, CanopyWay.LUX, CanopyWay.SENSOR)
    # Thimijan and Heins 1983: 82 lux per µmol/m²/s of high-pressure sodium.
    assert (lux.ppfd_umol, sensor.ppfd_umol) == (pytest.approx(100), 150)
    assert lux.low is not None
    assert lux.low < 100


def test_white_leds_need_the_growers_own_factor(log: OpenLogbook, crop: Crop, room: Room) -> None:
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(16))
    write(log, crop, at(10), Reading(canopy_lux=6800, lamp_kind="white-led"))
    assert light_of_crop(log, crop.id).days[10].dli_mol is None
    write(log, crop, at(11), Reading(canopy_lux=6800, lamp_kind=with_own_factor("white-led", 68)))
    canopy = light_of_crop(log, crop.id).days[11].setting.canopy
    assert canopy is not None
    assert canopy.ppfd_umol == pytest.approx(100)
    assert own_factor("white-led:68") == ("white-led", 68)
    with pytest.raises(ValueError, match="lux_per_umol"):
        own_factor("white-led:680")


def test_without_a_reading_the_lamps_give_an_estimate_at_most(log: OpenLogbook, crop: Crop, room: Room) -> None:
    save_thing(log, Lamp(new_id(), room.id, "Lamp", 2, wall_w=100, efficacy_umol_per_j=2.4))
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(16, None, 50))
    canopy = light_of_crop(log, crop.id).days[0].setting.canopy
    assert canopy is not None
    # By definition: 200 W × 2.4 µmol/J at half output on 1.2 m² are 200 µmol/m²/s.
    assert (canopy.ppfd_umol, canopy.way, canopy.way.is_estimate) == (pytest.approx(200), CanopyWay.LAMPS, True)
    assert board_of(log, crop.id).light[0].is_estimate


def test_more_light_than_the_lamps_can_give_is_asked_about(log: OpenLogbook, crop: Crop, room: Room) -> None:
    save_thing(log, Lamp(new_id(), room.id, "Lamp", 1, wall_w=100, efficacy_umol_per_j=2.4))
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(16, None, 100, 215))
    assert light_of_crop(log, crop.id).questions == ()
    write_for(log, OwnerKind.ROOM, room.id, at(30), LightChange(16, None, 100, 600))
    (question,) = light_of_crop(log, crop.id).questions
    assert "600" in question
    assert "200" in question
    assert light_of_crop(log, crop.id, at(29)).questions == ()


def test_it_is_asked_about_before_it_is_written(log: OpenLogbook, crop: Crop, room: Room) -> None:
    save_thing(log, Lamp(new_id(), room.id, "Lamp", 1, wall_w=100, efficacy_umol_per_j=2.4))
    bright, dimmed = LightChange(16, None, 100, 600), LightChange(16, None, 50, 150)
    asked = [p for e in (bright, dimmed) for p in check_entry(log, entry_on(crop, at(5), e))]
    assert [(p.field, p.asks) for p in asked] == [("canopy_ppfd_umol", True)] * 2
    assert "200" in asked[0].sentence
    assert check_entry(log, entry_on(crop, at(5), LightChange(16, None, 100, 210))) == []
    assert [p.asks for p in check_entry(log, entry_on(crop, at(5), Reading(canopy_ppfd_umol=600)))] == [True]
    step = by_age(room, crop, 5, 16, canopy_ppfd_umol=600)
    assert [p.field for p in check_step(log, step)] == ["canopy_ppfd_umol"]
    save_step(log, step)


def test_other_lamps_make_an_old_reading_an_estimate(log: OpenLogbook, crop: Crop, room: Room) -> None:
    save_thing(log, Lamp(new_id(), room.id, "Old", 1, wall_w=100, efficacy_umol_per_j=1.2, until_day=at(19)))
    save_thing(log, Lamp(new_id(), room.id, "New", 1, wall_w=100, efficacy_umol_per_j=2.4, from_day=at(20)))
    write_for(log, OwnerKind.ROOM, room.id, at(0), LightChange(16, None, 100, 90))
    days = light_of_crop(log, crop.id).days
    assert [d.setting.canopy.ppfd_umol for d in (days[19], days[20]) if d.setting.canopy] == [90, pytest.approx(200)]


def test_twenty_five_hours_of_light_are_refused(log: OpenLogbook, crop: Crop, room: Room) -> None:
    with pytest.raises(RecordRefused, match="Hours of light 25"):
        save_step(log, replace(new_step(room.id, at(5)), photoperiod_h=25))
    with pytest.raises(RecordRefused, match="Hours of light 25"):
        add_entry(log, entry_on(crop, at(5), LightChange(25)))


def test_steps_are_saved_changed_removed_and_undone(log: OpenLogbook, crop: Crop, room: Room) -> None:
    step = replace(new_step(room.id, at(5)), photoperiod_h=18)
    undo(log, save_step(log, step))
    assert light_steps_of(log, room.id) == []
    other = new_step(room.id, at(5))
    save_step(log, other)
    with pytest.raises(RecordRefused, match="from there on already"):
        save_step(log, replace(step, id=new_id()))
    with pytest.raises(RecordRefused, match="not in the room"):
        save_step(log, replace(new_step(room.id, at(9)), lamp_ids=("elsewhere",)))
    change = remove_step(log, light_steps_of(log, room.id)[0].step)
    assert light_of_crop(log, crop.id).days == ()
    undo(log, change)
    assert len(light_steps_of(log, room.id)) == 1


def test_another_crops_own_light_is_not_this_ones(log: OpenLogbook, crop: Crop, room: Room) -> None:
    other = plant_crop(log, "Shelf Ember")
    write(log, other, at(5), LightChange(12))
    write(log, crop, at(5), LightChange(18))
    assert light_of_crop(log, crop.id).days[0].setting.photoperiod_h == 18
