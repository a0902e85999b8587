"""A whole session by keyboard alone, and what each key does or refuses."""

from collections.abc import Callable
from datetime import time

import pytest
from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent

from growlog.desktop.tally.keys import cause_keys, crop_key
from growlog.records.entry import Cull, CullCause, FruitCheck, Pick, Pollination
from growlog.services.tally import entries_of
from tests.desktop.tally.conftest import SHIFT, Hands, empty_tally

TWELVE = (93, 78, 86, 64, 71, 88, 90, 55, 67, 82, 79, 84)


def test_a_usual_session_takes_less_than_sixty_keys_and_no_pointing(hands: Callable[..., Hands]) -> None:
    """One crop, 12 weighed fruit of two figures, 5 females pollinated, 2 culls with their cause."""
    someone = hands()
    for weight_g in TWELVE:
        someone.type(f"{weight_g}\n")
    someone.type("ppppp" + "cc" + "cm")
    someone.write()
    opening = 2  # Ctrl and L
    assert someone.keys + opening == 49
    assert someone.keys + opening <= 60
    (tally,) = someone.written
    pick, pollination = (e.detail for e in entries_of(tally))
    assert pick == Pick(
        12, None, tuple(float(w) for w in TWELVE), (Cull(1, CullCause.MISSHAPEN), Cull(1, CullCause.CRACKED))
    )
    assert pollination == Pollination(5)


