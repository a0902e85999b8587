"""The form: what is typed becomes the entry; what is wrong is said, what is unusual is asked."""

from collections.abc import Callable
from dataclasses import fields
from datetime import date, time

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox
from pytestqt.qtbot import QtBot

from growlog.desktop.entry_form.kind_fields import KIND_FORMS
from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import (
    KINDS,
    Calibration,
    Detail,
    Feed,
    FlowerFate,
    FruitCheck,
    LightChange,
    MeterReading,
    Pollination,
    PollinationWay,
    PottingOn,
    ProblemSeen,
    ProblemSort,
    Reading,
    StageSeen,
    TagSeen,
    TankCare,
    TankDose,
    TankWork,
    Training,
    Treatment,
)
from growlog.records.problems import Problem
from tests.desktop.entry_form.conftest import ROOM, Hands

MakeHands = Callable[..., Hands]

FILLED: list[Detail] = [
    Feed("mix-2", None, 2.8, 1.88, 5.9, 0.6, 2.24, 6.1),
    Reading(24.6, 58, 21.0, 64.5, 12300, 410),
    Reading(canopy_lux=26000, lamp_kind="hps"),
    Training(2, 1, 3, 1, 2),
    Pollination(2, 9, None, PollinationWay.BRUSH, ("11", "12")),
    FruitCheck(3, 2, 0, 1, 4, (TagSeen("12", FlowerFate.DROPPED), TagSeen("11", FlowerFate.SET))),
    StageSeen(("19", "61")),
    ProblemSeen(ProblemSort.DISEASE, "white powder on old leaves", 2),
    Treatment("soap", "whitefly", "10 mL/L", 12, 3),
    LightChange(14.5, time(6, 0), 80, 420),
    PottingOn(11.0, "coir"),
    Calibration("pH", 7.0, 7.12),
    TankCare(TankWork.TOP_UP, 12.0, 6.5, 1.0, 2.1, 1.8, 6.4, 5.9),
    MeterReading(10432.5, starts_anew=True),
]
# Filled in elsewhere: by the mixer and the care of tanks.
KEPT_UNASKED = {
    "feed": {"strength_percent"},
    "tank-care": {"mix_id", "doses"},
}


@pytest.mark.parametrize("kind", list(KINDS))
def test_the_table_asks_for_every_field_of_a_kind(kind: str):
    asked = {spec.name for spec in KIND_FORMS[kind].fields}
    assert asked | KEPT_UNASKED.get(kind, set()) == {f.name for f in fields(KINDS[kind])}


@pytest.mark.parametrize("detail", [
    Feed("mix-2", 75.0, 2.8),
    TankCare(TankWork.PH, ph_after=5.8, mix_id="mix-2", doses=(TankDose("acid", 3.0),)),
], ids=lambda d: d.kind)  # fmt: skip
def test_what_the_form_does_not_ask_for_stays_when_an_entry_is_corrected(hands: MakeHands, detail: Detail):
    hand = hands(detail.kind, detail)
    hand.type("labour_minutes", "6")
    written = hand.write()
    assert written is not None
    assert (written.labour_minutes, written.detail) == (6, detail)


@pytest.mark.parametrize("detail", FILLED, ids=lambda d: d.kind)
def test_an_entry_that_is_only_looked_at_comes_back_as_it_was(hands: MakeHands, detail: Detail):
    hand = hands(detail.kind, detail)
    written = hand.write()
    assert written is not None
    assert written == hand.form.entry


@pytest.mark.parametrize("units", ["metric", "us"])
def test_a_finer_value_than_is_shown_is_not_rounded_by_looking_at_it(hands: MakeHands, units: str):
    hand = hands("reading", Reading(24.6543, container_weight_g=12301), units=units)
    written = hand.write()
    assert written is not None
    assert written.detail == Reading(24.6543, container_weight_g=12301)


