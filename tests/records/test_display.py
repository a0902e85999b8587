"""Quantities as the user reads them. Factors: NIST Special Publication 811 (2008), appendix B."""

import pytest

from growlog.records.display import fixed, plain, weight
from growlog.records.entry import Feed, Pick, Reading
from growlog.records.problems import check_quantity
from growlog.words import show_number, show_units


@pytest.mark.parametrize(
    ("grams", "shown"),
    [(85, "85\u2009g"), (72.6, "72.6\u2009g"), (171.4, "171\u2009g"), (999.6, "1.00\u2009kg"), (2678, "2.68\u2009kg"),
     (0, "0\u2009g")],
)  # fmt: skip
def test_a_weight_is_shown_in_g_and_from_a_kilogram_in_kg(grams: float, shown: str) -> None:
    assert weight(grams) == shown


@pytest.mark.parametrize(("grams", "shown"), [(85, "3.0\u2009oz"), (453.59237, "1.00\u2009lb"), (2678, "5.90\u2009lb")])
def test_in_us_units_a_weight_is_shown_in_oz_and_from_a_pound_in_lb(grams: float, shown: str) -> None:
    show_units("us")
    assert weight(grams) == shown


def test_us_units_reach_what_an_entry_says() -> None:
    show_units("us")
    assert Feed(volume_l=3.785411784).summary() == "Feed 1.00\u2009gal"
    assert Reading(25.0, 60).summary() == "Air 77.0\u2009°F, 60\u2009% RH"
    assert Reading(plant_height_cm=25.4).summary() == "height 10\u2009in"
    assert Pick(2, None, (28.349523125, 56.69904625)).second_line() == "1.0\u2009oz + 2.0\u2009oz"


def test_degree_days_in_us_units_are_scaled_without_a_shift() -> None:
    show_units("us")
    assert fixed(10.0, 0, "°C·d") == "18\u2009°F·d"


def test_us_units_reach_what_a_refusal_says() -> None:
    show_units("us")
    (problem,) = check_quantity("air_temperature_c", 100.0)
    assert "212\u2009°F" in problem.sentence
    assert "\u221222 to 140\u2009°F" in problem.sentence


def test_a_plain_number_has_no_needless_zeros() -> None:
    assert plain(15.0, "") == "15"
    assert plain(0.15, "g/L") == "0.15\u2009g/L"
    assert fixed(1.8, 2, "mS/cm") == "1.80\u2009mS/cm"


def test_units_are_metric_or_us() -> None:
    with pytest.raises(ValueError, match="neither"):
        show_units("imperial")


def test_a_number_below_zero_has_a_minus_sign_and_nothing_is_never_below_zero() -> None:
    assert show_number(-2.04, 1) == "\u22122.0"
    assert show_number(-0.004, 2) == "0.00"
