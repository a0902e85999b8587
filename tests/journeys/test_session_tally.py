"""Back from the room: the tally by keys, the board with the new picks, and what survives a crash."""

from collections.abc import Callable
from datetime import timedelta

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget
from shiboken6 import delete

from growlog.desktop.tally import SessionTally
from growlog.records.entry import Pick
from growlog.services.crops import add_crop, clear_crop, new_crop
from growlog.services.entries import add_entry
from growlog.services.tally import find_draft
from tests.journeys.conftest import Person
from tests.logbooks import SOWN, TODAY, entry_on

pytestmark = [pytest.mark.journey, pytest.mark.slow]

CONTROL = Qt.KeyboardModifier.ControlModifier


def with_two_crops(make: Callable[..., Person]) -> Person:
    """A person with a pattypan that was picked once, and a chilli."""
    someone = make()
    someone.new_logbook()
    desk = someone.window.desk
    assert desk is not None
    for name, species in (("Boxroom Gold", "pattypan"), ("Landing Light", "chilli")):
        crop, cultivar = new_crop(name, species, SOWN)
        assert desk.write(add_crop, crop, cultivar) is not None
        if species == "pattypan":
            gold = crop
    assert desk.write(add_entry, entry_on(gold, SOWN + timedelta(60), Pick(2, 160.0))) is not None
    desk.selection.choose_crop(gold.id)
    return someone


def open_tally(someone: Person) -> SessionTally:
    """Presses the key of the tally in the window."""
    window = someone.window
    with someone.qtbot.waitActive(window):
        window.activateWindow()
    someone.qtbot.keyClick(window.focusWidget() or window, Qt.Key.Key_L, CONTROL)
    assert window.opened is not None
    dialog = window.opened.tally.dialog
    assert dialog is not None
    someone.qtbot.waitUntil(dialog.isActiveWindow)  # until then the window's own keys would answer
    return dialog


def press(someone: Person, text: str) -> None:
    """Types where the focus of the tally is; a new line is Enter."""
    assert someone.window.opened is not None
    dialog = someone.window.opened.tally.dialog
    assert dialog is not None
    for sign in text:
        focus: QWidget | None = dialog.focusWidget()
        assert focus is not None
        someone.qtbot.keyClick(focus, Qt.Key.Key_Return if sign == "\n" else sign)


def test_a_session_is_typed_and_stands_on_the_board_and_is_taken_back_as_one(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    desk = someone.window.desk
    assert desk is not None
    dialog = open_tally(someone)
    assert dialog.pick.so_far_label.text() == "crop so far 2 fruit, 160\u2009g"
    press(someone, "93\n78\ncmll")
    someone.qtbot.keyClick(dialog.pick.line, Qt.Key.Key_F3)
    press(someone, "12\nvv")
    someone.qtbot.keyClick(dialog.pick.line, Qt.Key.Key_Return, CONTROL)
    assert someone.messages.informed[-1].endswith("was written.")
    assert someone.messages.problems == []
    assert desk.board is not None
    assert (desk.board.total.fruit_count, desk.board.total.weight_g) == (4, 331.0)
    assert desk.selection.day == TODAY
    assert desk.sheet is not None
    assert {e.title for e in desk.sheet.entries} == {"Picked 2, 171\u2009g", "2 old leaves removed"}
    assert find_draft(desk.log).tally is None
    desk.undo()
    assert desk.board.total.fruit_count == 2
    assert desk.undo_stack.redo_title.startswith("Session tally")


def test_a_tally_that_a_crash_interrupted_is_offered_and_written(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    dialog = open_tally(someone)
    press(someone, "93\n7")
    desk = someone.window.desk
    assert desk is not None
    log = desk.log
    someone.qtbot.waitUntil(lambda: (t := find_draft(log).tally) is not None and t.typed == "7")
    dialog.hide()
    delete(dialog)
    folder = log.folder
    someone.close()
    someone.start()
    someone.opening.open(folder)
    assert someone.messages.informed[-1].endswith("was not finished.")
    words, go_on = someone.messages.actions[-1]
    assert words == "Go on with it"
    assert go_on is not None
    go_on()
    assert someone.window.opened is not None
    again = someone.window.opened.tally.dialog
    assert again is not None
    assert again.offer_page.isVisible()
    someone.qtbot.keyClick(again.focusWidget() or again, Qt.Key.Key_Return)
    press(someone, "8\n")
    someone.qtbot.keyClick(again.pick.line, Qt.Key.Key_Return, CONTROL)
    reopened = someone.window.desk
    assert reopened is not None
    picks = [c.total.fruit_count for c in reopened.crops if c.crop.name == "Boxroom Gold"]
    assert picks == [4]


def test_closing_the_program_keeps_the_tally_that_stands_open(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    open_tally(someone)
    press(someone, "93\n78")
    desk = someone.window.desk
    assert desk is not None
    folder = desk.log.folder
    someone.close()
    someone.start()
    someone.opening.open(folder)
    again = someone.window.desk
    assert again is not None
    left = find_draft(again.log).tally
    assert left is not None
    assert (left.typed, left.crops[0].fruit) == ("78", (93.0,))


def test_a_crop_cleared_at_the_board_meanwhile_is_said_and_nothing_is_half_written(
    person: Callable[..., Person],
) -> None:
    someone = with_two_crops(person)
    desk = someone.window.desk
    assert desk is not None
    dialog = open_tally(someone)
    press(someone, "93\n")
    someone.qtbot.keyClick(dialog.pick.line, Qt.Key.Key_F3)
    press(someone, "12\n")
    chilli = next(c.crop.id for c in desk.crops if c.crop.name == "Landing Light")
    assert desk.write(clear_crop, chilli, TODAY - timedelta(1)) is not None
    someone.qtbot.keyClick(dialog.pick.line, Qt.Key.Key_Return, CONTROL)
    assert dialog.isVisible()
    assert "Landing Light was cleared" in dialog.questions.banners[0].sentence
    assert [c.total.fruit_count for c in desk.crops] == [2, 0]
    someone.qtbot.keyClick(dialog.pick.line, Qt.Key.Key_Backspace)
    someone.qtbot.keyClick(dialog.pick.line, Qt.Key.Key_Return, CONTROL)
    assert [c.total.fruit_count for c in desk.crops] == [3, 0]


def test_the_tally_comes_back_to_the_one_that_stands_open(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    dialog = open_tally(someone)
    page = someone.window.page
    assert page is not None
    page.tally_button.click()
    assert someone.window.opened is not None
    assert someone.window.opened.tally.dialog is dialog


def test_the_program_does_not_close_over_a_tally_that_cannot_be_kept(person: Callable[..., Person]) -> None:
    someone = with_two_crops(person)
    desk = someone.window.desk
    assert desk is not None
    dialog = open_tally(someone)
    (desk.log.folder / "unfinished").write_text("in the way")
    press(someone, "93\n")
    someone.window.close()
    assert someone.window.isVisible()
    assert dialog.isVisible()
    assert "This is not kept" in f"{dialog.pick.said_label.text()} {dialog.note_label.text()}"
    (desk.log.folder / "unfinished").unlink()
    press(someone, "78\n")
    someone.window.close()
    assert not someone.window.isVisible()
    assert (desk.log.folder / "unfinished" / "tally.json").is_file()
