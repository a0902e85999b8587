"""Kept quantities as the user reads them: the locale's numbers, and metric units or those of the United States."""

from collections.abc import Callable

from growlog.calculations import units as exact
from growlog.words import show_number, units

THIN = "\u2009"
_US: dict[str, tuple[str, int, Callable[[float], float]]] = {
    "L": ("gal", 1, exact.us_gallons_from_litres),
    "g": ("oz", 0, exact.ounces_from_grams),
    "kg": ("lb", 0, exact.pounds_from_kilograms),
    "cm": ("in", 0, exact.inches_from_centimetres),
    "°C": ("°F", 0, exact.fahrenheit_from_celsius),
    "°C·d": ("°F·d", 0, exact.fahrenheit_days_from_celsius_days),
}


def in_shown_unit(value: float, unit: str) -> tuple[float, str, int]:
    """A metric value in the unit it is shown in, that unit, and how many decimals more it wants."""
    if units() != "us" or unit not in _US:
        return value, unit, 0
    shown_unit, more, convert = _US[unit]
    return convert(value), shown_unit, more


def fixed(value: float, decimals: int, unit: str) -> str:
    """A metric value with as many decimals as it is measured with, and its unit, as the user reads it."""
    shown, shown_unit, more = in_shown_unit(value, unit)
    return _with(show_number(shown, decimals + more), shown_unit)


def plain(value: float, unit: str) -> str:
    """A metric value without needless zeros, and its unit, as the user reads it."""
    shown, shown_unit, _ = in_shown_unit(value, unit)
    decimals = next((d for d in range(3) if abs(shown - round(shown, d)) < 1e-9), 3 if units() != "us" else 1)
    return _with(show_number(shown, decimals), shown_unit)


def weight(grams: float) -> str:
    """A weight in g below 1 kg (a decimal below 100 g where there is one), in kg from there; or in oz and lb."""
    if units() == "us":
        return fixed(grams, 1, "g") if grams < exact.G_PER_POUND else fixed(grams / 1000, 2, "kg")
    if grams >= 999.5:
        return fixed(grams / 1000, 2, "kg")
    return fixed(grams, 0 if grams >= 99.5 or grams == round(grams) else 1, "g")


def _with(number: str, unit: str) -> str:
    return f"{number}{THIN}{unit}" if unit else number
