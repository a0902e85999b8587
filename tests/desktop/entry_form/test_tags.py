"""The lines for the tags of flowers and fruit."""

from collections.abc import Callable

import pytest
from PySide6.QtWidgets import QLineEdit

from growlog.records.entry import FlowerFate, FruitCheck, Pick, Pollination, TaggedFruit, TagSeen
from tests.desktop.entry_form.conftest import Hands

MakeHands = Callable[..., Hands]


def text_of(hand: Hands, name: str) -> str:
    line = hand.line(name)
    assert isinstance(line, QLineEdit)
    return line.text()


def test_tags_of_a_pollination_are_typed_with_commas(hands: MakeHands):
    hand = hands("pollination")
    hand.type("females_pollinated", "3")
    hand.type("tags", "11, 12,13 ,")
    written = hand.write()
    assert written is not None
    assert written.detail == Pollination(3, tags=("11", "12", "13"))


def test_more_tags_than_flowers_are_refused_beside_the_tags(hands: MakeHands):
    hand = hands("pollination")
    hand.type("females_pollinated", "1")
    hand.type("tags", "11, 12")
    assert "more tags than flowers" in hand.says("tags")
    assert hand.write() is None


def test_a_fruit_check_says_which_tagged_flowers_set_and_which_dropped(hands: MakeHands):
    hand = hands("fruit-check")
    hand.type("tags_set", "11, 14")
    hand.type("tags_dropped", "12")
    written = hand.write()
    assert written is not None
    seen = (TagSeen("11", FlowerFate.SET), TagSeen("14", FlowerFate.SET), TagSeen("12", FlowerFate.DROPPED))
    assert written.detail == FruitCheck(tags_seen=seen)


def test_a_flower_cannot_have_set_and_dropped(hands: MakeHands):
    hand = hands("fruit-check")
    hand.type("tags_set", "11")
    hand.type("tags_dropped", "11")
    assert "stands twice" in hand.says("tags_seen")


@pytest.mark.parametrize("typed, tagged", [
    ("12", (TaggedFruit("12"),)),
    ("12: 86", (TaggedFruit("12", 86.0),)),
    ("12: 86.5, 14", (TaggedFruit("12", 86.5), TaggedFruit("14"))),
    ("12: 86,5, 14", (TaggedFruit("12", 86.5), TaggedFruit("14"))),
    ("11,12: 86,5; 14:9", (TaggedFruit("11"), TaggedFruit("12", 86.5), TaggedFruit("14", 9.0))),
])  # fmt: skip
def test_picked_fruit_are_named_by_tag_and_weight(hands: MakeHands, typed: str, tagged: tuple[TaggedFruit, ...]):
    hand = hands("pick")
    hand.type("fruit_count", "4")
    hand.type("tagged", typed)
    written = hand.write()
    assert written is not None
    assert written.detail == Pick(4, tagged=tagged)


@pytest.mark.parametrize("typed", ["12: heavy", "12:", "12: 86,14: 90"])
def test_a_weight_of_a_tag_that_is_no_number_is_refused(hands: MakeHands, typed: str):
    hand = hands("pick")
    hand.type("fruit_count", "4")
    hand.type("tagged", typed)
    assert "Write a tag and its weight" in hand.says("tagged")
    assert hand.write() is None


def test_a_weight_without_a_tag_is_refused(hands: MakeHands):
    hand = hands("pick")
    hand.type("fruit_count", "4")
    hand.type("tagged", ": 86")
    assert "without a number" in hand.says("tagged")


@pytest.mark.parametrize("units", ["metric", "us"])
def test_tags_that_are_only_looked_at_stay_to_the_last_digit(hands: MakeHands, units: str):
    pick = Pick(2, weights_g=(86.4321,), tagged=(TaggedFruit("12", 86.4321), TaggedFruit("14")))
    hand = hands("pick", pick, units=units)
    assert text_of(hand, "tagged").startswith("12: ")
    written = hand.write()
    assert written is not None
    assert written.detail == pick
