"""The air: vapour pressure and its deficit against the tables of FAO Irrigation and Drainage Paper 56 and ASHRAE."""

import pytest

from growlog.calculations.climate import saturation_vapour_pressure, vapour_pressure_deficit
from tests.reference import published

ROWS = published("vapour_pressure")
PRINTED = [r for r in ROWS if r["es_kpa_printed_table_2_3"] and not r["printed_status"].startswith("from memory")]
FROM_MEMORY = [r for r in ROWS if r["printed_status"] == "from memory"]


@pytest.mark.parametrize("row", PRINTED, ids=lambda row: row["id"])
def test_vapour_pressure_is_that_of_the_printed_table(row: dict[str, str]) -> None:
    # FAO Irrigation and Drainage Paper 56 (1998), annex 2, table 2.3, as quoted.
    pressure = saturation_vapour_pressure(float(row["temp_c"]))
    assert pressure == pytest.approx(float(row["es_kpa_printed_table_2_3"]), rel=1e-3)


@pytest.mark.parametrize("row", FROM_MEMORY, ids=lambda row: row["id"])
def test_vapour_pressure_is_that_of_the_table_as_remembered(row: dict[str, str]) -> None:
    # The same table; these rows are from memory.
    pressure = saturation_vapour_pressure(float(row["temp_c"]))
    assert pressure == pytest.approx(float(row["es_kpa_printed_table_2_3"]), rel=1e-3)


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row["id"])
def test_vapour_pressure_follows_the_equation_to_its_last_digit(row: dict[str, str]) -> None:
    # FAO Irrigation and Drainage Paper 56 (1998), equation 11, computed to four decimals.
    pressure = saturation_vapour_pressure(float(row["temp_c"]))
    assert pressure == pytest.approx(float(row["es_kpa_fao56_eq11"]), abs=6e-5)


def test_a_second_handbook_agrees_within_two_tenths_of_a_per_cent() -> None:
    # ASHRAE Handbook Fundamentals 2017, chapter 1, table 3, as quoted.
    for row in (r for r in ROWS if r["es_kpa_ashrae_table_3"]):
        pressure = saturation_vapour_pressure(float(row["temp_c"]))
        assert pressure == pytest.approx(float(row["es_kpa_ashrae_table_3"]), rel=2e-3)


@pytest.mark.parametrize(
    ("air_c", "humidity", "deficit_kpa"),
    [(25, 60, 1.267), (28, 70, 1.134), (18, 85, 0.310), (30, 40, 2.546), (15, 90, 0.171), (24, 55, 1.343)],
)
def test_the_deficit_of_the_air_is_what_the_equations_give(air_c: float, humidity: float, deficit_kpa: float) -> None:
    # Computed by hand from FAO Irrigation and Drainage Paper 56 (1998), equations 11 and 10, to three decimals.
    assert vapour_pressure_deficit(air_c, humidity) == pytest.approx(deficit_kpa, abs=6e-4)


def test_a_published_pair_of_days_gives_its_mean_vapour_pressure() -> None:
    # FAO Irrigation and Drainage Paper 56 (1998), example 3: highest 24.5 °C, lowest 15 °C, mean 2.39 kPa.
    mean = (saturation_vapour_pressure(24.5) + saturation_vapour_pressure(15)) / 2
    assert mean == pytest.approx(2.39, rel=1e-3)


def test_air_full_of_water_has_no_deficit_and_dry_air_has_all_of_it() -> None:
    assert vapour_pressure_deficit(25, 100) == 0
    assert vapour_pressure_deficit(25, 0) == saturation_vapour_pressure(25)


@pytest.mark.parametrize(("air_c", "humidity"), [(-31, 50), (61, 50), (25, -1), (25, 101), (25, float("nan"))])
def test_air_that_cannot_be_is_refused(air_c: float, humidity: float) -> None:
    with pytest.raises(ValueError, match="outside"):
        vapour_pressure_deficit(air_c, humidity)
