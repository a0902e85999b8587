"""A whole session by mouse alone, with targets that a wet thumb hits."""

from collections.abc import Callable
from dataclasses import replace
from datetime import time

import pytest
from PySide6.QtWidgets import QAbstractButton, QApplication, QLineEdit, QPushButton, QScrollBar

from growlog.desktop.look.theme import apply_theme
from growlog.records.entry import Cull, CullCause
from growlog.services.tally import CropTally, entries_of
from tests.desktop.tally.conftest import Hands, empty_tally, three_crops

pytestmark = pytest.mark.slow

THUMB_PX = 44


def test_a_session_by_mouse_alone(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.click("padToggle")
    for key in ("pad9", "pad3", "padEnter", "pad7", "pad8", "padPoint", "pad5", "padEnter", "pad1", "pad1", "padEnter"):
        someone.click(key)
    someone.click("fruit2")  # the chip of 11 g strikes it
    someone.step("unweighed", "more")
    someone.click("cull")
    someone.step("cull.cracked", "more")
    someone.step("cull.cracked", "more")
    someone.step("cull.cracked", "less")
    someone.click("cull")
    for _ in range(3):
        someone.step("females_pollinated", "more")
    someone.step("females_pollinated", "less")
    someone.click("crop.Landing Light")
    someone.step("trusses_vibrated", "more")
    someone.click("stopwatch")
    someone.click("stopwatch")
    someone.click("write")
    (tally,) = someone.written
    gold = tally.of("gold")
    assert gold.fruit == (93.0, 78.5, None)
    assert gold.culls == (Cull(1, CullCause.CRACKED),)
    assert gold.females_pollinated == 2
    assert tally.of("light").trusses_vibrated == 1
    assert len(entries_of(tally)) == 3
    assert someone.keys == 0


def test_clicks_leave_the_focus_at_the_scale(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.step("females_pollinated", "more")
    someone.click("crop.Landing Light")
    someone.click("padToggle")
    assert someone.dialog.pick.line.hasFocus()


def test_the_pad_types_where_the_focus_is_but_never_into_words(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.click("padToggle")
    someone.dialog.minutes.here_field.line.setFocus()
    someone.click("pad8")
    assert someone.tally.of("gold").minutes == 8
    someone.dialog.note_field.line.setFocus()
    someone.click("pad7")
    assert someone.dialog.pick.line.text() == "7"
    assert someone.tally.of("gold").note == ""


def assert_thumb_sized(someone: Hands) -> None:
    """Every button and field that is seen is large enough."""
    seen = [w for kind in (QAbstractButton, QLineEdit) for w in someone.dialog.findChildren(kind) if w.isVisible()]
    assert len(seen) > 20
    small = {
        f"{w.objectName() or type(w).__name__} {w.width()}x{w.height()}"
        for w in seen
        if min(w.width(), w.height()) < THUMB_PX and not isinstance(w.parent(), QScrollBar)
    }
    assert small == set()


def test_every_target_is_large_enough_for_a_wet_thumb(hands: Callable[..., Hands], qapp: QApplication) -> None:
    state = CropTally("gold").picked(93).picked(6000).counted("females_pollinated", 2, time(19))
    rows = [
        replace(three_crops()[0], harvest_closed="The label asks for no pick before 21 January."),
        *three_crops()[1:],
    ]
    someone = hands(empty_tally(crops=(state,)), crops=rows)
    someone.click("padToggle")
    someone.click("cull")
    someone.click("fruitCheck")
    qapp.sendPostedEvents()
    assert len(someone.questions) == 3
    assert_thumb_sized(someone)


def test_the_steps_of_the_counters_are_at_least_48_px(hands: Callable[..., Hands]) -> None:
    someone = hands()
    steps = [
        b for b in someone.dialog.findChildren(QPushButton) if b.objectName() in ("less", "more") and b.isVisible()
    ]
    assert len(steps) == 10
    assert min(min(b.width(), b.height()) for b in steps) >= 48


def test_the_offer_of_an_unfinished_tally_is_thumb_sized_and_its_buttons_stand_apart(
    hands: Callable[..., Hands],
) -> None:
    someone = hands(offered=empty_tally(crops=(CropTally("gold").picked(93),)), offer="A tally was not finished.")
    page = someone.dialog.offer_page
    assert min(page.go_on_button.height(), page.write_off_button.height()) >= THUMB_PX
    assert page.write_off_button.x() - page.go_on_button.geometry().right() >= 24


def test_at_twice_the_text_size_nothing_is_cut_off_sideways(hands: Callable[..., Hands], qapp: QApplication) -> None:
    apply_theme(qapp, "light", 200)
    try:
        someone = hands(empty_tally(crops=(CropTally("gold").picked(93).with_unweighed(4),)))
        someone.dialog.resize(1000, 592)
        someone.click("cull")
        qapp.sendPostedEvents()
        assert someone.dialog.scroll_area.horizontalScrollBar().maximum() == 0
    finally:
        apply_theme(qapp, "light", 100)


def test_more_crops_than_function_keys_are_all_in_the_rail(hands: Callable[..., Hands]) -> None:
    kind = three_crops()[1]
    rows = [replace(kind, crop_id=f"c{n}", name=f"Crop {n}") for n in range(14)]
    someone = hands(empty_tally(chosen="c0"), crops=rows)
    assert [row.key_label.text() for row in someone.dialog.rail.rows][-4:] == ["F12", "", "", ""][-4:]
    someone.click("crop.Crop 13")
    assert someone.tally.chosen == "c13"


def test_many_crops_at_twice_the_text_size_are_scrolled_to_and_never_squeezed(
    hands: Callable[..., Hands], qapp: QApplication
) -> None:
    kind = three_crops()[1]
    rows = [replace(kind, crop_id=f"c{n}", name=f"Crop {n}") for n in range(30)]
    apply_theme(qapp, "light", 200)
    try:
        someone = hands(empty_tally(chosen="c0"), crops=rows)
        someone.dialog.resize(1000, 592)
        qapp.sendPostedEvents()
        assert all(row.height() >= row.sizeHint().height() for row in someone.dialog.rail.rows)
    finally:
        apply_theme(qapp, "light", 100)
