"""Tagged flowers, from pollination to pick."""

from datetime import date
from pathlib import Path

import pytest

from growlog.records.entry import FlowerFate, FruitCheck, Pick, Pollination, TaggedFruit, TagSeen
from growlog.records.problems import RecordRefused
from growlog.services.flower_tags import TagFate, TagOutcome, tag_book, write_outcomes
from growlog.services.undo import undo
from tests.logbooks import content_of, logbook, plant_crop, write


def test_a_tag_is_followed_from_pollination_to_pick(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        write(log, crop, date(2026, 2, 20), Pollination(females_pollinated=2, tags=("7", "8")))
        write(log, crop, date(2026, 2, 24), FruitCheck(tags_seen=(TagSeen("7", FlowerFate.SET),)))
        write(log, crop, date(2026, 2, 25), FruitCheck(tags_seen=(TagSeen("8", FlowerFate.DROPPED),)))
        write(log, crop, date(2026, 2, 27), Pick(1, None, (86.0,), (), (TaggedFruit("7", 86.0),)))
        book = tag_book(log, crop.id)
    seven, eight = sorted(book.stories, key=lambda s: s.tag)
    assert (seven.fate, seven.set_on, seven.days_to_pick, seven.weight_g) == (
        TagFate.PICKED, date(2026, 2, 24), 7, 86.0,
    )  # fmt: skip
    assert (eight.fate, eight.days_to_pick) == (TagFate.DROPPED, None)
    assert book.median_days_to_pick == 7
    assert book.hanging == ()
    assert book.next_tag == "9"


def test_a_number_that_is_hung_again_begins_a_new_story(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        write(log, crop, date(2026, 2, 1), Pollination(females_pollinated=1, tags=("7",)))
        write(log, crop, date(2026, 2, 9), Pick(1, tagged=(TaggedFruit("7"),)))
        write(log, crop, date(2026, 2, 20), Pollination(females_pollinated=1, tags=("7",)))
        book = tag_book(log, crop.id)
        earlier = tag_book(log, crop.id, date(2026, 2, 5))
    assert [(s.pollinated_on.day, s.fate) for s in book.stories] == [(20, TagFate.YOUNG), (1, TagFate.PICKED)]
    assert [s.fate for s in earlier.stories] == [TagFate.YOUNG]


def test_a_flower_pollinated_and_looked_at_on_one_day_keeps_that_order(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        write(log, crop, date(2026, 2, 1), FruitCheck(tags_seen=(TagSeen("7", FlowerFate.SET),)))
        write(log, crop, date(2026, 2, 1), Pollination(females_pollinated=1, tags=("7",)))
        book = tag_book(log, crop.id)
    assert [s.fate for s in book.stories] == [TagFate.SET]
    assert book.loose == ()


def test_a_tag_that_was_never_hung_is_named_and_told_apart(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        write(log, crop, date(2026, 2, 9), Pick(1, tagged=(TaggedFruit("99"),)))
        book = tag_book(log, crop.id)
    assert (book.stories, book.loose) == ((), ("99",))


def test_outcomes_are_one_change_of_a_check_and_a_pick(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        write(log, crop, date(2026, 2, 1), Pollination(females_pollinated=3, tags=("1", "2", "3")))
        before = content_of(log)
        seen = [
            TagOutcome("1", TagFate.SET), TagOutcome("2", TagFate.DROPPED), TagOutcome("3", TagFate.PICKED, 74.0),
        ]  # fmt: skip
        change = write_outcomes(log, crop.id, date(2026, 2, 10), seen)
        with log.unit() as unit:
            pick = unit.entries.all(kind="pick")[0].detail
        assert pick == Pick(1, None, (74.0,), (), (TaggedFruit("3", 74.0),))
        assert [s.tag for s in tag_book(log, crop.id).hanging] == ["1"]
        undo(log, change)
        assert content_of(log) == before


def test_a_tag_that_does_not_hang_is_refused_and_nothing_is_written(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        with pytest.raises(RecordRefused, match="Tag 5 does not hang"):
            write_outcomes(log, crop.id, date(2026, 2, 10), [TagOutcome("5", TagFate.SET)])
        with log.unit() as unit:
            assert unit.entries.all() == []


def test_no_outcome_is_refused_with_a_way_on(tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        crop = plant_crop(log)
        with pytest.raises(RecordRefused, match="Nothing is stated yet"):
            write_outcomes(log, crop.id, date(2026, 2, 10), [])
