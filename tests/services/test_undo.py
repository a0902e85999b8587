"""Undo: every kind of change can be taken back and done again, unless something has moved since."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.entry import Cull, CullCause, Entry, Feed, Note, Pick, StageSeen
from growlog.records.recipe import MixPart
from growlog.records.room import Lamp, Room, Tank
from growlog.services.crops import (
    add_crop,
    change_crop,
    clear_crop,
    crop_and_cultivar,
    new_crop,
    remove_crop,
    reopen_crop,
)
from growlog.services.entries import add_entries, correct_entry, remove_entry
from growlog.services.mixes import save_mix
from growlog.services.open_logbook import LogbookProblem, OpenLogbook, new_id
from growlog.services.photo_uses import let_lead, move_photo, remove_photo
from growlog.services.rooms import place_crop, remove_thing, save_thing
from growlog.services.undo import undo
from growlog.words import show_day
from tests.logbooks import SOWN, TODAY, content_of, entry_on, furnish, plant_crop, write
from tests.services.photo_rows import leaders, photo_on

DAY = date(2026, 1, 18)
PICK = Pick(2, 171.0, (93.0, 78.0), (Cull(1, CullCause.CRACKED, 40.0),))


class Furnished:
    """A crop in a room with entries, a mix and photos: something to change of every kind."""

    def __init__(self, log: OpenLogbook) -> None:
        self.log = log
        self.crop = plant_crop(log)
        self.other = plant_crop(log, "Shelf Ember")
        self.cleared = plant_crop(log, "Sill Green")
        clear_crop(log, self.cleared.id, TODAY)
        self.room, self.tank = furnish(log, self.crop)
        self.lamp = Lamp(new_id(), self.room.id, "Bar lamp")
        save_thing(log, self.lamp)
        self.mix, _ = save_mix(log, "Two bottles", (MixPart("Part A", 2.0),))
        self.entry = write(log, self.crop, DAY, PICK)
        self.first = photo_on(log, self.crop, DAY, leads=True)
        self.second = photo_on(log, self.crop, DAY)

    def cultivar_changed(self) -> Change:
        cultivar = crop_and_cultivar(self.log, self.crop.id)[1]
        return change_crop(self.log, replace(self.crop, note="x"), replace(cultivar, packet_days=60))

    def crop_added(self) -> Change:
        crop, cultivar = new_crop("Corner Pale", "cucumber", SOWN)
        return add_crop(self.log, crop, cultivar)

    def entries_added(self) -> Change:
        more = [Feed(self.mix.id, None, 2.0, 1.8), StageSeen(("61", "71")), Note()]
        return add_entries(self.log, [entry_on(self.crop, DAY, d) for d in more])


CHANGES: dict[str, Callable[[Furnished], Change]] = {
    "add a crop": Furnished.crop_added,
    "change a crop and its cultivar": Furnished.cultivar_changed,
    "clear a crop": lambda f: clear_crop(f.log, f.crop.id, TODAY),
    "reopen a crop": lambda f: reopen_crop(f.log, f.cleared.id),
    "remove a crop": lambda f: remove_crop(f.log, f.crop.id),
    "add entries": Furnished.entries_added,
    "correct an entry": lambda f: correct_entry(f.log, replace(f.entry, detail=Pick(1, 80.0), note="one")),
    "remove an entry": lambda f: remove_entry(f.log, f.entry.id),
    "save a mix": lambda f: save_mix(f.log, "Two bottles", (MixPart("Part A", 3.0),))[1],
    "add a room": lambda f: save_thing(f.log, Room(new_id(), "Shelf")),
    "change a tank": lambda f: save_thing(f.log, replace(f.tank, tank_l=25)),
    "remove a lamp": lambda f: remove_thing(f.log, f.lamp),
    "place a crop": lambda f: place_crop(f.log, f.crop.id, f.room.id, DAY, floor_share=0.9),
    "let a photo lead": lambda f: let_lead(f.log, f.second.id),
    "move a photo": lambda f: move_photo(f.log, [f.first.id], day=DAY + timedelta(days=1)),
    "move photos to another crop": lambda f: move_photo(f.log, [f.first.id, f.second.id], crop_id=f.other.id),
    "remove the leading photo": lambda f: remove_photo(f.log, f.first.id),
}


@pytest.mark.parametrize("name", CHANGES)
def test_a_change_is_taken_back_whole_and_done_again_whole(log: OpenLogbook, name: str) -> None:
    furnished = Furnished(log)
    states = [content_of(log)]
    change = CHANGES[name](furnished)
    states.append(content_of(log))
    assert states[0] != states[1]
    for turn in range(3):
        change = undo(log, change)
        assert content_of(log) == states[turn % 2]


def test_an_undo_keeps_the_title_and_the_crops_of_what_it_takes_back(log: OpenLogbook, crop: Crop) -> None:
    change = add_entries(log, [entry_on(crop, DAY, PICK)])
    back = undo(log, change)
    assert (back.title, back.record_ids, back.crop_ids) == (change.title, change.record_ids, change.crop_ids)
    assert back.group_id != change.group_id


def test_several_changes_are_taken_back_one_after_the_other_and_done_again(log: OpenLogbook, crop: Crop) -> None:
    states, done = [content_of(log)], []
    for count in (1, 2, 3):
        done.append(add_entries(log, [entry_on(crop, DAY, Pick(count, 80.0 * count))]))
        states.append(content_of(log))
    undone = []
    for change, state in zip(reversed(done), reversed(states[:-1]), strict=True):
        undone.append(undo(log, change))
        assert content_of(log) == state
    for change, state in zip(reversed(undone), states[1:], strict=True):
        undo(log, change)
        assert content_of(log) == state


def assert_refused(log: OpenLogbook, change: Change, sentence: str) -> None:
    before = content_of(log)
    with log.unit() as unit:
        rows = len(unit.history())
    with pytest.raises(LogbookProblem, match=sentence):
        undo(log, change)
    assert content_of(log) == before
    with log.unit() as unit:
        assert len(unit.history()) == rows


def corrected(log: OpenLogbook, entry: Entry) -> None:
    correct_entry(log, replace(entry, note="corrected"))


def test_a_change_whose_record_changed_since_is_not_taken_back(log: OpenLogbook, crop: Crop) -> None:
    entries = [entry_on(crop, DAY, PICK), entry_on(crop, DAY, Note())]
    change = add_entries(log, entries)
    with log.unit() as unit:
        corrected(log, unit.entries.get(entries[0].id))
    assert_refused(log, change, "changed again since")


def test_nothing_is_taken_back_twice(log: OpenLogbook, crop: Crop) -> None:
    change = add_entries(log, [entry_on(crop, DAY, PICK)])
    undo(log, change)
    assert_refused(log, change, "changed again since")


def test_a_removed_crop_does_not_come_back_beside_another_of_its_name(log: OpenLogbook, crop: Crop) -> None:
    change = remove_crop(log, crop.id)
    plant_crop(log, crop.name.upper())
    assert_refused(log, change, "name already")


def test_a_name_does_not_come_back_where_another_crop_has_it_now(log: OpenLogbook, crop: Crop) -> None:
    change = change_crop(log, replace(crop, name="Renamed"), crop_and_cultivar(log, crop.id)[1])
    plant_crop(log, crop.name)
    assert_refused(log, change, "name already")


def test_a_reopening_is_not_taken_back_where_entries_came_after_the_clearing(log: OpenLogbook, crop: Crop) -> None:
    clear_crop(log, crop.id, DAY)
    change = reopen_crop(log, crop.id)
    write(log, crop, DAY + timedelta(days=1), PICK)
    assert_refused(log, change, f"entries up to {show_day(DAY + timedelta(days=1))}")


def test_a_removed_entry_does_not_come_back_after_its_crop_was_cleared(log: OpenLogbook, crop: Crop) -> None:
    entry = write(log, crop, DAY, PICK)
    change = remove_entry(log, entry.id)
    clear_crop(log, crop.id, DAY - timedelta(days=1))
    assert_refused(log, change, "was cleared on")


def test_a_placement_does_not_come_back_onto_a_floor_that_was_given_away(log: OpenLogbook, crop: Crop) -> None:
    room, _ = furnish(log, crop, share=0.7)
    shelf = Room(new_id(), "Shelf")
    save_thing(log, shelf)
    change = place_crop(log, crop.id, shelf.id, DAY, floor_share=0.7)
    other = plant_crop(log, "Shelf Ember")
    place_crop(log, other.id, room.id, DAY, floor_share=0.7)
    assert_refused(log, change, "70 %")


def test_a_removed_photo_that_comes_back_leaves_one_leader_of_its_day(log: OpenLogbook, crop: Crop) -> None:
    first = photo_on(log, crop, DAY, leads=True)
    change = remove_photo(log, first.id)
    later = photo_on(log, crop, DAY, leads=True)
    redo = undo(log, change)
    assert len(leaders(log)[crop.id, DAY]) == 1
    undo(log, redo)
    assert leaders(log) == {(crop.id, DAY): [later.id]}


def test_a_read_only_logbook_takes_nothing_back(log: OpenLogbook, crop: Crop) -> None:
    from growlog.services.logbooks import open_log

    change = add_entries(log, [entry_on(crop, DAY, PICK)])
    reader = open_log(log.folder, log.clock, log.previews.folder, read_only=True)
    with pytest.raises(LogbookProblem, match="reading only"):
        undo(reader, change)
    reader.close()


def test_a_tank_that_was_changed_since_keeps_its_later_state(log: OpenLogbook, crop: Crop) -> None:
    _, tank = furnish(log, crop)
    change = save_thing(log, replace(tank, tank_l=25))
    with log.unit() as unit:
        now: Tank = unit.tanks.get(tank.id)
    save_thing(log, replace(now, tank_l=30))
    assert_refused(log, change, "changed again since")
