"""The list of what is due: what its lines say, and what keys, mouse and menu ask for."""

from dataclasses import replace
from datetime import timedelta

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.crop_list.due_answer import LeaveOutQuestion, PutOffQuestion
from growlog.desktop.crop_list.due_list import DueList
from growlog.desktop.crop_list.wording import due_spoken, due_title
from growlog.services.due import DueHow, DueItem
from tests.logbooks import TODAY

FEED = DueItem(
    "feed", "Feed", "id", "Landing Light", TODAY, TODAY, "Every day.", "feed", DueHow.WRITES, "1.1\u2009L"
)  # fmt: skip
LATE = DueItem(
    "clean", "Clean up", "id", "Porch Violet", TODAY, TODAY - timedelta(days=3), "Every 7 days.", late_days=3
)
METERS = DueItem("meters", "Calibrate", None, "", TODAY, TODAY, "Every 30 days.", "calibration", DueHow.FORM)


@pytest.fixture
def due(qtbot: QtBot) -> DueList:
    """Three things: a feed that one key writes, something late that is ticked, and a form."""
    shown = DueList()
    qtbot.addWidget(shown)
    shown.show_due([LATE, FEED, METERS], TODAY, True, True)
    shown.resize(220, 400)
    with qtbot.waitActive(shown):
        shown.show()
    return shown


def chosen(due: DueList, name: str) -> None:
    """Chooses an action of the open menu."""
    assert due.menu is not None
    next(action for action in due.menu.actions() if action.objectName() == name).trigger()
    due.menu.close()


def names(due: DueList) -> list[str]:
    """The actions of the open menu."""
    assert due.menu is not None
    found = [action.objectName() for action in due.menu.actions() if action.objectName()]
    due.menu.close()
    return found


def test_a_line_says_in_words_what_for_which_crop_and_how_late() -> None:
    assert due_spoken(LATE) == "Clean up: 3 days late, Porch Violet"
    assert due_spoken(FEED) == "Feed: Landing Light, 1.1\u2009L"
    assert due_spoken(METERS) == "Calibrate: the room"
    assert (due_title(FEED), due_title(METERS)) == ("Feed", "Calibrate\u2026")
    assert due_spoken(replace(LATE, late_days=1)) == "Clean up: 1 day late, Porch Violet"


@pytest.mark.parametrize("key", [Qt.Key.Key_Space, Qt.Key.Key_Return])
def test_one_key_does_it(due: DueList, qtbot: QtBot, key: Qt.Key) -> None:
    due.focus_first()
    QTest.keyClick(due.rows[0], Qt.Key.Key_Down)
    with qtbot.waitSignal(due.done) as done:
        QTest.keyClick(due.rows[1], key)
    assert done.args == ["feed"]


def test_a_click_does_it(due: DueList, qtbot: QtBot) -> None:
    with qtbot.waitSignal(due.done) as done:
        QTest.mouseClick(due.rows[0], Qt.MouseButton.LeftButton)
    assert done.args == ["clean"]


def test_arrows_go_from_line_to_line_and_stop_at_the_ends(due: DueList) -> None:
    due.focus_first()
    for key in (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Down, Qt.Key.Key_Down):
        QTest.keyClick(next(row for row in due.rows if row.hasFocus()), key)
    assert due.rows[2].hasFocus()


def test_the_keys_stay_in_their_place_when_a_line_is_done(due: DueList) -> None:
    due.rows[1].setFocus()
    due.show_due([LATE, METERS], TODAY, True, True)
    assert due.rows[1].hasFocus()
    due.show_due([LATE], TODAY, True, True)
    assert due.rows[0].hasFocus()


def test_the_menu_offers_what_fits_the_thing(due: DueList) -> None:
    QTest.keyClick(due.rows[0], Qt.Key.Key_Right)
    assert names(due) == ["putOff.1", "putOff.3", "putOff.7", "putOff", "leaveOut", "routines"]
    due.rows[1].more_button.click()
    assert names(due)[:2] == ["form", "tick"]


def test_it_is_put_off_to_a_day_of_the_menu(due: DueList, qtbot: QtBot) -> None:
    due.rows[0].menu_wanted.emit("clean", due.mapToGlobal(QPoint(5, 5)))
    with qtbot.waitSignal(due.put_off) as answered:
        chosen(due, "putOff.3")
    assert answered.args == ["clean", TODAY + timedelta(days=3)]


def test_another_day_is_typed_and_an_earlier_one_is_refused(due: DueList, qtbot: QtBot) -> None:
    QTest.keyClick(due.rows[0], Qt.Key.Key_Right)
    chosen(due, "putOff")
    question = due.question
    assert isinstance(question, PutOffQuestion)
    question.day.line.clear()
    QTest.keyClicks(question.day.line, "2026-03-07")
    with qtbot.assertNotEmitted(due.put_off):
        QTest.keyClick(question.day.line, Qt.Key.Key_Return)
    assert question.day.is_refused
    question.day.line.clear()
    QTest.keyClicks(question.day.line, "2026-03-20")
    with qtbot.waitSignal(due.put_off) as answered:
        QTest.keyClick(question.day.line, Qt.Key.Key_Return)
    assert answered.args == ["clean", TODAY + timedelta(days=13)]


def test_leaving_out_asks_for_a_reason_and_escape_leaves_all_as_it_is(due: DueList, qtbot: QtBot) -> None:
    QTest.keyClick(due.rows[1], Qt.Key.Key_Right)
    chosen(due, "leaveOut")
    question = due.question
    assert isinstance(question, LeaveOutQuestion)
    with qtbot.assertNotEmitted(due.left_out):
        QTest.keyClick(question.reason.line, Qt.Key.Key_Return)
    QTest.keyClicks(question.reason.line, "away")
    with qtbot.waitSignal(due.left_out) as answered:
        QTest.keyClick(question.reason.line, Qt.Key.Key_Return)
    assert answered.args == ["feed", "away"]
    QTest.keyClick(question.reason.line, Qt.Key.Key_Escape)
    assert due.question is None
    assert due.rows[1].hasFocus()


def test_where_nothing_is_due_it_says_so_and_the_routines_are_one_key_away(due: DueList, qtbot: QtBot) -> None:
    due.show_due([], TODAY, True, True)
    assert (due.nothing_label.isVisible(), due.set_up_button.isVisible()) == (True, False)
    due.show_due([], TODAY, False, True)
    assert (due.nothing_label.isVisible(), due.set_up_button.isVisible()) == (False, True)
    due.focus_first()
    assert due.set_up_button.hasFocus()
    with qtbot.waitSignal(due.routines_wanted):
        QTest.keyClick(due.set_up_button, Qt.Key.Key_Space)


def test_what_can_only_be_read_cannot_be_answered(due: DueList, qtbot: QtBot) -> None:
    due.show_due([FEED], TODAY, True, False)
    with qtbot.assertNotEmitted(due.done):
        QTest.mouseClick(due.rows[0], Qt.MouseButton.LeftButton)
    assert not due.rows[0].dots.isVisible()


@pytest.mark.parametrize("width", [150, 220, 340])
def test_long_words_are_shown_whole_at_every_width(due: DueList, qtbot: QtBot, width: int) -> None:
    due.show_due([replace(LATE, title="Clean up the dropped flowers and leaves")], TODAY, True, True)
    due.resize(width, 400)
    row = due.rows[0]
    qtbot.waitUntil(lambda: 0 < row.width() <= width)
    for label in (row.title_label, row.more_label):
        assert label.height() >= label.heightForWidth(label.width())
    assert row.rect().contains(row.more_label.geometry())
