"""Readings of meters: lux or foot-candles with the factor of the lamp, and a humidity that is asked about."""

from collections.abc import Callable
from typing import cast

import pytest

from growlog.desktop.entry_form.light_meter_fields import LampKindField, LuxField, estimate_words
from growlog.records.entry import Reading
from tests.desktop.entry_form.conftest import Hands
from tests.desktop.hands import choose, retype

MakeHands = Callable[..., Hands]


def fields(hand: Hands) -> tuple[LuxField, LampKindField]:
    lux, lamp = (hand.form.cell(name).field for name in ("canopy_lux", "lamp_kind"))
    return cast(LuxField, lux), cast(LampKindField, lamp)


def plain(text: str) -> str:
    return text.replace("\u2009", " ")


def test_lux_under_a_known_lamp_says_the_light_with_its_range(hands: MakeHands) -> None:
    hand = hands("reading")
    lux, lamp = fields(hand)
    retype(lux, "41000")
    assert "Choose the kind of lamp" in lamp.words_label.text()
    choose(lamp.kind_field, "hps")
    # 82 lux per µmol/m²/s for high-pressure sodium, Thimijan and Heins (1983): 41 000 lux are 500
    assert plain(lamp.words_label.text()).startswith("About 500 µmol/m²/s, 491 to 501 (Thimijan")
    written = hand.write()
    assert written is not None
    assert written.detail == Reading(canopy_lux=41000, lamp_kind="hps")


def test_foot_candles_are_kept_as_lux(hands: MakeHands) -> None:
    hand = hands("reading")
    lux, lamp = fields(hand)
    lux.set_unit_key("foot-candles")
    retype(lux, "1000")
    choose(lamp.kind_field, "sunlight")
    written = hand.write()
    assert written is not None
    assert isinstance(written.detail, Reading)
    assert written.detail.canopy_lux == pytest.approx(10763.9, abs=0.1)  # 1 foot-candle is 10.76391 lux (NIST SP 811)


def test_what_is_kept_in_lux_is_shown_in_the_other_unit_and_not_changed_by_looking(hands: MakeHands) -> None:
    hand = hands("reading", Reading(canopy_lux=26000, lamp_kind="hps"))
    lux, _ = fields(hand)
    lux.set_unit_key("foot-candles")
    assert lux.line.text() == "2415"
    written = hand.write()
    assert written is not None
    assert written.detail == Reading(canopy_lux=26000, lamp_kind="hps")


def test_white_leds_ask_for_the_growers_own_factor(hands: MakeHands) -> None:
    hand = hands("reading")
    lux, lamp = fields(hand)
    retype(lux, "34000")
    choose(lamp.kind_field, "white-led")
    assert "No published factor fits these lamps" in lamp.words_label.text()
    retype(lamp.factor_field, "68")
    assert plain(lamp.words_label.text()) == "About 500 µmol/m²/s, by your own factor."
    written = hand.write()
    assert written is not None
    assert written.detail == Reading(canopy_lux=34000, lamp_kind="white-led:68")


def test_a_factor_that_no_lamp_has_is_refused(hands: MakeHands) -> None:
    hand = hands("reading")
    lux, lamp = fields(hand)
    retype(lux, "34000")
    choose(lamp.kind_field, "white-led")
    retype(lamp.factor_field, "3")
    assert hand.write() is None
    assert "At least 10" in hand.says("lamp_kind")


def test_a_kind_that_is_not_in_the_table_stays(hands: MakeHands) -> None:
    hand = hands("reading", Reading(canopy_lux=26000, lamp_kind="plasma"))
    written = hand.write()
    assert written is not None
    assert written.detail == Reading(canopy_lux=26000, lamp_kind="plasma")


def test_in_us_units_the_meter_reads_foot_candles_at_first(hands: MakeHands) -> None:
    lux, _ = fields(hand := hands("reading", units="us"))
    assert lux.unit_box.currentData() == "foot-candles"
    assert hand.form.is_fit is False


def test_a_reading_in_the_dark_says_nothing() -> None:
    assert estimate_words(0, "hps") == ""


def test_a_humidity_of_0_6_is_asked_about_and_not_guessed(hands: MakeHands) -> None:
    hand = hands("reading")
    hand.type("relative_humidity_percent", "0.6")
    assert hand.write() is None
    assert "Humidity is in per cent, so this is nearly no water at all." in hand.says("relative_humidity_percent")
    hand.answer("relative_humidity_percent")
    written = hand.write()
    assert written is not None
    assert written.detail == Reading(relative_humidity_percent=0.6)
