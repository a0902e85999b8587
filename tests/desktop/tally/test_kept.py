"""A half-finished tally is kept as one goes, survives closing and crashing, and is offered again."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication
from shiboken6 import delete, isValid

from growlog.services.tally import CropTally
from tests.desktop.tally.conftest import Hands, empty_tally

pytestmark = pytest.mark.slow

OFFER = "A tally from 18 January 2026, 12:40 was not finished."


def test_every_change_is_kept_soon(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\n78")
    someone.qtbot.waitUntil(lambda: bool(someone.kept) and someone.kept[-1] == someone.tally)
    assert someone.kept[-1].typed == "78"
    assert someone.kept[-1].of("gold").fruit == (93.0,)


def test_looking_at_an_untouched_tally_keeps_nothing_before_it_is_closed(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.dialog.model.refresh()
    assert someone.kept == []


def test_putting_away_keeps_the_last_state_without_waiting(hands: Callable[..., Hands]) -> None:
    someone = hands(None, None)
    someone.type("93\n78")
    someone.key(Qt.Key.Key_Escape)
    assert someone.kept[-1].typed == "78"
    assert someone.written == []


def test_a_dialog_that_is_destroyed_without_closing_leaves_its_draft(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\n")
    someone.qtbot.waitUntil(lambda: bool(someone.kept) and someone.kept[-1].of("gold").fruit == (93.0,))
    someone.dialog.hide()
    delete(someone.dialog)
    left = someone.kept[-1]
    again = hands(offered=left, offer=OFFER)
    assert again.dialog.offer_page.isVisible()
    assert again.dialog.offer_page.sentence_label.text() == OFFER
    assert again.dialog.offer_page.lines_label.text() == "Boxroom Gold: 1 picked, 93\u2009g"
    again.key(Qt.Key.Key_Return)
    assert again.tally == left
    again.type("78\n")
    again.write()
    assert again.written[0].of("gold").fruit == (93.0, 78.0)


def test_a_weight_half_typed_before_the_crash_stands_in_the_field_and_is_gone_on_with(
    hands: Callable[..., Hands],
) -> None:
    someone = hands(offered=empty_tally(typed="8"), offer=OFFER)
    someone.click("goOn")
    assert someone.dialog.pick.line.text() == "8"
    someone.type("6\n")
    assert someone.tally.of("gold").fruit == (86.0,)


def test_while_the_offer_stands_nothing_is_kept_over_it_and_nothing_is_written(hands: Callable[..., Hands]) -> None:
    someone = hands(offered=empty_tally(crops=(CropTally("gold").picked(93),)), offer=OFFER)
    someone.write()
    someone.key(Qt.Key.Key_F3)
    someone.key(Qt.Key.Key_P)
    assert (someone.written, someone.tally.chosen) == ([], "gold")
    someone.key(Qt.Key.Key_Escape)
    assert someone.kept == []


def test_written_off_it_is_let_go_and_an_empty_tally_begins(hands: Callable[..., Hands]) -> None:
    someone = hands(offered=empty_tally(crops=(CropTally("gold").picked(93),)), offer=OFFER)
    with someone.qtbot.waitSignal(someone.dialog.written_off):
        someone.click("writeOff")
    assert not someone.tally.is_touched
    assert someone.dialog.pick.line.isVisible()
    someone.type("78\n")
    assert someone.tally.of("gold").fruit == (78.0,)


def test_a_disk_that_keeps_nothing_is_said_and_typing_goes_on(hands: Callable[..., Hands]) -> None:
    someone = hands(keep="the disk is full.")
    someone.type("93\n")
    someone.qtbot.waitUntil(lambda: "This is not kept: the disk is full." in someone.said)
    assert someone.tally.of("gold").fruit == (93.0,)
    assert "Kept as you go" not in someone.dialog.kept_label.text()


def test_what_was_written_is_kept_no_more(hands: Callable[..., Hands], qapp: QApplication) -> None:
    someone = hands()
    someone.type("93\n")
    someone.write()
    someone.dialog._throttle.flush()
    count = len(someone.kept)
    someone.dialog.finish()
    qapp.sendPostedEvents()
    assert len(someone.kept) == count


def test_where_nothing_can_be_kept_closing_is_held_back_once_and_says_what_would_be_lost(
    hands: Callable[..., Hands],
) -> None:
    someone = hands(keep="the disk is full.")
    someone.type("93\n")
    someone.dialog.close()
    assert someone.dialog.isVisible()
    assert "close again to lose it" in someone.said
    someone.dialog.close()
    assert not isValid(someone.dialog) or not someone.dialog.isVisible()


def test_a_change_that_is_taken_back_at_once_is_not_what_is_kept(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("p")
    someone.type("p")
    someone.type("P")
    someone.qtbot.waitUntil(lambda: not someone.dialog._throttle.is_waiting)
    assert someone.kept[-1].of("gold").females_pollinated == 1
