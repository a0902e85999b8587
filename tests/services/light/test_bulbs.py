"""Hours of bulbs, and the day on which one is due."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import LightChange, OwnerKind
from growlog.records.room import Lamp, Room
from growlog.services.due import due_items, tick
from growlog.services.light.bulbs import bulbs_due, bulbs_of_room
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import rooms_of, save_thing
from tests.logbooks import TODAY, furnish, write_for


@pytest.fixture
def room(log: OpenLogbook, crop: Crop) -> Room:
    made = furnish(log, crop)[0]
    write_for(log, OwnerKind.ROOM, made.id, TODAY - timedelta(days=200), LightChange(20))
    return made


def lamp(room: Room, **more: object) -> Lamp:
    return Lamp(new_id(), room.id, "Lamp", bulb_from_day=TODAY - timedelta(days=99), **more)  # type: ignore[arg-type]


def test_a_bulb_counts_the_hours_of_the_programme_since_it_was_new(log: OpenLogbook, room: Room) -> None:
    save_thing(log, lamp(room))
    (bulb,) = bulbs_of_room(log, room.id)
    assert (bulb.hours_so_far, bulb.due_on) == (100 * 20, None)


def test_it_is_due_when_it_will_have_its_rated_life(log: OpenLogbook, room: Room) -> None:
    save_thing(log, lamp(room, rated_life_h=2200))
    due_day = TODAY + timedelta(days=10)
    assert bulbs_of_room(log, room.id)[0].due_on == due_day
    (due,) = bulbs_due(log, due_day)
    assert (due.key.startswith("bulb:"), due.day, due.room_name) == (True, due_day, room.name)
    assert bulbs_due(log, TODAY) == []


def test_the_due_list_has_it_until_it_is_ticked_or_changed(log: OpenLogbook, room: Room) -> None:
    made = lamp(room, rated_life_h=1900)
    save_thing(log, made)
    (item,) = due_items(log, TODAY, TODAY)
    assert item.title == "Change the bulb of Lamp"
    assert "2000" in item.why
    assert item.late_days == 5
    save_thing(log, replace(rooms_of(log)[0].lamps[0], bulb_from_day=TODAY))
    assert due_items(log, TODAY, TODAY) == []
    save_thing(log, replace(rooms_of(log)[0].lamps[0], bulb_from_day=date(2025, 1, 1)))
    (item,) = due_items(log, TODAY, TODAY)
    tick(log, item)
    assert due_items(log, TODAY, TODAY) == []


def test_a_lamp_that_was_taken_down_is_due_no_more(log: OpenLogbook, room: Room) -> None:
    save_thing(log, lamp(room, rated_life_h=100, until_day=TODAY - timedelta(days=1)))
    assert bulbs_of_room(log, room.id) == []
