"""The dialog around the form."""

from collections.abc import Callable

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from growlog.desktop.entry_form import EntryDialog
from growlog.records.entry import Training
from tests.desktop.entry_form.conftest import Hands

MakeHands = Callable[..., Hands]


def opened(qtbot: QtBot, hand: Hands) -> EntryDialog:
    dialog = EntryDialog(hand.form, "Boxroom Gold, day 64")
    dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
    qtbot.addWidget(dialog)
    with qtbot.waitActive(dialog):
        dialog.show()
    return dialog


def test_write_confirms_and_the_dialog_stays_until_it_was_written(hands: MakeHands, qtbot: QtBot):
    hand = hands("training", Training(2))
    dialog = opened(qtbot, hand)
    with qtbot.assertNotEmitted(hand.form.cancelled):
        qtbot.mouseClick(dialog.write_button, Qt.MouseButton.LeftButton)
        assert [entry.detail for entry in hand.written] == [Training(2)]
        assert dialog.isVisible()
        dialog.refuse("The disk is full.")
        assert dialog.note_label.text() == "The disk is full."
        dialog.finish()
    assert not dialog.isVisible()


def test_write_waits_for_the_answer_to_a_question(hands: MakeHands, qtbot: QtBot):
    hand = hands("feed")
    dialog = opened(qtbot, hand)
    hand.type("ec_ms_per_cm", "8")
    assert not dialog.write_button.isEnabled()
    assert "Tick the answer" in dialog.note_label.text()
    hand.answer("ec_ms_per_cm")
    assert dialog.write_button.isEnabled()


def test_a_refused_form_stays_open(hands: MakeHands, qtbot: QtBot):
    hand = hands("training")
    dialog = opened(qtbot, hand)
    qtbot.mouseClick(dialog.write_button, Qt.MouseButton.LeftButton)
    assert dialog.isVisible()
    assert hand.written == []


def test_enter_in_a_field_does_not_write(hands: MakeHands, qtbot: QtBot):
    hand = hands("training", Training(2))
    dialog = opened(qtbot, hand)
    qtbot.keyClick(hand.line("old_leaves_removed"), Qt.Key.Key_Return)
    assert dialog.isVisible()
    assert hand.written == []


def test_escape_cancels_once(hands: MakeHands, qtbot: QtBot):
    hand = hands("training", Training(2))
    dialog = opened(qtbot, hand)
    cancelled: list[bool] = []
    hand.form.cancelled.connect(lambda: cancelled.append(True))
    qtbot.keyClick(dialog, Qt.Key.Key_Escape)
    assert cancelled == [True]
    assert not dialog.isVisible()


def test_typing_begins_in_the_first_field_of_the_kind(hands: MakeHands, qtbot: QtBot):
    hand = hands("training")
    dialog = opened(qtbot, hand)
    assert dialog.focusWidget() is hand.line("old_leaves_removed")


def test_the_dialog_does_not_block_the_board(hands: MakeHands, qtbot: QtBot):
    hand = hands("note")
    dialog = opened(qtbot, hand)
    assert not dialog.isModal()
    assert dialog.windowModality() is Qt.WindowModality.NonModal
