"""Dew point and deficits against FAO Irrigation and Drainage Paper 56 and an outside library."""

import psychrolib
import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations import moist_air
from growlog.calculations.climate import saturation_vapour_pressure, vapour_pressure_deficit

psychrolib.SetUnitSystem(psychrolib.SI)


@pytest.mark.parametrize(
    ("air", "humidity", "dew_point"),
    [(25, 60, 16.70), (28, 70, 22.01), (18, 85, 15.44), (30, 40, 14.93), (15, 90, 13.37), (24, 55, 14.41)],
)
def test_the_dew_point_is_what_the_equation_gives(air: float, humidity: float, dew_point: float) -> None:
    # Computed by hand from FAO Irrigation and Drainage Paper 56 (1998), equation 11, to two decimals.
    assert moist_air.dew_point(air, humidity) == pytest.approx(dew_point, abs=6e-3)


@pytest.mark.parametrize("air", range(5, 41, 5))
def test_pressure_and_dew_point_are_those_of_the_outside_library(air: int) -> None:
    # PsychroLib 2.5, which follows the ASHRAE Handbook Fundamentals (2017), chapter 1; pressures in Pa.
    assert saturation_vapour_pressure(air) == pytest.approx(psychrolib.GetSatVapPres(air) / 1000, rel=2e-3)
    for humidity in (40, 60, 80, 100):
        outside = psychrolib.GetTDewPointFromRelHum(air, humidity / 100)
        if outside > 0:  # over ice it follows another equation
            assert moist_air.dew_point(air, humidity) == pytest.approx(outside, abs=0.05)


def test_published_examples_come_out() -> None:
    # FAO Irrigation and Drainage Paper 56 (1998), as quoted: example 3, example 5 (mean humidity 68 %), example 20.
    mean = moist_air.mean_saturation_vapour_pressure(24.5, 15)
    assert mean == pytest.approx(2.39, abs=5e-3)
    # The mean of the pressures, not the pressure of the mean temperature.
    assert mean > saturation_vapour_pressure((24.5 + 15) / 2)
    assert saturation_vapour_pressure(14.8) == pytest.approx(1.68, abs=5e-3)
    # MetPy 1.7, tests, by a newer formula: 25 °C and dew point 15 °C are 53.86 %.
    assert moist_air.relative_humidity(25, 15) == pytest.approx(53.86, abs=0.1)
    # ASHRAE Handbook Fundamentals (2017), chapter 1, table 3, times 0.8.
    assert moist_air.vapour_pressure(25, 80) == pytest.approx(2.5358, rel=2e-3)


def test_a_cooler_leaf_has_a_smaller_deficit() -> None:
    # Computed by hand from equations 10 and 11: air 25 °C, 60 %, leaf 23 °C.
    assert moist_air.leaf_vapour_pressure_deficit(25, 23, 60) == pytest.approx(0.909, abs=6e-4)
    assert moist_air.explain_leaf_vpd(25, 23, 60).key == "vpd-leaf"


def test_water_condenses_on_what_is_colder_than_the_dew_point() -> None:
    assert moist_air.water_condenses(16, 25, 60)
    assert not moist_air.water_condenses(17, 25, 60)


@pytest.mark.parametrize(("air", "humidity"), [(25, 0), (25, 101), (61, 50), (-31, 50), (25, float("nan"))])
def test_air_without_a_dew_point_is_refused(air: float, humidity: float) -> None:
    with pytest.raises(ValueError, match="is outside"):
        moist_air.dew_point(air, humidity)


@given(st.floats(-20, 60), st.floats(1, 100))
def test_dew_point_and_humidity_turn_into_each_other(air: float, humidity: float) -> None:
    dew_point = moist_air.dew_point(air, humidity)
    assert dew_point <= air + 1e-9
    if dew_point > -30:
        assert moist_air.relative_humidity(air, min(dew_point, air)) == pytest.approx(humidity, rel=1e-6)


@given(st.floats(0, 50), st.floats(0, 100))
def test_a_leaf_as_warm_as_the_air_has_the_deficit_of_the_air(air: float, humidity: float) -> None:
    assert moist_air.leaf_vapour_pressure_deficit(air, air, humidity) == pytest.approx(
        vapour_pressure_deficit(air, humidity), abs=1e-9
    )
