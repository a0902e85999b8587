"""Clearing a crop asks for the day only."""

from datetime import date

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.crop_form import ClearDialog
from growlog.records.crop import Crop
from growlog.records.problems import Problem

TODAY = date(2026, 3, 7)
GOLD = Crop("gold", "Boxroom Gold", "packet", sown_on=date(2025, 11, 15))


@pytest.fixture
def dialog(qtbot: QtBot) -> ClearDialog:
    made = ClearDialog(GOLD, TODAY)
    qtbot.addWidget(made)
    with qtbot.waitActive(made):
        made.show()
    return made


def test_today_is_proposed(dialog: ClearDialog, qtbot: QtBot) -> None:
    with qtbot.waitSignal(dialog.cleared) as cleared:
        QTest.mouseClick(dialog.clear_button, Qt.MouseButton.LeftButton)
    assert cleared.args == ["gold", TODAY]


def test_another_day_can_be_typed(dialog: ClearDialog, qtbot: QtBot) -> None:
    dialog.day_field.line.selectAll()
    QTest.keyClicks(dialog.day_field.line, "2026-03-01")
    with qtbot.waitSignal(dialog.cleared) as cleared:
        QTest.keyClick(dialog, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert cleared.args == ["gold", date(2026, 3, 1)]


@pytest.mark.parametrize("text", ["2026-03-08", "2025-11-14", ""])
def test_a_day_before_sowing_or_to_come_or_none_is_refused(dialog: ClearDialog, qtbot: QtBot, text: str) -> None:
    dialog.day_field.line.selectAll()
    QTest.keyClick(dialog.day_field.line, Qt.Key.Key_Delete)
    QTest.keyClicks(dialog.day_field.line, text)
    with qtbot.assertNotEmitted(dialog.cleared):
        QTest.mouseClick(dialog.clear_button, Qt.MouseButton.LeftButton)
    assert dialog.day_field.message_label.isVisible()


def test_what_the_logbook_refuses_stands_beside_the_day(dialog: ClearDialog) -> None:
    dialog.show_problems([Problem("cleared_on", "There are entries up to 2026-03-05.")])
    assert dialog.day_field.message_label.text() == "There are entries up to 2026-03-05."
    assert dialog.isVisible()
