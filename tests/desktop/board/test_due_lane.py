"""What is due on the board: hollow marks ahead, in a lane and on an axis that are there only as far as needed."""

from typing import Any

from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest

from growlog.desktop.board.surface import last_shown_age
from growlog.services.board import DueMark
from tests.desktop.board.boards import full_board, shown_board

DUE = (DueMark(112, "feed", "Feed"), DueMark(115, "", "Clean up"), DueMark(119, "photo", "Photo"))


def lane_keys(board: Any) -> list[str]:
    """The lanes that take room."""
    return [placed.lane.key for placed in board.surface.lanes.placed()]


def test_the_lane_is_there_only_while_something_is_due(qtbot: Any) -> None:
    board = shown_board(qtbot)
    assert "due" not in lane_keys(board)
    board.show_board(full_board(due=DUE), 112)
    assert lane_keys(board)[-1] == "due"
    board.grab()
    board.show_board(full_board(), 112)
    assert "due" not in lane_keys(board)


def test_the_axis_reaches_as_far_as_there_is_something_due_and_the_day_line_stays_on_days_that_were(qtbot: Any) -> None:
    board = shown_board(qtbot)
    was = board.surface.axis.highest
    board.show_board(full_board(due=DUE), 112)
    assert (last_shown_age(full_board()), last_shown_age(full_board(due=DUE))) == (112, 119)
    assert board.surface.axis.highest > was
    QTest.keyClick(board.surface, Qt.Key.Key_End)
    QTest.keyClick(board.surface, Qt.Key.Key_Right)
    assert board.surface.age == 112


def test_hovering_says_what_is_due_and_a_click_chooses_no_entry(qtbot: Any) -> None:
    board = shown_board(qtbot)
    board.show_board(full_board(due=DUE), 112)
    surface = board.surface
    placed = next(p for p in surface.lanes.placed() if p.lane.key == "due")
    at = QPointF(surface.axis.x(115), placed.top + placed.height / 2)
    assert surface.hover_lines(at)[1:] == ["Clean up"]
    assert surface.lanes.entry_at(at) is None
    assert surface.hover_lines(QPointF(surface.axis.x(117), at.y())) == []
