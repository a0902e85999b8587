"""Rooms, tanks and lamps, where a crop stands, and mixes in their editions."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.problems import RecordRefused
from growlog.records.recipe import MixPart
from growlog.records.room import Lamp, Room
from growlog.services.crops import clear_crop, remove_crop
from growlog.services.mixes import mixes_of, save_mix
from growlog.services.open_logbook import LogbookProblem, OpenLogbook, new_id
from growlog.services.rooms import change_placement, place_crop, placements_of, remove_thing, rooms_of, save_thing
from tests.logbooks import SOWN, content_of, furnish, plant_crop

DAY = date(2026, 1, 18)
PARTS = (MixPart("Part A", 2.0), MixPart("Part B", 2.0))


def test_a_room_comes_back_with_its_lamps_and_tanks(log: OpenLogbook, crop: Crop) -> None:
    room, tank = furnish(log, crop)
    lamp = Lamp(new_id(), room.id, "Bar lamp", 2, 100, 104, 2.7)
    save_thing(log, lamp)
    (view,) = rooms_of(log)
    assert (view.room, view.lamps, view.tanks) == (room, (lamp,), (tank,))
    remove_thing(log, lamp)
    assert rooms_of(log)[0].lamps == ()


def test_a_changed_room_is_written_over_and_a_stale_one_refused(log: OpenLogbook) -> None:
    room = Room(new_id(), "Box room", 1.2)
    save_thing(log, room)
    save_thing(log, replace(room, floor_m2=1.5))
    with pytest.raises(LogbookProblem, match="changed elsewhere"):
        save_thing(log, replace(room, floor_m2=1.7))
    assert [v.room.floor_m2 for v in rooms_of(log)] == [1.5]


def test_a_room_without_a_name_is_refused(log: OpenLogbook) -> None:
    with pytest.raises(RecordRefused):
        save_thing(log, Room(new_id(), " "))
    assert rooms_of(log) == []


def test_placing_a_crop_ends_where_it_stood_before(log: OpenLogbook, crop: Crop) -> None:
    first, _ = furnish(log, crop)
    second = Room(new_id(), "Shelf", 0.4)
    save_thing(log, second)
    place_crop(log, crop.id, second.id, DAY, floor_share=1.0)
    spans = [(p.room_id, p.from_day, p.until_day) for p in placements_of(log, crop.id)]
    assert spans == [(first.id, SOWN, DAY - timedelta(days=1)), (second.id, DAY, None)]


def test_placing_a_crop_again_on_the_same_day_replaces_the_placement(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, share=0.5)
    place_crop(log, crop.id, room.id, SOWN, floor_share=0.9)
    assert [p.floor_share for p in placements_of(log, crop.id)] == [0.9]


def test_more_than_the_whole_floor_is_refused_and_nothing_moves(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, share=0.6)
    other = plant_crop(log, "Shelf Ember")
    before = content_of(log)
    with pytest.raises(RecordRefused, match="60 %"):
        place_crop(log, other.id, room.id, DAY, floor_share=0.5)
    assert content_of(log) == before
    place_crop(log, other.id, room.id, DAY, floor_share=0.4)


def test_a_crop_that_comes_later_holds_its_floor_against_one_placed_before_it(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, from_day=DAY, share=0.6)
    other = plant_crop(log, "Shelf Ember")
    with pytest.raises(RecordRefused, match="60 %"):
        place_crop(log, other.id, room.id, DAY - timedelta(days=20), floor_share=0.5)


@pytest.mark.parametrize("way", ["cleared", "removed", "moved"])
def test_a_crop_that_is_gone_leaves_its_floor(log: OpenLogbook, crop: Crop, way: str) -> None:
    room, _ = furnish(log, crop, share=0.9)
    other, elsewhere = plant_crop(log, "Shelf Ember"), Room(new_id(), "Shelf", 0.4)
    save_thing(log, elsewhere)
    if way == "cleared":
        clear_crop(log, crop.id, DAY - timedelta(days=1))
    elif way == "removed":
        remove_crop(log, crop.id)
    else:
        place_crop(log, crop.id, elsewhere.id, DAY, floor_share=0.9)
    place_crop(log, other.id, room.id, DAY, floor_share=0.9)
    assert [p.room_id for p in placements_of(log, other.id)] == [room.id]


def test_a_changed_mix_is_the_next_edition_and_the_first_stays_as_it_was(log: OpenLogbook) -> None:
    first, _ = save_mix(log, "Two bottles", PARTS)
    second, _ = save_mix(log, "Two bottles", (MixPart("Part A", 3.0),), "stronger")
    assert (first.edition, second.edition) == (1, 2)
    assert mixes_of(log) == [second]
    with log.unit() as unit:
        assert unit.mixes.get(first.id) == first


@pytest.mark.parametrize("name", [" Two bottles ", "two BOTTLES"])
def test_a_mix_of_the_same_name_is_the_next_edition_however_it_is_typed(log: OpenLogbook, name: str) -> None:
    save_mix(log, "Two bottles", PARTS)
    again, _ = save_mix(log, name, PARTS)
    assert again.edition == 2
    assert mixes_of(log) == [again]


def test_a_mix_without_a_name_or_with_a_dose_that_is_a_concentrate_is_refused(log: OpenLogbook) -> None:
    for name, parts in ((" ", PARTS), ("Strong", (MixPart("Part A", 500.0),))):
        with pytest.raises(RecordRefused):
            save_mix(log, name, parts)
    assert mixes_of(log) == []


def test_a_place_is_changed_within_the_floor_and_beside_no_other(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop)
    shelf = Room(new_id(), "Shelf")
    save_thing(log, shelf)
    place_crop(log, crop.id, shelf.id, date(2026, 1, 10))
    first, second = placements_of(log, crop.id)
    change_placement(log, replace(first, until_day=date(2026, 1, 5)))
    with pytest.raises(RecordRefused, match="stands elsewhere"):
        change_placement(log, replace(placements_of(log, crop.id)[0], until_day=date(2026, 1, 12)))
    with pytest.raises(RecordRefused, match="ends before it begins"):
        change_placement(log, replace(second, until_day=date(2026, 1, 9)))
    assert [p.until_day for p in placements_of(log, crop.id)] == [date(2026, 1, 5), None]
    assert placements_of(log, crop.id)[0].room_id == room.id
