"""Bad input: a plain answer each time, nothing lost, nothing half-written."""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from PySide6.QtCore import QEvent, QLocale, Qt
from PySide6.QtGui import QKeyEvent

from growlog.desktop.tally.typed_weight import read_weight, weight_text
from growlog.services.tally import CannotTally, Stopwatch
from tests.desktop.tally.conftest import DAY, Clock, Hands, empty_tally, running, three_crops

pytestmark = pytest.mark.slow


@pytest.mark.parametrize(
    ("typed", "sentence"),
    [
        ("0", "outside"),
        ("60000", "outside"),
        ("12,5.3", "12,5.3 has more than one decimal sign"),
        ("1.2.3", "more than one decimal sign"),
        ("86.55", "At most 1 decimal place"),
        (".", "is not a weight"),
    ],
)
def test_a_weight_that_cannot_be_is_refused_and_stays_to_be_mended(
    hands: Callable[..., Hands], typed: str, sentence: str
) -> None:
    someone = hands()
    someone.type(f"93\n{typed}\n")
    assert sentence in someone.said
    assert someone.dialog.pick.line.text() == typed
    assert someone.tally.of("gold").fruit == (93.0,)
    someone.write()
    assert someone.written == []
    for _ in typed:
        someone.key(Qt.Key.Key_Backspace)
    someone.type("78\n")
    someone.write()
    assert someone.written[0].of("gold").fruit == (93.0, 78.0)


@pytest.mark.parametrize("pasted", ["8p6", "93 78", "-5", "1e3", "٣"])
def test_what_is_pasted_is_judged_as_what_is_typed(pasted: str) -> None:
    with pytest.raises(CannotTally, match="not a weight"):
        read_weight(pasted)


def test_a_comma_and_a_point_are_both_decimal_signs_and_ounces_are_kept_in_grams() -> None:
    assert read_weight("86,5") == read_weight("86.5") == 86.5
    # 1 avoirdupois ounce is 28.349523125 g: NIST Special Publication 811 (2008), appendix B.
    assert read_weight("3", "us") == pytest.approx(3 * 28.349523125, abs=0.001)


