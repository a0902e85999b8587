"""The quick line under real keys: nothing is written until Enter, nothing that was typed is lost."""

from collections.abc import Callable, Iterable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QLineEdit, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.quick_line import QuickLinePanel
from growlog.records.entry import Pick
from growlog.records.problems import Problem
from growlog.services.quick_line import KnownMix, LineContext, LineReading, LineWords

Key = Qt.Key


class Sheet(QWidget):
    """A sheet with the quick line and another field below it; keeps what was written."""

    def __init__(self) -> None:
        super().__init__()
        self.known: list[Problem] = []
        self.goes_in = True
        self.written: list[LineReading] = []
        self.panel = QuickLinePanel(self._check, self._write)
        self.other = QLineEdit()
        column = QVBoxLayout(self)
        column.addWidget(self.panel)
        column.addWidget(self.other, 1)
        self.installEventFilter(self.panel)
        self.panel.show_context(LineContext(mixes=(KnownMix("Basic bloom", "m"),)), LineWords(("Basic bloom",)))

    def _check(self, _reading: LineReading) -> Iterable[Problem]:
        return self.known

    def _write(self, reading: LineReading) -> bool:
        if self.goes_in:
            self.written.append(reading)
        return self.goes_in


@pytest.fixture
def sheet(qtbot: QtBot) -> Sheet:
    made = Sheet()
    qtbot.addWidget(made)
    made.resize(340, 500)
    with qtbot.waitActive(made):
        made.show()
    made.panel.start()
    return made


Type = Callable[..., None]


@pytest.fixture
def keys(qtbot: QtBot, sheet: Sheet) -> Type:
    """Types words and presses keys in the field."""

    def press(*typed: str | Qt.Key) -> None:
        for one in typed:
            if isinstance(one, str):
                qtbot.keyClicks(sheet.panel.field, one)
            else:
                qtbot.keyClick(sheet.panel.field, one)

    return press


def shown(sheet: Sheet) -> list[str]:
    rows = [row.shown for row in sheet.panel.view.rows]
    return [" · ".join(part for part in (row.title, row.more) if part).replace("\u2009", " ") for row in rows]


def test_what_was_understood_stands_below_while_it_is_typed(sheet: Sheet, keys: Type):
    keys("3 fruit")
    assert shown(sheet) == ["Picked 3, not weighed", "Enter writes it."]
    keys(" 250 g, 5 females pollinated")
    assert shown(sheet) == ["Picked 3, 250 g", "Pollinated 5 flowers", "Enter writes it."]
    assert [row.shown.sign for row in sheet.panel.view.rows] == ["pick", "pollination", ""]
    assert sheet.written == []


def test_enter_writes_the_line_and_empties_the_field(sheet: Sheet, keys: Type):
    keys("3 fruit 250 g", Key.Key_Return)
    assert [d.detail for d in sheet.written[0].drafts] == [Pick(3, 250)]
    assert sheet.panel.field.text() == ""
    assert shown(sheet) == ["1 entry written."]
    keys("2")
    assert "written" not in " ".join(shown(sheet))


def test_enter_is_refused_while_something_was_not_understood_and_the_words_stay(sheet: Sheet, keys: Type):
    keys("3 fruit blue", Key.Key_Return)
    assert sheet.written == []
    assert sheet.panel.field.text() == "3 fruit blue"
    assert shown(sheet)[:2] == [
        "Nothing was written. Change what was not understood, or take it out.",
        "Not understood: blue",
    ]
    assert sheet.panel.field.property("state") == "problem"
    row = sheet.panel.view.rows[1]
    assert (row.shown.sign, row.title_label.property("tone")) == ("problem", "problem")
    keys(*[Key.Key_Backspace] * 5)
    assert sheet.panel.field.property("state") == ""
    keys(Key.Key_Return)
    assert len(sheet.written) == 1


def test_bare_numbers_are_shown_as_not_understood_with_a_hint(sheet: Sheet, keys: Type):
    keys("86 93 78")
    assert shown(sheet)[0].startswith("Not understood: 86 93 78 · ")
    assert "say picked" in shown(sheet)[0]


def test_a_question_wants_enter_twice_and_a_changed_line_asks_anew(sheet: Sheet, keys: Type):
    keys("humidity 0.6", Key.Key_Return)
    assert sheet.written == []
    assert sheet.panel.message == "Press Enter again if this is right."
    assert any("Humidity is in per cent" in words for words in shown(sheet))
    keys(" ", Key.Key_Return)
    assert sheet.written == []
    keys(Key.Key_Return)
    assert len(sheet.written) == 1


def test_a_question_of_the_logbook_is_asked_too(sheet: Sheet, keys: Type):
    sheet.known = [Problem("day", "The label asks for no pick.", asks=True)]
    keys("3 fruit 250 g", Key.Key_Return)
    assert sheet.written == []
    assert "The label asks for no pick." in shown(sheet)
    keys(Key.Key_Return)
    assert len(sheet.written) == 1


