"""The equations of FAO Irrigation and Drainage Paper 56 against a library of them and its worked examples."""

import numpy as np
import pytest
from refet import calcs

from growlog.calculations.climate import saturation_vapour_pressure, vapour_pressure_deficit
from growlog.calculations.climate_day import deficits, dew_points, saturation_pressures
from growlog.calculations.moist_air import dew_point, mean_saturation_vapour_pressure, vapour_pressure

AIR = np.arange(-5.0, 45.5, 0.5)


def test_vapour_pressure_is_that_of_the_library_at_every_half_degree() -> None:
    # refet, the standardised reference evapotranspiration equations; 0.1 % is asked for.
    ours = [saturation_vapour_pressure(float(t)) for t in AIR]
    assert ours == pytest.approx(calcs.sat_vapor_pressure(AIR), rel=1e-3)


def test_the_deficit_is_that_of_the_library() -> None:
    for humidity in (20.0, 55.0, 90.0):
        actual = [vapour_pressure(float(t), humidity) for t in AIR]
        outside = calcs.vpd(calcs.sat_vapor_pressure(AIR), np.array(actual))
        assert [vapour_pressure_deficit(float(t), humidity) for t in AIR] == pytest.approx(outside, rel=1e-3)


def test_worked_examples_of_the_paper_are_met() -> None:
    # Paper 56, example 3: 24.5 and 15 °C give a mean of 2.39 kPa; example 5: 25 and 18 °C at 54 to 82 % give 1.70 kPa
    # (from memory); example 20: a dew point of 14.8 °C is 1.68 kPa.
    assert mean_saturation_vapour_pressure(24.5, 15) == pytest.approx(2.39, abs=0.005)
    actual = (vapour_pressure(18, 82) + vapour_pressure(25, 54)) / 2
    assert actual == pytest.approx(1.70, abs=0.005)
    assert saturation_vapour_pressure(14.8) == pytest.approx(1.68, abs=0.005)


def test_the_paper_s_example_with_less_known_of_the_humidity_is_met() -> None:
    # Paper 56, example 5, as quoted: of the same day the mean humidity of 68 % alone gives 1.78 kPa, the highest of
    # 82 % with the lowest temperature alone 1.69 kPa.
    assert mean_saturation_vapour_pressure(25, 18) * 0.68 == pytest.approx(1.78, abs=0.005)
    assert vapour_pressure(18, 82) == pytest.approx(1.69, abs=0.005)


def test_many_samples_at_once_give_what_single_ones_give() -> None:
    humidity = np.linspace(5, 100, len(AIR))
    pairs = list(zip(AIR.tolist(), humidity.tolist(), strict=True))
    assert saturation_pressures(AIR) == pytest.approx([saturation_vapour_pressure(t) for t, _ in pairs])
    assert deficits(AIR, humidity) == pytest.approx([vapour_pressure_deficit(t, h) for t, h in pairs])
    assert dew_points(AIR, humidity) == pytest.approx([dew_point(t, h) for t, h in pairs])


def test_air_without_water_has_no_dew_point_among_many() -> None:
    assert np.isnan(dew_points(np.array([20.0]), np.array([0.0]))).all()
