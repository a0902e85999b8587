"""The door for messages."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.messages import Messages, MessageStrip, QuestionBox, WindowMessages
from tests.desktop.fakes import FakeMessages


@pytest.fixture
def window(qtbot: QtBot) -> QWidget:
    """A window to stand before."""
    window = QWidget()
    qtbot.addWidget(window)
    return window


@pytest.fixture
def strip(window: QWidget) -> MessageStrip:
    """The strip at the foot of the window."""
    strip = MessageStrip(window, inform_ms=1)
    QVBoxLayout(window).addWidget(strip)
    return strip


@pytest.fixture
def messages(window: QWidget, strip: MessageStrip) -> WindowMessages:
    """The real door."""
    window.show()
    return WindowMessages(window, strip)


def test_the_strip_takes_no_room_before_there_is_a_message(messages: WindowMessages, strip: MessageStrip) -> None:
    assert not strip.isVisible()


def test_what_informs_goes_away_by_itself(messages: WindowMessages, strip: MessageStrip, qtbot: QtBot) -> None:
    messages.inform("Wrote 3 entries.")
    assert strip.isVisible()
    assert strip.banner.sentence == "Wrote 3 entries."
    qtbot.waitUntil(strip.isHidden)


def test_a_problem_stays_until_it_is_closed(messages: WindowMessages, strip: MessageStrip, qtbot: QtBot) -> None:
    messages.inform("Wrote 3 entries.")
    messages.problem("The copy was not made.", "The disk is full.")
    assert not strip._timer.isActive()
    assert strip.banner.sentence == "The copy was not made. The disk is full."
    assert strip.banner.tone == "problem"
    qtbot.mouseClick(strip.banner.close_button, Qt.MouseButton.LeftButton)
    assert not strip.isVisible()


def test_the_action_is_done_once(messages: WindowMessages, strip: MessageStrip, qtbot: QtBot) -> None:
    undone: list[str] = []

    def undo() -> None:
        undone.append("undone")

    messages.problem("The last entry was not written.")
    strip.show_message("Removed the entry.", "asks", "Undo", undo)
    qtbot.mouseClick(strip.banner.action_button, Qt.MouseButton.LeftButton)
    strip.banner.action_chosen.emit()
    assert undone == ["undone"]
    assert not strip.isVisible()


def note(into: list[str], word: str) -> Callable[[], None]:
    """A function that writes a word down."""

    def write() -> None:
        into.append(word)

    return write


@pytest.mark.parametrize(("button", "expected"), [("yes", ["yes"]), ("no", ["no"])])
def test_a_question_does_what_its_button_says(
    messages: WindowMessages, window: QWidget, qtbot: QtBot, button: str, expected: list[str]
) -> None:
    answers: list[str] = []
    messages.ask("Remove the photo?", "Remove", note(answers, "yes"), on_no=note(answers, "no"))
    box = window.findChild(QuestionBox)
    assert box is not None
    assert box.yes_button.text() == "Remove"
    qtbot.mouseClick(box.yes_button if button == "yes" else box.no_button, Qt.MouseButton.LeftButton)
    assert answers == expected


def test_escape_and_enter_leave_all_as_it_is(messages: WindowMessages, window: QWidget, qtbot: QtBot) -> None:
    for key in (Qt.Key.Key_Escape, Qt.Key.Key_Return):
        answers: list[str] = []
        messages.ask("Remove the photo?", "Remove", note(answers, "yes"))
        box = window.findChildren(QuestionBox)[-1]
        with qtbot.waitSignal(box.finished):
            qtbot.keyClick(box, key)
        assert answers == []


def test_the_fake_answers_in_place_of_the_person() -> None:
    answers: list[str] = []
    fake = FakeMessages(answer=True)
    door: Messages = fake
    door.ask("Remove?", "Remove", note(answers, "yes"))
    door.inform("Removed.")
    door.problem("No.")
    assert answers == ["yes"]
    assert (fake.questions, fake.informed, fake.problems) == (["Remove?"], ["Removed."], ["No."])


def test_a_message_is_withdrawn_with_its_action_and_no_other(messages: WindowMessages, strip: MessageStrip) -> None:
    messages.inform("The tally was written.", "Undo", strip.setFocus)
    strip.withdraw(strip.clearFocus)
    assert strip.isVisible()
    strip.withdraw(strip.setFocus)
    assert not strip.isVisible()
