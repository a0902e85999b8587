"""Headings of loggers in several languages and units."""

import pytest

from growlog.sharing.logger_csv.headings import LoggerColumn, heading_of

COLUMN = LoggerColumn


@pytest.mark.parametrize(
    ("cell", "column", "unit"),
    [
        ("Temperature (°C)", COLUMN.TEMPERATURE, "C"),
        ("Temperature [°F]", COLUMN.TEMPERATURE, "F"),
        ("temp_f", COLUMN.TEMPERATURE, "F"),
        ("air_temperature_c", COLUMN.TEMPERATURE, "C"),
        ("Temperature", COLUMN.TEMPERATURE, ""),
        ("Ch1 Temperature °C", COLUMN.TEMPERATURE, "C"),
        ("Temperature (K)", COLUMN.TEMPERATURE, "K"),
        ("Lufttemperatur in °C", COLUMN.TEMPERATURE, "C"),
        ("Température (°C)", COLUMN.TEMPERATURE, "C"),
        ("RH (%)", COLUMN.HUMIDITY, "percent"),
        ("relative_humidity", COLUMN.HUMIDITY, ""),
        ("Humidity (0-1)", COLUMN.HUMIDITY, "fraction"),
        ("Rel. Feuchte [%rF]", COLUMN.HUMIDITY, "percent"),
        ("Umidità relativa [%]", COLUMN.HUMIDITY, "percent"),
        ("HR%", COLUMN.HUMIDITY, "percent"),
        ("Date/Time", COLUMN.STAMP, ""),
        ("Datum", COLUMN.DAY, ""),
        ("Uhrzeit", COLUMN.TIME, ""),
    ],
)
def test_headings_mean_what_they_say(cell: str, column: LoggerColumn, unit: str) -> None:
    found = heading_of(cell)
    assert found is not None
    assert (found.column, found.unit) == (column, unit)


@pytest.mark.parametrize("cell", ["Dew point (°C)", "Taupunkt", "Absolute humidity (g/m³)", "Battery", "Soil temp", ""])
def test_other_quantities_are_not_taken_for_the_air(cell: str) -> None:
    assert heading_of(cell) is None


@pytest.mark.parametrize(
    ("cell", "ahead"), [("Timestamp (UTC)", 0), ("Time (GMT+01:00)", 3600), ("utc", 0), ("Time", None)]
)
def test_a_heading_may_say_how_far_it_is_from_utc(cell: str, ahead: int | None) -> None:
    found = heading_of(cell)
    assert found is not None
    assert found.offset_s == ahead
