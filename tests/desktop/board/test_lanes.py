"""The lanes: what they tell, how they arrange what they paint."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PySide6.QtCore import QPointF

from growlog.calculations.growth_stage import StageSpan
from growlog.calculations.light import LightSpan
from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.board.lanes import PhotosLane, PollinationLane
from growlog.desktop.board.lanes.feeds_lane import ec_range
from growlog.desktop.board.lanes.light_lane import label
from growlog.desktop.board.lanes.marks_lane import rows_of_marks, spread
from growlog.desktop.board.lanes.photos_lane import ringed_ages, slots
from growlog.desktop.board.lanes.stage_lane import rows_of
from growlog.services.board import PhotoDay
from tests.desktop.board.boards import bare_board, full_board, idle_pictures, shown_board

pytestmark = pytest.mark.usefixtures("qapp")


def days(*ages: int) -> tuple[PhotoDay, ...]:
    return tuple(PhotoDay(a, f"sha{a}", f"use{a}", 1) for a in ages)


def test_a_day_without_a_photo_is_told_as_a_gap() -> None:
    lane = PhotosLane(idle_pictures())
    lane.show_board(full_board())
    assert lane.tell(12) == ["no photo on this day"]
    assert lane.tell(11) == ["2 photos"]
    assert lane.tell(30) == []
    assert lane.second_line() == "9 of 113 days"


def test_as_many_photos_are_shown_as_fit() -> None:
    axis = AgeAxis.over(0, 111).placed(0, 800)
    wide, close = list(slots(days(*range(112)), axis, 70)), list(slots(days(*range(112)), axis.zoomed(20, 0), 70))
    assert 8 <= len(wide) <= 11
    assert all(slot.end_age - slot.start_age == 1 for slot in close)


def test_each_place_shows_a_photo_of_its_own_days() -> None:
    axis = AgeAxis.over(0, 50).placed(0, 500)
    found = list(slots(days(0, 1, 2, 40, 41, 50), axis, 60))
    assert all(s.photo is None or s.start_age <= s.photo.age < s.end_age for s in found)
    assert any(s.photo is None for s in found)


def test_places_do_not_jump_when_the_axis_pans() -> None:
    axis = AgeAxis.over(0, 300).placed(0, 800).zoomed(4, 400)
    before = {s.start_age for s in slots(days(*range(300)), axis, 70)}
    after = {s.start_age for s in slots(days(*range(300)), axis.panned(13), 70)}
    assert len(before - after) <= 1


def test_overlapping_stages_stand_in_different_rows() -> None:
    one, two, three = StageSpan(1, 0, 30, ()), StageSpan(5, 20, 40, ()), StageSpan(6, 30, 90, ())
    assert rows_of([one, two, three]) == [[one, three], [two]]


def test_the_light_is_labelled_with_hours_output_and_sum() -> None:
    assert label(LightSpan(0, 9, 14, 100, 500, 25.2)) == "14\u2009h, full: 25.2"
    assert label(LightSpan(0, 9, 16, 46, 200, 11.5)) == "16\u2009h, at 46\u2009%: 11.5"
    assert label(LightSpan(0, 9, 16, None, None, None)) == "16\u2009h"


def test_small_wobble_of_ec_stays_small() -> None:
    low, high = ec_range(full_board().feeds[:1])
    assert low < 1.4
    assert high > 1.7


def test_marks_that_would_cover_each_other_take_two_rows() -> None:
    assert rows_of_marks([0, 100, 104], 12) == [0, 0, 1]


def test_a_third_mark_on_a_day_goes_where_it_moves_least() -> None:
    assert rows_of_marks([0, 0, 0, 0, 100], 12) == [0, 1, 0, 1, 0]


@given(st.lists(st.floats(0, 500), max_size=20).map(sorted))
def test_marks_of_a_row_move_apart_and_keep_their_order(xs: list[float]) -> None:
    moved = spread(xs, 12, 1e9)
    assert all(b - a >= 12 - 1e-6 for a, b in pairwise(moved))
    assert sum(moved) == pytest.approx(sum(xs), abs=1e-6)


@given(st.lists(st.floats(0, 100), max_size=20).map(sorted))
def test_a_mark_never_moves_far_from_its_day(xs: list[float]) -> None:
    assert all(abs(new - x) <= 24 + 1e-6 for new, x in zip(spread(xs, 12, 24), xs, strict=True))


def test_missed_days_are_marked_only_where_they_are_the_exception() -> None:
    assert ringed_ages(full_board()) == (12,)
    assert ringed_ages(full_board(photo_days=days(0, 1, 3, 4, 6))) == (2, 5)
    assert ringed_ages(full_board(photo_days=days(0, 3, 7, 10, 14))) == ()
    assert ringed_ages(bare_board()) == ()


def test_what_was_picked_of_the_pollinated_is_never_called_fruit_set() -> None:
    lane = PollinationLane()
    lane.show_board(full_board())
    assert lane.summary() == "74 pollinated, 9 picked of them"


def test_a_lane_without_entries_stays_low(qtbot: object) -> None:
    board = shown_board(qtbot, bare_board(photo_days=days(1, 2)), 2)
    heights = {p.lane.key: p.height for p in board.surface.lanes.placed()}
    assert heights["feeds"] == heights["picks"] == 20
    assert heights["photos"] > 60


def test_a_mark_is_found_under_the_pointer(qtbot: object) -> None:
    board = shown_board(qtbot)
    surface = board.surface
    lane = next(p for p in surface.lanes.placed() if p.lane.key == "training")
    at = QPointF(surface.axis.x(38), lane.top + lane.height / 2)
    assert surface.lanes.entry_at(at) == (38, "train-1")
    assert surface.lanes.entry_at(at + QPointF(40, 0)) is None
