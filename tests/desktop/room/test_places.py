"""Who stands on how much of the floor: shares over the whole are said beside their fields."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from growlog.desktop.room.places_section import PlacesSection
from growlog.records.crop import Placement
from growlog.records.room import EnergySharing, Room
from tests.desktop.hands import retype
from tests.desktop.room.conftest import PLACES, MakePerson, Person

pytestmark = pytest.mark.slow

VIOLET_THERE = Placement("p2", "violet", "room", date(2026, 1, 10), floor_share=0.4)
GOLD_BEFORE = Placement("p0", "gold", "room", date(2025, 11, 1), date(2025, 11, 10), floor_share=1.0)


def places(one: Person) -> PlacesSection:
    one.dialog.page.show_part("crops")
    return one.dialog.page.places


def test_shares_over_the_whole_floor_are_said_while_one_types_and_not_saved(person: MakePerson) -> None:
    one = person(placements=(*PLACES, VIOLET_THERE))
    section = places(one)
    retype(section.cards[1].floor_field, "55")
    sentence = "Together 115 % from 10 January 2026 on, more than the whole."
    assert [card.floor_field.refusal for card in section.cards] == [sentence, sentence]
    assert section.cards[1].floor_field.message_label.isVisible()
    section.cards[1].until_field.value_changed.emit()  # looking again finds the same
    assert [card.floor_field.refusal for card in section.cards] == [sentence, sentence]
    one.save()
    assert one.times == 0
    retype(section.cards[0].floor_field, "45")
    assert [card.floor_field.refusal for card in section.cards] == ["", ""]
    one.save()
    assert [p.floor_share for p in one.saved if isinstance(p, Placement)] == [0.45, 0.55]


def test_a_share_of_more_than_all_is_refused_by_its_field(person: MakePerson) -> None:
    one = person()
    section = places(one)
    retype(section.cards[0].floor_field, "120")
    one.save()
    assert "At most 100" in section.cards[0].floor_field.refusal
    assert one.times == 0


def test_a_crop_comes_into_the_room_from_today_on(person: MakePerson) -> None:
    one = person()
    section = places(one)
    QTest.mouseClick(section.add_button, Qt.MouseButton.LeftButton)
    card = section.cards[1]
    assert card.crop_field.value() == "violet"  # the one that stands nowhere in the room yet
    retype(card.floor_field, "25")
    one.save()
    (placed,) = one.saved
    assert isinstance(placed, Placement)
    assert (placed.crop_id, placed.room_id, placed.from_day, placed.floor_share) == (
        "violet", "room", date(2026, 3, 7), 0.25,
    )  # fmt: skip


def test_a_placement_that_ends_before_it_begins_is_refused(person: MakePerson) -> None:
    one = person()
    section = places(one)
    retype(section.cards[0].until_field, "2025-11-01")
    one.save()
    assert section.cards[0].until_field.refusal == "It ends before it begins."
    assert one.times == 0


def test_the_share_of_the_energy_is_asked_for_only_by_hand(person: MakePerson) -> None:
    one = person()
    section = places(one)
    card = section.cards[0]
    assert card.energy_field.isHidden()
    section.sharing_field.box.setCurrentIndex(section.sharing_field.box.findData(EnergySharing.BY_HAND.value))
    assert card.energy_field.isVisible()
    retype(card.energy_field, "70")
    assert "70 % is given by hand" in section.sum_label.text()
    one.save()
    room, placed = one.saved
    assert isinstance(room, Room)
    assert isinstance(placed, Placement)
    assert (room.energy_sharing, placed.energy_share) == (EnergySharing.BY_HAND, 0.7)


def test_what_has_ended_is_folded_away_until_asked_for(person: MakePerson) -> None:
    one = person(placements=(GOLD_BEFORE, *PLACES))
    section = places(one)
    assert [card.isHidden() for card in section.cards] == [True, False]
    QTest.mouseClick(section.over_button, Qt.MouseButton.LeftButton)
    assert not section.cards[0].isHidden()


def test_a_placement_taken_off_is_told(person: MakePerson) -> None:
    one = person()
    section = places(one)
    QTest.mouseClick(section.cards[0].remove_button, Qt.MouseButton.LeftButton)
    assert section.sum_label.text() == "No crop stands here today."
    one.save()
    assert one.removed == list(PLACES)


def test_a_crop_that_would_stand_there_twice_is_refused_on_its_card(person: MakePerson) -> None:
    one = person(placements=(GOLD_BEFORE, *PLACES))
    section = places(one)
    retype(section.cards[0].until_field, "2025-12-01")
    for _ in range(2):
        assert "Boxroom Gold stands in two places on 15 November 2025" in section.cards[1].beside_label.text()
        one.save()
    assert one.times == 0
    retype(section.cards[0].until_field, "2025-11-14")
    one.save()
    assert one.times == 1
