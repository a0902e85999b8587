"""Fields for a day and a time of day."""

from datetime import date, time

import pytest
from PySide6.QtCore import QDate, Qt
from PySide6.QtWidgets import QCalendarWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.look.widgets.day_field import DayField, TimeField

DAY = date(2026, 1, 18)


@pytest.fixture
def field(qtbot: QtBot) -> DayField:
    """A day not after the end of March."""
    field = DayField("Sown", DAY, latest=date(2026, 3, 31), near=DAY)
    qtbot.addWidget(field)
    return field


def test_the_day_is_shown_in_the_form_of_the_locale(field: DayField) -> None:
    assert field.line.text() == "18/01/2026"
    assert field.value() == DAY


def test_a_typed_day_is_the_value_and_is_told(field: DayField, qtbot: QtBot) -> None:
    field.line.clear()
    with qtbot.waitSignals([field.value_changed] * 4):
        qtbot.keyClicks(field.line, "19/1")
    assert field.value() == date(2026, 1, 19)
    field.line.editingFinished.emit()
    assert field.line.text() == "19/01/2026"


def test_an_impossible_day_is_refused_with_a_sentence_when_typing_has_ended(field: DayField, qtbot: QtBot) -> None:
    field.line.clear()
    qtbot.keyClicks(field.line, "30/2/2026")
    assert not field.is_refused
    assert field.value() is None
    field.line.editingFinished.emit()
    assert field.refusal == "There is no day 30 in month 2 of 2026."
    assert field.line.text() == "30/2/2026"


def test_a_day_outside_the_range_is_refused(field: DayField) -> None:
    field.set_value(date(2026, 4, 1))
    assert field.refusal == "Not after 31/03/2026."
    assert field.value() is None
    field.set_range(date(2026, 4, 2), None)
    assert field.refusal == "Not before 02/04/2026."


@pytest.mark.parametrize(
    ("key", "day"),
    [
        (Qt.Key.Key_Up, date(2026, 1, 19)),
        (Qt.Key.Key_Down, date(2026, 1, 17)),
        (Qt.Key.Key_PageUp, date(2026, 1, 25)),
        (Qt.Key.Key_PageDown, date(2026, 1, 11)),
    ],
)
def test_keys_step_by_days_and_weeks(field: DayField, qtbot: QtBot, key: Qt.Key, day: date) -> None:
    with qtbot.waitSignal(field.value_changed):
        qtbot.keyClick(field.line, key)
    assert field.value() == day


def test_an_empty_field_is_fit_unless_a_day_is_needed(field: DayField) -> None:
    field.set_value(None)
    assert field.check()
    field.required = True
    assert not field.check()
    assert field.is_empty()


def test_a_day_clicked_in_the_calendar_is_the_value(field: DayField, qtbot: QtBot) -> None:
    field.show()
    qtbot.mouseClick(field.calendar_button, Qt.MouseButton.LeftButton)
    calendar = field.findChild(QCalendarWidget)
    assert calendar is not None
    assert calendar.selectedDate() == QDate(2026, 1, 18)
    with qtbot.waitSignals([field.value_changed, field.editing_finished]):
        calendar.clicked.emit(QDate(2026, 2, 3))
    assert field.value() == date(2026, 2, 3)
    assert not calendar.isVisible()


def test_a_time_of_day_is_read_in_a_short_form(qtbot: QtBot) -> None:
    field = TimeField("At", name="at")
    qtbot.addWidget(field)
    assert field.value() is None
    qtbot.keyClicks(field.line, "805")
    field.line.editingFinished.emit()
    assert field.value() == time(8, 5)
    assert field.line.text() == "08:05"


def test_a_time_that_no_clock_shows_is_refused(qtbot: QtBot) -> None:
    field = TimeField("At", time(8, 5))
    qtbot.addWidget(field)
    field.line.setText("25:00")
    assert not field.check()
    assert field.refusal == "Write a time of day as 08:05."
    field.set_value(None)
    assert field.is_empty()
    assert field.check()
