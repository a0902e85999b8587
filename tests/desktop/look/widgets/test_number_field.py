"""A field for a number, refused or asked about while it is typed."""

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.look.widgets.number_field import NumberField, limited_number_field
from growlog.records.limits import limit


@pytest.fixture
def field(qtbot: QtBot) -> NumberField:
    """A tank of 10 to 200 L."""
    field = NumberField("Tank", "L", 10, 200, decimals=1, name="tank")
    qtbot.addWidget(field)
    return field


def test_a_typed_number_is_the_value_and_is_told(field: NumberField, qtbot: QtBot) -> None:
    with qtbot.waitSignal(field.value_changed):
        qtbot.keyClicks(field.line, "20,5")
    assert field.value() == 20.5
    assert not field.is_refused


def test_an_empty_field_has_no_value_and_is_fit_unless_one_is_needed(field: NumberField) -> None:
    assert field.value() is None
    assert field.check()
    field.required = True
    assert not field.check()
    assert field.refusal == "A number is needed here."


def test_a_number_too_high_is_refused_while_it_is_typed(field: NumberField, qtbot: QtBot) -> None:
    qtbot.keyClicks(field.line, "2000")
    assert field.refusal == "At most 200\u2009L."
    assert field.value() is None
    assert field.line.property("state") == "problem"


def test_a_number_too_low_is_refused_only_when_typing_has_ended(field: NumberField, qtbot: QtBot) -> None:
    qtbot.keyClicks(field.line, "5")
    assert not field.is_refused
    field.line.editingFinished.emit()
    assert field.refusal == "At least 10\u2009L."
    qtbot.keyClicks(field.line, "0")
    assert not field.is_refused
    assert field.value() == 50


def test_words_are_refused_at_once(field: NumberField, qtbot: QtBot) -> None:
    qtbot.keyClicks(field.line, "x")
    assert field.refusal == "Write a number, for example 1.5."
    assert field.message_label.text() == field.refusal


def test_a_sign_for_thousands_is_not_taken_for_a_decimal_sign(qtbot: QtBot) -> None:
    weight = NumberField("Weight", "g", 0, 5000, decimals=1)
    qtbot.addWidget(weight)
    qtbot.keyClicks(weight.line, "1,250")
    assert weight.value() is None
    assert weight.refusal == "At most 1 decimal place."


def test_a_count_is_an_int_and_takes_no_decimals(qtbot: QtBot) -> None:
    count = NumberField("Fruit", maximum=99)
    qtbot.addWidget(count)
    qtbot.keyClicks(count.line, "12")
    assert count.value() == 12
    assert isinstance(count.value(), int)
    qtbot.keyClicks(count.line, ".5")
    assert count.value() is None


def test_setting_a_value_shows_it_without_telling(field: NumberField, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(field.value_changed):
        field.set_value(20)
    assert field.line.text() == "20.0"
    assert field.value() == 20


def test_the_decimal_sign_shown_is_that_of_the_locale(german: None, field: NumberField) -> None:
    field.set_value(20.5)
    assert field.line.text() == "20,5"
    assert field.value() == 20.5


def test_a_message_goes_when_the_number_is_mended(field: NumberField, qtbot: QtBot) -> None:
    field.set_value(900)
    assert field.is_refused
    field.set_value(20)
    assert not field.is_refused
    assert field.message_label.isHidden()
    assert field.line.property("state") == ""


def test_a_field_for_a_limited_quantity_has_its_unit_and_its_range(qtbot: QtBot) -> None:
    bound = limit("ec_ms_per_cm")
    field = limited_number_field("ec_ms_per_cm")
    qtbot.addWidget(field)
    assert field.unit_label.text() == bound.unit
    field.set_value(bound.highest + 1)
    assert field.is_refused
    assert bound.ask_above is not None
    field.set_value(bound.ask_above + 0.5)
    assert field.question != ""
    assert field.value() == bound.ask_above + 0.5


def test_a_screen_reader_hears_label_unit_and_what_is_wrong(field: NumberField) -> None:
    assert field.line.accessibleName() == "Tank L"
    field.set_value(900)
    assert field.line.accessibleDescription() == "At most 200\u2009L."
    assert field.objectName() == "tank"


def test_clearing_takes_value_and_message_away(field: NumberField) -> None:
    field.set_value(900)
    field.clear()
    assert field.is_empty()
    assert not field.is_refused


def test_another_range_judges_anew(field: NumberField) -> None:
    field.set_value(150)
    field.set_range(10, 100)
    assert field.is_refused
