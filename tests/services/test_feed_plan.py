"""The feed plan: the day's default, and the days on which it changes."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Feed, Owner, OwnerKind
from growlog.records.problems import RecordRefused
from growlog.records.recipe import Mix, MixPart
from growlog.services.crops import clear_crop
from growlog.services.due import DueItem, drafted_entry, due_items, tick
from growlog.services.feed_plan import feed_plan_changes, new_step, planned_feed, remove_step, save_step, steps_of
from growlog.services.mixer import starting_state
from growlog.services.mixes import save_mix
from growlog.services.open_logbook import OpenLogbook
from growlog.services.repeats import starting_entry
from growlog.services.undo import undo
from tests.logbooks import SOWN, TODAY, write


@pytest.fixture
def mix(log: OpenLogbook) -> Mix:
    return save_mix(log, "Leaf", (MixPart("Part A", 2.0),))[0]


def age(days: int) -> date:
    """The day of a plant age."""
    return SOWN + timedelta(days=days)


def test_the_step_of_a_day_is_the_last_one_begun(log: OpenLogbook, crop: Crop, mix: Mix) -> None:
    save_step(log, replace(new_step(crop.id, 14, mix.id), strength_percent=50.0, volume_l=1.5))
    save_step(log, replace(new_step(crop.id, 40, mix.id), volume_l=6.0))
    assert planned_feed(log, crop.id, age(13)) is None
    young, grown = planned_feed(log, crop.id, age(39)), planned_feed(log, crop.id, age(40))
    assert young is not None
    assert (young.strength_percent, young.volume_l) == (50, 1.5)
    assert grown is not None
    assert grown.strength_percent == 100
    opened = starting_state(log, crop.id, day=age(20))
    assert (opened.tank_l, opened.strength_percent, opened.mix_name) == (1.5, 50, "Leaf")


def test_the_day_s_feed_begins_as_planned(log: OpenLogbook, crop: Crop, mix: Mix) -> None:
    write(log, crop, age(20), Feed(None, None, 3.0))
    save_step(log, replace(new_step(crop.id, 14, mix.id), strength_percent=50.0, volume_l=1.5))
    owner = Owner(OwnerKind.CROP, crop.id)
    assert starting_entry(log, owner, age(30), "feed").detail == Feed(mix.id, 50.0, 1.5)
    assert starting_entry(log, owner, age(13), "feed").detail == Feed()
    asked = DueItem("feed", "Feed", crop.id, crop.name, TODAY, TODAY, "", "feed")
    assert drafted_entry(log, asked, crop.id).detail == Feed(mix.id, 50.0, 3.0)


def test_the_plan_follows_the_newest_edition_of_its_mix(log: OpenLogbook, crop: Crop, mix: Mix) -> None:
    save_step(log, new_step(crop.id, 0, mix.id))
    newer, _ = save_mix(log, "leaf", (MixPart("Part A", 3.0),))
    planned = planned_feed(log, crop.id, age(5))
    assert planned is not None
    assert planned.mix == newer


def test_the_days_on_which_the_plan_moves_on_are_due(log: OpenLogbook, crop: Crop, mix: Mix) -> None:
    step = replace(new_step(crop.id, 110, mix.id), strength_percent=80.0)
    save_step(log, step)
    (found,) = feed_plan_changes(log, TODAY - timedelta(days=30), TODAY)
    assert (found.title, found.crop_id, found.day) == ("Feed Leaf at 80 % from now on", crop.id, age(110))
    assert found.key == f"feed-plan:{step.id}:{crop.id}"
    (due,) = due_items(log, age(110), age(110))
    assert (due.title, due.key) == (found.title, found.key)
    tick(log, due)
    assert due_items(log, age(110), age(110)) == []
    assert feed_plan_changes(log, age(111), TODAY + timedelta(days=9)) == []
    clear_crop(log, crop.id, TODAY)
    assert feed_plan_changes(log, age(0), TODAY) == []


def test_a_step_is_changed_removed_and_taken_back(log: OpenLogbook, crop: Crop, mix: Mix) -> None:
    step = new_step(crop.id, 14, mix.id)
    save_step(log, step)
    changed = save_step(log, replace(step, from_age=20))
    undo(log, changed)
    removed = remove_step(log, step.id)
    assert steps_of(log, crop.id) == []
    undo(log, removed)
    assert [s.from_age for s in steps_of(log, crop.id)] == [14]


def test_a_step_that_cannot_be_is_refused_beside_its_field(log: OpenLogbook, crop: Crop, mix: Mix) -> None:
    save_step(log, new_step(crop.id, 14, mix.id))
    wrong = [
        (new_step(crop.id, 14, mix.id), "from_age"),
        (new_step(crop.id, -1, mix.id), "from_age"),
        (new_step(crop.id, 15, "gone"), "mix_id"),
        (replace(new_step(crop.id, 15, mix.id), strength_percent=900.0), "strength_percent"),
    ]
    for step, field in wrong:
        with pytest.raises(RecordRefused) as refused:
            save_step(log, step)
        assert [p.field for p in refused.value.problems] == [field]
    assert len(steps_of(log, crop.id)) == 1
