"""The dialog of tagged flowers."""

from datetime import date

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from growlog.desktop.flower_tags.flower_tags_dialog import FlowerTagsDialog
from growlog.records.crop import Crop
from growlog.records.problems import Problem
from growlog.services.flower_tags import TagBook, TagFate, TagOutcome, TagStory

DAY = date(2026, 1, 18)
CROP = Crop("c", "Boxroom Gold", "v", sown_on=date(2025, 11, 15))
BOOK = TagBook(
    CROP,
    (
        TagStory("6", date(2026, 1, 16)),
        TagStory("5", date(2026, 1, 12), TagFate.SET, date(2026, 1, 15)),
        TagStory("1", date(2026, 1, 8), TagFate.PICKED, None, date(2026, 1, 15), 84.0),
    ),
    ("99",),
)


def shown(qtbot: QtBot, book: TagBook = BOOK) -> FlowerTagsDialog:
    dialog = FlowerTagsDialog(book, DAY, "metric")
    qtbot.addWidget(dialog)
    with qtbot.waitActive(dialog):
        dialog.show()
    return dialog


def words_of(dialog: FlowerTagsDialog) -> str:
    from growlog.desktop.look.widgets import TextLabel

    return " ".join(label.text() for label in dialog.findChildren(TextLabel) if label.isVisible())


def test_only_what_is_new_is_written(qtbot: QtBot) -> None:
    dialog = shown(qtbot)
    QTest.mouseClick(dialog.lines[0].switch.button("picked"), Qt.MouseButton.LeftButton)
    QTest.keyClicks(dialog.lines[0].weight_field.line, "86")
    with qtbot.waitSignal(dialog.confirmed) as confirmed:
        QTest.keyClick(dialog, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert confirmed.args == [DAY, [TagOutcome("6", TagFate.PICKED, 86.0)]]


def test_a_picked_fruit_may_stay_unweighed(qtbot: QtBot) -> None:
    dialog = shown(qtbot)
    dialog.lines[1].switch.set_value("picked")
    with qtbot.waitSignal(dialog.confirmed) as confirmed:
        dialog.confirm()
    assert confirmed.args == [DAY, [TagOutcome("5", TagFate.PICKED, None)]]


def test_a_weight_that_is_no_number_keeps_it_open(qtbot: QtBot) -> None:
    dialog = shown(qtbot)
    dialog.lines[0].switch.set_value("picked")
    dialog.lines[0].weight_field.line.setText("8x")
    with qtbot.assertNotEmitted(dialog.confirmed):
        dialog.confirm()
    assert dialog.lines[0].weight_field.is_refused


def test_what_was_followed_is_told_with_its_days_and_strangers_are_named(qtbot: QtBot) -> None:
    words = words_of(shown(qtbot))
    assert "1 of 1 followed flowers came to a pick." in words
    assert "picked after 7 days" in words
    assert "never hung in a pollination: 99" in words


def test_without_tags_it_leads_to_a_pollination(qtbot: QtBot) -> None:
    dialog = shown(qtbot, TagBook(CROP, (), ()))
    assert not dialog.write_button.isVisible()
    with qtbot.waitSignal(dialog.pollination_wanted):
        QTest.mouseClick(dialog.empty.button, Qt.MouseButton.LeftButton)


def test_a_refusal_is_shown_and_what_was_chosen_stays(qtbot: QtBot) -> None:
    dialog = shown(qtbot)
    dialog.lines[0].switch.set_value("set")
    dialog.show_problems([Problem("tags", "Tag 6 does not hang.")])
    assert dialog.note_label.text() == "Tag 6 does not hang."
    assert dialog.lines[0].switch.value() == "set"