def test_typed_numbers_become_a_feed(hands: MakeHands):
    hand = hands("feed")
    mix = hand.line("mix_id")
    assert isinstance(mix, QComboBox)
    mix.setCurrentIndex(1)
    assert "A 3\u2009mL/L" in mix.currentText()
    for name, text in (("volume_l", "2,8"), ("ec_ms_per_cm", "1.88"), ("labour_minutes", "4"), ("at", "805")):
        hand.type(name, text)
    written = hand.write()
    assert written is not None
    assert written.detail == Feed("mix-2", None, 2.8, 1.88)
    assert (written.at, written.labour_minutes) == (time(8, 5), 4)


def test_an_earlier_version_of_a_mix_is_kept_when_a_feed_is_corrected(hands: MakeHands):
    hand = hands("feed", Feed("mix-1", 60.0, 2.0))
    hand.type("volume_l", "2.5")
    written = hand.write()
    assert written is not None
    assert written.detail == Feed("mix-1", 60.0, 2.5)


def test_nothing_is_refused_before_something_was_typed(hands: MakeHands):
    hand = hands("training")
    assert all(not hand.says(cell.name) for cell in hand.form.cells())


def test_writing_an_empty_form_says_what_is_missing_and_writes_nothing(hands: MakeHands):
    hand = hands("training")
    assert hand.write() is None
    assert "at least one field" in hand.says("old_leaves_removed")


def test_a_value_beyond_the_limits_is_refused_while_it_is_typed(hands: MakeHands):
    hand = hands("feed")
    hand.type("ph", "15")
    assert "outside 0 to 14" in hand.says("ph")
    assert hand.write() is None
    hand.type("ph", "5.9")
    assert hand.says("ph") == ""
    assert hand.write() is not None


def test_letters_where_a_number_belongs_are_refused(hands: MakeHands):
    hand = hands("reading")
    hand.type("air_temperature_c", "warm")
    assert "Write a number" in hand.says("air_temperature_c")
    assert hand.form.value() is None


def test_an_unusual_value_is_written_only_after_the_answer(hands: MakeHands):
    hand = hands("feed")
    hand.type("ec_ms_per_cm", "8")
    assert "unusual" in hand.says("ec_ms_per_cm")
    assert hand.write() is None
    hand.answer("ec_ms_per_cm")
    written = hand.write()
    assert written is not None
    assert written.detail == Feed(ec_ms_per_cm=8.0)


def test_another_unusual_value_wants_another_answer(hands: MakeHands):
    hand = hands("feed")
    hand.type("ec_ms_per_cm", "8")
    hand.answer("ec_ms_per_cm")
    hand.type("ec_ms_per_cm", "9")
    assert hand.write() is None


def test_every_question_wants_its_own_answer(hands: MakeHands):
    hand = hands("feed", Feed(volume_l=2.0, ec_ms_per_cm=8.0, drain_l=3.0))
    hand.answer("ec_ms_per_cm")
    assert hand.write() is None
    hand.answer("drain_l")
    assert hand.write() is not None


def test_an_answer_stands_while_another_field_is_half_typed(hands: MakeHands):
    hand = hands("feed")
    hand.type("ec_ms_per_cm", "8")
    hand.answer("ec_ms_per_cm")
    hand.type("at", "08:")
    assert hand.says("at") == ""
    hand.type("at", "08:05")
    assert hand.write() is not None


def test_a_question_of_the_crop_stands_below_its_field(hands: MakeHands):
    def check(entry: object) -> list[Problem]:
        return [Problem("day", "The label asks for no pick before 20 January.", asks=True)]

    hand = hands("training", Training(1), check=check)
    assert "no pick before" in hand.says("day")
    hand.answer("day")
    assert hand.write() is not None


def test_a_sentence_about_no_field_of_the_form_is_shown_below_all(hands: MakeHands):
    def check(entry: object) -> list[Problem]:
        return [Problem("elsewhere", "The room has no lamps.")]

    hand = hands("training", Training(1), check=check)
    assert hand.form.rest_label.text() == "The room has no lamps."
    assert not hand.form.rest_label.isHidden()
    assert hand.write() is None


