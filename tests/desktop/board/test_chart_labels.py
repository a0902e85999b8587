"""The words in the yield chart and the box at the day line keep off each other."""

from itertools import combinations
from typing import Any

import pytest
from PySide6.QtCore import QRectF

from growlog.desktop.board.placing import beside, best_place
from growlog.services.board import Curve
from tests.desktop.board.boards import CURVE, POINTS, full_board, shown_board

BOUNDS = QRectF(0, 0, 200, 100)


def test_the_first_place_that_covers_nothing_is_taken() -> None:
    places = [QRectF(0, 0, 50, 10), QRectF(60, 0, 50, 10), QRectF(120, 0, 50, 10)]
    assert best_place(places, [QRectF(40, 0, 15, 10)], BOUNDS) == places[1]


def test_where_everything_is_taken_the_least_is_covered() -> None:
    places = [QRectF(0, 0, 50, 10), QRectF(60, 0, 50, 10)]
    assert best_place(places, [QRectF(0, 0, 70, 10)], BOUNDS) == places[1]


def test_a_place_outside_is_worse_than_one_that_covers_something() -> None:
    places = [QRectF(180, 0, 50, 10), QRectF(60, 0, 50, 10)]
    assert best_place(places, [QRectF(60, 0, 50, 10)], BOUNDS) == places[1]


def test_without_any_place_there_is_no_answer() -> None:
    with pytest.raises(ValueError, match="no place"):
        best_place([], [], BOUNDS)


def test_left_of_a_line_comes_before_right_of_it() -> None:
    left, right = beside(100, [5], 40, 10, 4)
    assert (left.right(), right.left(), left.top()) == (96, 104, 5)


@pytest.mark.parametrize("width, height", [(476, 506), (890, 780)])
@pytest.mark.parametrize("first_pick, packet", [(43, 44), (43, 58), (103, 104), (43, 112)])
def test_words_in_the_chart_do_not_cover_each_other(
    qtbot: Any, width: int, height: int, first_pick: int, packet: int
) -> None:
    moved = tuple(type(p)(p.age + first_pick - 43, p.fruit_count, p.weight_g, p.estimated_g) for p in POINTS)
    curve = Curve("crop", "Boxroom Gold", moved, 125)
    changes = {"curve": curve, "first_pick_age": first_pick, "packet_maturity_age": packet, "last_age": 125}
    board = shown_board(qtbot, full_board(**changes), first_pick, width, height)
    board.show_underlay(CURVE)
    surface = board.surface
    labels = surface.chart.taken_places()
    assert len(labels) == 6  # the switch and the export button among them
    assert not [pair for pair in combinations(labels, 2) if pair[0].intersects(pair[1])]
    for age in range(first_pick, 126):
        surface.set_day(age)
        box = surface.overlay.words_box().translated(0, -surface.chart.y())
        assert box.isValid()
        assert not [label for label in labels if label.adjusted(1, 1, -1, -1).intersects(box)]


def test_all_lanes_the_chart_and_its_axis_fit_into_a_small_window(qtbot: Any) -> None:
    # what a window of 1024 by 640 leaves to the board
    board = shown_board(qtbot, width=483, height=532)
    axis = board.surface.chart.axis_strip().translated(0, board.surface.chart.y())
    at = board.surface.mapTo(board, axis.bottomLeft())
    assert at.y() < board.height()