def test_every_part_of_a_session_is_reached_by_keys_alone(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\n78\nww")
    someone.type("pmmmllls")
    someone.type("f3")  # the fruit check, its first count
    someone.key(Qt.Key.Key_Return)
    someone.type("n")
    someone.type("mildew below\n")
    someone.key(Qt.Key.Key_F3)
    someone.type("12\nvvvv")
    someone.type("i3\n")
    someone.key(Qt.Key.Key_F2)
    someone.type("i8\n")
    someone.write()
    (tally,) = someone.written
    gold, light = tally.of("gold"), tally.of("light")
    assert gold.fruit == (93.0, 78.0, None, None)
    assert (gold.females_pollinated, gold.males_open, gold.old_leaves_removed, gold.side_shoots_removed) == (1, 3, 3, 1)
    assert gold.fruit_check == FruitCheck(females_open=3)
    assert (gold.note, gold.minutes, light.minutes) == ("mildew below", 8, 3)
    assert (light.fruit, light.trusses_vibrated) == ((12.0,), 4)
    assert len(entries_of(tally)) == 7


def test_numbers_are_typed_into_a_counter_and_enter_goes_back_to_the_scale(hands: Callable[..., Hands]) -> None:
    someone = hands()
    line = someone.dialog.counters.steppers["males_open"].line
    while not line.hasFocus():
        someone.key(Qt.Key.Key_Tab)
    line.selectAll()
    someone.type("23")
    someone.type("x")
    assert "X was not taken" in someone.said
    someone.key(Qt.Key.Key_Return)
    assert someone.dialog.pick.line.hasFocus()
    assert someone.tally.of("gold").males_open == 23


def test_shift_takes_back_and_nothing_goes_below_nought(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("ppP")
    assert someone.tally.of("gold").females_pollinated == 1
    someone.type("PP")
    assert someone.tally.of("gold").females_pollinated == 0
    assert "none to take back" in someone.said
    someone.type("wwWcC")
    someone.type("Cc")
    assert someone.tally.of("gold").fruit == (None,)
    assert someone.tally.of("gold").culls == ()


def test_shift_c_takes_a_cull_back(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("cmcmcb")
    assert someone.tally.of("gold").cull_count(CullCause.MISSHAPEN) == 2
    someone.type("Cm")
    assert someone.tally.of("gold").culls == (Cull(1, CullCause.MISSHAPEN), Cull(1, CullCause.BLOSSOM_END_ROT))


def test_backspace_in_the_empty_field_strikes_the_last_fruit_and_says_which(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\n78\n8")
    someone.key(Qt.Key.Key_Backspace)
    assert someone.tally.of("gold").fruit == (93.0, 78.0)
    someone.key(Qt.Key.Key_Backspace)
    assert someone.tally.of("gold").fruit == (93.0,)
    assert "78\u2009g" in someone.said
    someone.type("w")
    someone.key(Qt.Key.Key_Backspace)
    assert someone.tally.of("gold").fruit == (93.0,)


def test_count_total_and_mean_run_along(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\n78\n")
    assert someone.dialog.pick.running_label.text() == "2 fruit, 171\u2009g, mean 85.5\u2009g"
    assert [chip.text() for chip in someone.dialog.pick.chips.chips] == ["93\u2009g", "78\u2009g"]
    assert someone.dialog.pick.so_far_label.text() == "crop so far 14 fruit, 1.20\u2009kg"


@pytest.mark.parametrize("letter", ["j", "x", "+", "?"])
def test_a_letter_without_meaning_is_refused_and_names_those_that_have_one(
    hands: Callable[..., Hands], letter: str
) -> None:
    someone = hands()
    someone.type(letter)
    assert f"{letter.upper()} has no meaning here. Keys: W, C, P, M, L, S" in someone.said
    assert someone.tally == empty_tally(id=someone.tally.id)


def test_a_letter_that_does_not_fit_the_crop_is_refused(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("v")
    assert "V counts trusses vibrated, which does not fit Boxroom Gold." in someone.said
    someone.key(Qt.Key.Key_F3)
    someone.type("p")
    assert "does not fit Landing Light" in someone.said
    assert not someone.tally.is_touched


def test_a_letter_after_figures_is_refused_and_the_figures_stay(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("5p")
    assert someone.dialog.pick.line.text() == "5"
    assert "P was not taken: 5 stands in the weight field." in someone.said
    assert someone.tally.of("gold").females_pollinated == 0
    someone.type("\n")
    assert someone.tally.of("gold").fruit == (5.0,)


def test_a_letter_that_is_no_cause_leaves_the_causes_open(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("cx")
    assert "X is no cause." in someone.said
    someone.key(Qt.Key.Key_Escape)
    assert not someone.dialog.pick.culls_open
    assert someone.dialog.isVisible()
    assert not someone.tally.is_touched


def test_the_crop_is_not_changed_under_a_half_typed_weight(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("86")
    someone.key(Qt.Key.Key_F3)
    assert someone.tally.chosen == "gold"
    assert "86 stands in the weight field" in someone.said
    someone.type("\n")
    someone.key(Qt.Key.Key_PageDown)
    assert someone.tally.chosen == "light"
    someone.key(Qt.Key.Key_PageUp)
    assert someone.tally.chosen == "gold"
    someone.key(Qt.Key.Key_F9)
    assert "no crop on this key" in someone.said


def test_a_weight_that_still_stands_is_taken_when_the_tally_is_written(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("86")
    someone.write()
    assert someone.written[0].of("gold").fruit == (86.0,)


def test_letters_find_the_scale_from_wherever_the_focus_is(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.dialog.write_button.setFocus()
    someone.type("p8")
    assert someone.tally.of("gold").females_pollinated == 1
    assert someone.dialog.pick.line.text() == "8"


def test_the_time_of_the_pollination_is_its_own_and_may_be_written(hands: Callable[..., Hands]) -> None:
    someone = hands()
    assert someone.dialog.counters.time_field.isHidden()
    someone.type("p")
    line = someone.dialog.counters.time_field.line
    assert line.text() == "08:05"
    line.setFocus()
    line.selectAll()
    someone.type("730")
    someone.key(Qt.Key.Key_Return)
    assert someone.tally.of("gold").pollinated_at == time(7, 30)


def test_each_cause_has_a_letter_of_its_own_and_each_crop_a_key() -> None:
    assert set(cause_keys().values()) == set(CullCause)
    assert cause_keys()["C"] is CullCause.CRACKED
    assert [crop_key(place) for place in (0, 10, 11)] == ["F2", "F12", ""]


def test_shift_is_needed_only_to_take_back(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.press("p", SHIFT)
    assert "none to take back" in someone.said


def test_a_key_held_down_counts_once_and_strikes_no_fruit(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\np")
    for key, text in ((Qt.Key.Key_P, "p"), (Qt.Key.Key_Backspace, "\b")):
        held = QKeyEvent(QEvent.Type.KeyPress, key, Qt.KeyboardModifier.NoModifier, text, True)
        someone.dialog.pick.line.keyPressEvent(held)
    assert someone.tally.of("gold").females_pollinated == 1
    assert someone.tally.of("gold").fruit == (93.0,)


def test_a_field_that_a_letter_goes_to_is_brought_into_sight(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.dialog.resize(776, 500)
    someone.type("i")
    line = someone.dialog.minutes.here_field.line
    viewport = someone.dialog.scroll_area.viewport()
    someone.qtbot.waitUntil(lambda: viewport.rect().contains(line.mapTo(viewport, line.rect().center())))
    assert line.hasFocus()
