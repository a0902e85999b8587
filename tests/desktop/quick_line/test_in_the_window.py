"""The quick line in the real window, on a real logbook."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.main_window import MainWindow
from growlog.desktop.settings import Settings
from tests.desktop.fakes import FakeFileChoice, FakeMessages
from tests.logbooks import logbook, plant_crop

pytestmark = pytest.mark.slow

Key, Control = Qt.Key, Qt.KeyboardModifier.ControlModifier


@pytest.fixture
def window(qtbot: QtBot, tmp_path: Path) -> Iterator[MainWindow]:
    made = MainWindow(Settings(tmp_path / "settings.ini"), FakeMessages(), FakeFileChoice())
    qtbot.addWidget(made)
    with logbook(tmp_path) as log:
        plant_crop(log)
        made.show_logbook(log)
        with qtbot.waitActive(made):
            made.show()
        assert made.desk is not None
        made.desk.selection.choose_day(date(2026, 1, 18))
        yield made
        made.close()


def titles(window: MainWindow) -> set[str]:
    assert window.page is not None
    return {row.title_label.text().replace("\u2009", " ") for row in window.page.day_sheet.rows}


def test_a_key_reaches_the_line_and_what_is_typed_stands_on_the_sheet_until_it_is_undone(window: MainWindow):
    assert window.opened is not None
    field = window.opened.quick_line.panel.field
    QTest.keySequence(window, window.actions_table.by_name["quick_line"].shortcut())
    assert field.hasFocus()
    QTest.keyClicks(field, "3 fruit 250 g, feed 1.2 L, note first of the fkptrsn")
    assert field.text().endswith("fkptrsn")  # the single keys of the sheet are letters here
    assert titles(window) == set()
    QTest.keyClick(field, Key.Key_Return)
    assert titles(window) == {"Picked 3, 250 g", "Feed 1.2 L", "first of the fkptrsn"}
    assert window.opened.quick_line.panel.message == "3 entries written."
    QTest.keyClick(field, Key.Key_Z, Control)
    assert titles(window) == set()
    assert window.opened.quick_line.panel.message == ""


def test_a_refusal_of_the_logbook_keeps_the_words(window: MainWindow):
    assert window.opened is not None
    assert window.desk is not None
    panel = window.opened.quick_line.panel
    assert window.desk.board is not None
    panel.start()
    QTest.keyClicks(panel.field, "stage 5")
    QTest.keyClick(panel.field, Key.Key_Return)
    assert panel.field.text() == "stage 5"
    assert "not a BBCH code" in panel.message
    QTest.keyClick(panel.field, Key.Key_Escape)
    QTest.keyClick(panel.field, Key.Key_Escape)
    assert window.page is not None
    assert not panel.field.hasFocus()


def test_a_question_is_asked_anew_on_another_day(window: MainWindow):
    assert window.opened is not None
    assert window.desk is not None
    panel = window.opened.quick_line.panel
    panel.start()
    QTest.keyClicks(panel.field, "humidity 0.6")
    QTest.keyClick(panel.field, Key.Key_Return)
    window.desk.step_day(1)
    QTest.keyClick(panel.field, Key.Key_Return)
    assert (panel.message, titles(window)) == ("Press Enter again if this is right.", set())
    QTest.keyClick(panel.field, Key.Key_Return)
    assert titles(window) == {"Air 1 % RH"}


def test_earlier_notes_of_the_crop_are_offered(window: MainWindow):
    assert window.opened is not None
    field = window.opened.quick_line.panel.field
    window.opened.quick_line.start()
    QTest.keyClicks(field, "note leaves curl at the top")
    QTest.keyClick(field, Key.Key_Return)
    QTest.keyClicks(field, "note lea")
    QTest.keyClick(field, Key.Key_Tab)
    assert field.text() == "note leaves curl at the top"


def test_the_words_open_beside_the_board(window: MainWindow, qtbot: QtBot):
    assert window.opened is not None
    window.actions_table.by_name["quick_line_help"].trigger()
    assert window.opened.quick_line.help is not None
    assert window.opened.quick_line.help.isVisible()
    window.opened.quick_line.help.close()


def test_the_line_is_not_there_without_a_crop(window: MainWindow, tmp_path: Path):
    assert window.desk is not None
    assert window.opened is not None
    window.desk.selection.choose_crop("")
    assert not window.opened.quick_line.panel.isVisible()
    window.opened.quick_line.start()
    assert not window.opened.quick_line.panel.field.hasFocus()


def test_a_letter_opens_its_form_from_the_crop_list_too(window: MainWindow):
    assert window.page is not None
    assert window.opened is not None
    card = window.page.crop_list.cards()[0]
    card.setFocus()
    QTest.keyClick(card, Key.Key_K)
    assert window.opened.entries.dialog is not None
    assert window.opened.entries.dialog.isVisible()
    window.opened.entries.dialog.close()
