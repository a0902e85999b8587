"""A count with a button on either side."""

import pytest
from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from growlog.desktop.look.widgets.count_stepper import CountStepper


@pytest.fixture
def stepper(qtbot: QtBot) -> CountStepper:
    """A count up to 9."""
    stepper = CountStepper("Females pollinated", "brush", "pollination", maximum=9, less_key="⇧P", more_key="P")
    qtbot.addWidget(stepper)
    return stepper


def test_the_buttons_count_up_and_down_and_tell(stepper: CountStepper, qtbot: QtBot) -> None:
    told: list[int] = []
    stepper.value_changed.connect(told.append)
    for button in (stepper.more_button, stepper.more_button, stepper.less_button):
        qtbot.mouseClick(button, Qt.MouseButton.LeftButton)
    assert told == [1, 2, 1]
    assert stepper.line.text() == "1"


def test_the_count_stays_between_nothing_and_the_most(stepper: CountStepper) -> None:
    stepper.step_down()
    assert stepper.value() == 0
    assert not stepper.less_button.isEnabled()
    stepper.set_value(12)
    assert stepper.value() == 9
    assert not stepper.more_button.isEnabled()


def test_a_count_can_be_typed(stepper: CountStepper, qtbot: QtBot) -> None:
    stepper.line.selectAll()
    qtbot.keyClicks(stepper.line, "7")
    assert stepper.value() == 7


def test_a_count_rubbed_out_is_none(stepper: CountStepper, qtbot: QtBot) -> None:
    stepper.set_value(4)
    stepper.line.selectAll()
    qtbot.keyClick(stepper.line, Qt.Key.Key_Backspace)
    assert stepper.value() == 0
    assert stepper.line.text() == ""


def test_arrow_keys_step(stepper: CountStepper, qtbot: QtBot) -> None:
    qtbot.keyClick(stepper.line, Qt.Key.Key_Up)
    qtbot.keyClick(stepper.line, Qt.Key.Key_Up)
    qtbot.keyClick(stepper.line, Qt.Key.Key_Down)
    assert stepper.value() == 1


def test_setting_the_same_count_tells_nobody(stepper: CountStepper, qtbot: QtBot) -> None:
    stepper.set_value(3)
    with qtbot.assertNotEmitted(stepper.value_changed):
        stepper.set_value(3)


def test_a_screen_reader_hears_what_is_counted(stepper: CountStepper) -> None:
    assert stepper.line.accessibleName() == "Females pollinated"
    assert stepper.more_button.accessibleName() == "One more: Females pollinated"