def test_enter_in_the_empty_field_says_what_to_do(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("\n")
    assert "Type a weight first" in someone.said


def test_an_empty_tally_is_not_written(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.write()
    assert someone.written == []
    assert "Nothing is tallied yet" in someone.said


def test_a_crop_cleared_meanwhile_is_refused_and_everything_stands(hands: Callable[..., Hands]) -> None:
    rows = three_crops()
    someone = hands(crops=rows)
    someone.type("93\n")
    someone.key(Qt.Key.Key_F3)
    someone.type("12\n")
    rows[0] = replace(rows[0], cannot="Boxroom Gold was cleared on 17 January 2026.")
    someone.dialog.model.refresh()
    someone.write()
    assert someone.written == []
    assert someone.tally.chosen == "gold"
    assert someone.questions == ["Boxroom Gold was cleared on 17 January 2026."]
    assert someone.tally.of("light").fruit == (12.0,)
    someone.key(Qt.Key.Key_Backspace)
    someone.write()
    assert [c.crop_id for c in someone.written[0].crops] == ["light"]


def test_a_stopwatch_left_on_overnight_is_asked_about_and_never_taken_in_silence(
    hands: Callable[..., Hands], clock: Clock
) -> None:
    someone = hands(running(clock.moment - timedelta(hours=13, minutes=20)))
    assert "The stopwatch has run for 13 h 20 min. Was it left on?" in someone.questions[0]
    someone.type("93\nt")
    assert someone.tally.stopwatch.running
    someone.write()
    assert someone.written == []
    someone.click("watchLeftOn")
    assert someone.tally.stopwatch == Stopwatch()
    assert someone.questions == []
    someone.write()
    assert len(someone.written) == 1


def test_a_long_time_is_taken_when_the_grower_says_so(hands: Callable[..., Hands], clock: Clock) -> None:
    someone = hands(running(clock.moment - timedelta(hours=5)))
    someone.click("watchRight")
    assert someone.tally.stopwatch == Stopwatch(5 * 3600)


def test_a_stopwatch_of_a_session_is_stopped_when_the_tally_is_written(
    hands: Callable[..., Hands], clock: Clock
) -> None:
    someone = hands()
    someone.type("t93\n")
    clock.moment += timedelta(minutes=12, seconds=40)
    someone.type("e")
    assert someone.tally.of("gold").minutes == 12
    assert "12 min here, 0:40 not given to a crop" in someone.dialog.minutes.where_label.text()
    someone.write()
    assert someone.written[0].stopwatch == Stopwatch(760)


def test_typed_minutes_are_shared_and_the_rest_is_shown(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\n")
    someone.key(Qt.Key.Key_F3)
    someone.type("12\n")
    someone.dialog.minutes.session_field.line.setFocus()
    someone.type("9\n")
    someone.type("e")
    assert [someone.tally.of(c).minutes for c in ("gold", "light")] == [4, 4]
    assert someone.dialog.minutes.here_field.value() == 4
    assert "4 min Boxroom Gold, 4 min here, 1 min not given to a crop" in someone.dialog.minutes.where_label.text()


def test_minutes_that_no_day_has_are_refused_at_their_field(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("93\ni9999\n")
    assert someone.dialog.minutes.here_field.is_refused
    someone.write()
    assert someone.written == []
    assert "Look at the field that is marked." in someone.said
    someone.key(Qt.Key.Key_F3)
    assert someone.tally.chosen == "gold"


def test_a_day_on_which_nothing_grew_says_so_and_keeps_the_tally(hands: Callable[..., Hands]) -> None:
    rows = three_crops()
    someone = hands(crops=rows)
    someone.type("93\n")
    rows[:] = [replace(rows[0], cannot="This is before day 0 of Boxroom Gold.")]
    someone.dialog.day_field.set_value(DAY - timedelta(days=100))
    someone.dialog.day_field.value_changed.emit()
    assert someone.questions == ["This is before day 0 of Boxroom Gold."]
    assert someone.tally.of("gold").fruit == (93.0,)
    rows.clear()
    someone.dialog.model.take(empty_tally())
    assert someone.dialog.empty_label.isVisible()


def test_a_clock_put_back_is_said_and_its_time_not_taken(hands: Callable[..., Hands]) -> None:
    someone = hands(running(datetime(2026, 1, 18, 9, 0, tzinfo=UTC)))
    assert "was the clock changed" in someone.questions[0]
    someone.click("watchLeftOn")
    assert someone.tally.stopwatch == Stopwatch()


def test_the_question_of_the_stopwatch_is_answered_by_keys_too(hands: Callable[..., Hands], clock: Clock) -> None:
    someone = hands(running(clock.moment - timedelta(hours=13)))
    someone.type("t")
    assert someone.focus.objectName() == "watchLeftOn"
    someone.key(Qt.Key.Key_Return)
    assert someone.tally.stopwatch == Stopwatch()


def test_with_no_crop_growing_keys_tally_nothing(hands: Callable[..., Hands]) -> None:
    someone = hands(crops=[])
    assert someone.dialog.empty_label.isVisible()
    someone.dialog.keyPressEvent(QKeyEvent(QEvent.Type.KeyPress, Qt.Key.Key_W, Qt.KeyboardModifier.NoModifier, "w"))
    someone.dialog.model.count_unweighed()
    someone.dialog.model.type_weight("86")
    assert not someone.dialog.model.enter_weight()
    assert someone.tally.crops == ()
    assert "No crop grows on this day" in someone.said


def test_a_tally_taken_up_the_day_after_gets_no_time_of_the_wrong_day(hands: Callable[..., Hands]) -> None:
    someone = hands(empty_tally(day=DAY - timedelta(days=1)))
    someone.type("p")
    assert someone.tally.of("gold").females_pollinated == 1
    assert someone.tally.of("gold").pollinated_at is None


def test_what_is_pollinated_after_midnight_gets_no_time_of_the_day_before(
    hands: Callable[..., Hands], clock: Clock
) -> None:
    clock.moment = datetime(2026, 1, 18, 23, 50, tzinfo=UTC)
    someone = hands()
    clock.moment += timedelta(minutes=20)
    someone.type("p")
    assert (someone.tally.of("gold").females_pollinated, someone.tally.of("gold").pollinated_at) == (1, None)


def test_a_letter_refused_within_a_weight_is_said_until_the_weight_is_entered(hands: Callable[..., Hands]) -> None:
    someone = hands()
    someone.type("8x6")
    assert "X was not taken: 86 stands in the weight field." in someone.said
    someone.type("\n93")
    assert "was not taken" not in someone.said


def test_a_whole_weight_stands_on_its_chip_without_decimals_in_any_locale() -> None:
    before = QLocale()
    try:
        for name in ("en_GB", "de_DE"):
            QLocale.setDefault(QLocale(name))
            assert weight_text(93.0) == "93\u2009g"
        assert weight_text(86.5) == "86,5\u2009g"
    finally:
        QLocale.setDefault(before)