def test_what_the_logbook_refuses_stays_in_the_field(sheet: Sheet, keys: Type):
    sheet.known = [Problem("day", "This day has not come yet.")]
    keys("3 fruit 250 g", Key.Key_Return, Key.Key_Return)
    assert sheet.written == []
    assert shown(sheet)[0] == "Nothing was written. This day has not come yet."
    assert sheet.panel.field.text() == "3 fruit 250 g"


def test_a_line_that_the_disk_refuses_stays_in_the_field(sheet: Sheet, keys: Type):
    sheet.goes_in = False
    keys("3 fruit 250 g", Key.Key_Return)
    assert shown(sheet)[0] == "Nothing was written. What you typed is still here."
    assert sheet.panel.field.text() == "3 fruit 250 g"


def test_escape_clears_and_in_an_empty_field_leaves_it(sheet: Sheet, keys: Type, qtbot: QtBot):
    keys("3 fruit", Key.Key_Escape)
    assert (sheet.panel.field.text(), shown(sheet)) == ("", [])
    with qtbot.waitSignal(sheet.panel.left, timeout=100):
        keys(Key.Key_Escape)


def test_up_brings_written_lines_back_and_down_what_was_being_typed(sheet: Sheet, keys: Type):
    keys("3 fruit 250 g", Key.Key_Return, "9 fruit hanging", Key.Key_Return, "2 old")
    field = sheet.panel.field
    lines = []
    for key in (Key.Key_Up, Key.Key_Up, Key.Key_Up, Key.Key_Down, Key.Key_Down, Key.Key_Down):
        keys(key)
        lines.append(field.text())
    assert lines == ["9 fruit hanging", "3 fruit 250 g", "3 fruit 250 g", "9 fruit hanging", "2 old", "2 old"]


@pytest.mark.parametrize("key", [Key.Key_Tab, Key.Key_Right])
def test_tab_and_the_right_arrow_accept_what_is_offered(sheet: Sheet, keys: Type, key: Qt.Key):
    keys("feed 2 L basi", key)
    assert sheet.panel.field.text() == "feed 2 L Basic bloom"
    assert sheet.panel.field.hasFocus()
    assert shown(sheet)[0] == "Feed 2.0 L, Basic bloom"


def test_tab_goes_on_where_nothing_is_offered(sheet: Sheet, keys: Type):
    keys("3 fruit 250 g", Key.Key_Tab)
    assert not sheet.panel.field.hasFocus()


def test_the_rest_of_a_word_is_drawn_behind_the_cursor_only_while_the_field_has_the_focus(sheet: Sheet, keys: Type):
    keys("2 old")
    offered = sheet.panel.field.completion
    assert offered is not None
    assert offered.text == "old leaves removed"
    drawn = sheet.panel.field.grab().toImage()
    sheet.other.setFocus()
    assert sheet.panel.field.completion is None
    assert sheet.panel.field.grab().toImage() != drawn


@pytest.mark.parametrize("key", [Key.Key_F1, None])
def test_f1_and_the_button_ask_for_the_words(sheet: Sheet, keys: Type, qtbot: QtBot, key: Qt.Key | None):
    with qtbot.waitSignal(sheet.panel.help_wanted, timeout=100):
        if key is None:
            sheet.panel.help_button.click()
        else:
            keys(key)


def test_undo_is_the_fields_while_it_has_something_to_take_back_and_else_the_logbooks(sheet: Sheet, keys: Type):
    def takes_undo() -> bool:
        event = QKeyEvent(QKeyEvent.Type.ShortcutOverride, Key.Key_Z, Qt.KeyboardModifier.ControlModifier, "z")
        event.ignore()
        QApplication.sendEvent(sheet.panel.field, event)
        return event.isAccepted()

    assert not takes_undo()
    keys("3 fruit 250 g")
    assert takes_undo()
    keys(Key.Key_Return)
    assert not takes_undo()


def test_a_long_reading_takes_its_share_of_the_sheet_and_scrolls(sheet: Sheet, keys: Type):
    sheet.panel.set_line("1 fruit 86 g; " * 40)
    assert sheet.panel.view.height() <= 0.45 * sheet.height() + 1
    assert sheet.panel.view.verticalScrollBar().maximum() > 0
    assert shown(sheet)[-1].startswith("and ")


@pytest.mark.parametrize("line", ["9" * 10_000, "🍅" * 2_000, "1 fruit; " * 1_200, "<b>3</b> fruit", "12,5.3"])
def test_odd_lines_are_shown_and_not_written(sheet: Sheet, keys: Type, line: str):
    sheet.panel.set_line(line)
    sheet.grab()
    if not sheet.panel.reading.can_be_written:
        keys(Key.Key_Return)
        assert sheet.written == []
        assert shown(sheet)[0].startswith("Nothing was written.")
    assert all(len(words) < 200 for words in shown(sheet))


def test_a_new_mix_is_understood_in_the_line_that_stands_there(sheet: Sheet, keys: Type):
    keys("feed 2 L Late bloom")
    assert not sheet.panel.reading.can_be_written
    sheet.panel.show_context(LineContext(mixes=(KnownMix("Late bloom", "m2"),)), LineWords())
    assert sheet.panel.reading.can_be_written
