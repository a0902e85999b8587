"""Units against NIST Special Publication 811 (2008), appendix B.8."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations import units


def test_a_us_gallon_is_the_litres_of_the_published_table():
    # NIST SP 811, B.8: gallon (US) to litre, 3.785 412 E+00; exactly 231 cubic inches
    assert units.litres_from_us_gallons(1) == pytest.approx(3.785412, abs=5e-7)
    assert units.litres_from_us_gallons(1) == pytest.approx(231 * units.CM_PER_INCH**3 / 1000, rel=1e-12)


def test_an_ounce_is_the_grams_of_the_published_table():
    # NIST SP 811, B.8: ounce (avoirdupois) to gram, 2.834 952 E+01; sixteen of them are a pound of 453.592 37 g
    assert units.grams_from_ounces(1) == pytest.approx(28.34952, abs=5e-6)
    assert units.grams_from_ounces(16) == pytest.approx(453.59237, rel=1e-12)


def test_an_inch_is_2_54_cm_exactly():
    assert units.centimetres_from_inches(1) == 2.54  # NIST SP 811, B.8


@pytest.mark.parametrize("celsius, fahrenheit", [(0, 32), (100, 212), (-40, -40), (25, 77)])
def test_temperatures_follow_the_published_formula(celsius: float, fahrenheit: float):
    # NIST SP 811, B.8: t/degC = (t/degF - 32)/1.8
    assert units.fahrenheit_from_celsius(celsius) == pytest.approx(fahrenheit)
    assert units.celsius_from_fahrenheit(fahrenheit) == pytest.approx(celsius)


@given(st.floats(-500, 5000))
def test_there_and_back_is_where_it_began(value: float):
    pairs = (
        (units.us_gallons_from_litres, units.litres_from_us_gallons),
        (units.ounces_from_grams, units.grams_from_ounces),
        (units.inches_from_centimetres, units.centimetres_from_inches),
        (units.fahrenheit_from_celsius, units.celsius_from_fahrenheit),
    )
    for there, back in pairs:
        assert back(there(value)) == pytest.approx(value, rel=1e-9, abs=1e-9)