def test_the_day_and_whose_it_is_can_be_changed(hands: MakeHands):
    hand = hands("reading", Reading(24.0))
    hand.type("day", "2026-01-17")
    whose = hand.line("owner")
    assert isinstance(whose, QComboBox)
    whose.setCurrentIndex(whose.findText("Box room"))
    written = hand.write()
    assert written is not None
    assert (written.day, written.owner) == (date(2026, 1, 17), ROOM)


def test_ctrl_enter_writes(hands: MakeHands, qtbot: QtBot):
    hand = hands("training", Training(1))
    with qtbot.waitActive(hand.form):
        hand.form.show()
    qtbot.keyClick(hand.line("old_leaves_removed"), Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert [entry.detail for entry in hand.written] == [Training(1)]


def test_gallons_are_kept_as_litres(hands: MakeHands):
    hand = hands("feed", units="us")
    assert hand.form.cell("volume_l").field.unit_label.text() == "US gal"
    hand.type("volume_l", "1")
    written = hand.write()
    assert written is not None
    assert isinstance(written.detail, Feed)
    assert written.detail.volume_l == pytest.approx(3.7854, abs=1e-4)  # NIST SP 811, B.8


def test_degrees_fahrenheit_are_kept_as_degrees_celsius(hands: MakeHands):
    hand = hands("reading", units="us")
    hand.type("air_temperature_c", "77")
    written = hand.write()
    assert written is not None
    assert written.detail == Reading(25.0)


def test_ounces_of_a_container_are_kept_as_grams(hands: MakeHands):
    hand = hands("reading", units="us")
    hand.type("container_weight_g", "100.5")
    written = hand.write()
    assert written is not None
    assert written.detail == Reading(container_weight_g=2849.13)  # NIST SP 811, B.8: 100.5 x 28.349 52 g


def test_severity_is_three_words(hands: MakeHands):
    hand = hands("problem")
    hand.type("name", "yellow between the veins")
    field = hand.form.cell("severity").field
    field.button("3").click()  # type: ignore[attr-defined]
    assert field.button("3").text() == "severe"  # type: ignore[attr-defined]
    written = hand.write()
    assert written is not None
    assert written.detail == ProblemSeen(ProblemSort.DISORDER, "yellow between the veins", 3)


def test_perfect_flowers_are_asked_for_trusses_first_and_still_for_females(hands: MakeHands):
    names = [cell.name for cell in hands("pollination", habit=FloweringHabit.PERFECT).form.cells()]
    assert names.index("trusses_vibrated") < names.index("females_pollinated")
    names = [cell.name for cell in hands("pollination", habit=FloweringHabit.SEPARATE).form.cells()]
    assert names.index("females_pollinated") < names.index("trusses_vibrated")


@pytest.mark.parametrize(
    "kind, words", [("treatment", "product's label"), ("light", "licensed electrician"), ("tank-care", "gloves")]
)
def test_work_that_can_hurt_has_its_caution(kind: str, words: str):
    assert words in KIND_FORMS[kind].caution


def test_a_note_without_words_is_refused(hands: MakeHands):
    hand = hands("note")
    assert hand.write() is None
    assert "Write what there is" in hand.says("note")
    hand.type("note", "first female bud")
    written = hand.write()
    assert written is not None
    assert written.note == "first female bud"


def test_a_stored_value_finer_than_the_field_is_shown_as_it_is(hands: MakeHands):
    hand = hands("reading", Reading(24.0, 0.58))
    assert hand.line("relative_humidity_percent").text() == "0.58"  # type: ignore[attr-defined]
    assert "Humidity is in per cent" in hand.says("relative_humidity_percent")


def test_a_long_sentence_has_room_below_its_field(hands: MakeHands, qtbot: QtBot):
    hand = hands("reading", Reading(24.0, 0.58, 75.0))
    hand.form.resize(590, 600)
    with qtbot.waitExposed(hand.form):
        hand.form.show()
    label = hand.form.cell("relative_humidity_percent").field.message_label
    assert label.height() >= label.heightForWidth(label.width())
