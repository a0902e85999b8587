"""All that was changed in the room's dialog goes in as one change, or not at all."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.crop import Crop, Placement
from growlog.records.problems import RecordRefused
from growlog.records.room import Device, EnergySharing, Lamp, Room, Tank
from growlog.services.crops import clear_crop
from growlog.services.light.steps import new_step, save_step
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.room_changes import room_book, save_room, share_problems
from growlog.services.rooms import rooms_of, save_thing
from growlog.services.undo import undo
from tests.logbooks import SOWN, TODAY, content_of, furnish, plant_crop


def test_everything_changed_is_one_change_that_one_undo_takes_back(log: OpenLogbook, crop: Crop) -> None:
    room, tank = furnish(log, crop)
    before = content_of(log)
    (placement,) = room_book(log).placements_in(room.id)
    lamp = Lamp(new_id(), room.id, "Panel", 2, rated_w=100)
    fan = Device(new_id(), room.id, "Fan", device_w=12)
    other = Room(new_id(), "Attic")
    changed = [
        lamp, fan, Tank(new_id(), other.id, "Grey tank", 40), other, replace(placement, floor_share=0.8),
        replace(room, energy_sharing=EnergySharing.EQUALLY),
    ]  # fmt: skip
    change = save_room(log, changed, [tank])
    box, attic = sorted(rooms_of(log), key=lambda view: view.room.name, reverse=True)
    assert (box.lamps, box.devices, box.tanks, attic.tanks[0].name) == ((lamp,), (fan,), (), "Grey tank")
    assert box.room.energy_sharing is EnergySharing.EQUALLY
    assert room_book(log).placements_in(room.id)[0].floor_share == 0.8
    assert change.title == "Save Attic, Box room"
    undo(log, change)
    assert content_of(log) == before


def test_nothing_is_kept_of_what_is_refused_in_part(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    before = content_of(log)
    with pytest.raises(RecordRefused, match="name"):
        save_room(log, [replace(room, name="Other"), Lamp(new_id(), room.id, " ")])
    assert content_of(log) == before


def test_shares_over_the_whole_floor_are_refused_with_the_day(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, share=0.6)
    other = plant_crop(log, "Porch Violet")
    late = Placement(new_id(), other.id, room.id, date(2026, 1, 10), floor_share=0.5)
    with pytest.raises(RecordRefused, match="Together 110 % from 10 January 2026 on, more than the whole"):
        save_room(log, [late])
    save_room(log, [replace(late, floor_share=0.4)])


def test_one_crop_may_give_what_another_takes_in_the_same_change(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, share=1.0)
    other = plant_crop(log, "Porch Violet")
    (placement,) = room_book(log).placements_in(room.id)
    save_room(log, [Placement(new_id(), other.id, room.id, SOWN, floor_share=0.5), replace(placement, floor_share=0.5)])
    assert [p.floor_share for p in room_book(log).placements_in(room.id)] == [0.5, 0.5]


def test_energy_by_hand_over_the_whole_is_refused(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, share=0.1)
    other = plant_crop(log, "Porch Violet")
    (placement,) = room_book(log).placements_in(room.id)
    much = Placement(new_id(), other.id, room.id, SOWN, energy_share=0.7)
    with pytest.raises(RecordRefused, match="140 %"):
        save_room(log, [much, replace(placement, energy_share=0.7)])


def test_a_cleared_crop_leaves_its_floor_to_the_next(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, share=1.0)
    clear_crop(log, crop.id, date(2026, 2, 1))
    other = plant_crop(log, "Porch Violet", date(2026, 2, 2))
    save_room(log, [Placement(new_id(), other.id, room.id, date(2026, 2, 2), floor_share=1.0)])
    assert len(room_book(log).placements_in(room.id)) == 2


def test_a_crop_stands_in_one_place_at_a_time(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    attic = Room(new_id(), "Attic")
    save_thing(log, attic)
    there = Placement(new_id(), crop.id, attic.id, date(2026, 2, 1))
    with pytest.raises(RecordRefused, match="Boxroom Gold stands in two places on 1 February 2026"):
        save_room(log, [there])
    (placement,) = room_book(log).placements_in(room.id)
    save_room(log, [there, replace(placement, until_day=date(2026, 1, 31))])


def test_a_lamp_that_the_light_programme_names_is_not_taken_off(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    lamp = Lamp(new_id(), room.id, "Panel")
    save_thing(log, lamp)
    save_step(log, replace(new_step(room.id, SOWN), lamp_ids=(lamp.id,)))
    with pytest.raises(RecordRefused, match="Panel is named in the light programme"):
        save_room(log, [], [lamp])


def test_shares_that_never_meet_do_not_add_up(crop: Crop) -> None:
    other = replace(crop, id="other", name="Porch Violet")
    first = Placement("1", crop.id, "room", SOWN, SOWN + timedelta(days=9), floor_share=0.9)
    second = Placement("2", "other", "room", SOWN + timedelta(days=10), floor_share=0.9)
    assert share_problems([first, second], [crop, other]) == {}
    meeting = replace(second, from_day=SOWN + timedelta(days=9))
    assert set(share_problems([first, meeting], [crop, other])) == {"1", "2"}


def test_the_room_of_a_crop_is_where_it_stood_last(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    book = room_book(log)
    assert (book.room_of(crop.id), book.room_of("nobody"), book.today) == (room.id, "", TODAY)
