"""Numbers as people type them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.desktop.look.widgets.number_text import NotANumber, number_text, parse_number, typed_decimals


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("1.5", 1.5),
        ("1,5", 1.5),
        (" 20 ", 20),
        (",5", 0.5),
        ("3.", 3),
        ("-2.5", -2.5),
        ("−2,5", -2.5),
        ("1 250", 1250),
        ("1\u2009250,5", 1250.5),
        ("1.250,5", 1250.5),
        ("1,250.5", 1250.5),
        ("", None),
        ("  ", None),
    ],
)
def test_comma_point_and_blanks_are_understood(text: str, value: float | None) -> None:
    assert parse_number(text) == value


@pytest.mark.parametrize("text", ["a", "1a", "1..5", "--1", ".", "-", "1e3", "nan", "inf", "½", "٣"])
def test_what_is_no_number_is_refused(text: str) -> None:
    with pytest.raises(NotANumber):
        parse_number(text)


@given(st.floats(-1e6, 1e6), st.integers(0, 4))
def test_what_a_field_shows_is_read_back_as_the_same_number(value: float, decimals: int) -> None:
    shown = number_text(value, decimals)
    assert parse_number(shown) == pytest.approx(round(value, decimals), abs=10 ** -(decimals + 3))
    assert typed_decimals(shown) <= decimals


def test_the_decimal_sign_is_that_of_the_locale(german: None) -> None:
    assert number_text(1234.5, 2) == "1234,5"
    assert number_text(20, 1) == "20,0"
    assert number_text(-3, 0) == "\u22123"
    assert number_text(None, 1) == ""
