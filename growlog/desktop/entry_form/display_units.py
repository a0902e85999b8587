"""How a kept quantity is shown and typed: metric as it is, or in the units used in the United States."""

from collections.abc import Callable
from dataclasses import dataclass

from growlog.calculations import units
from growlog.records.limits import limit

METRIC, US = "metric", "us"


@dataclass(frozen=True)
class DisplayUnit:
    """unit: as shown. decimals: as typed. shown: kept value to typed value; kept: the way back."""

    unit: str
    decimals: int
    shown: Callable[[float], float]
    kept: Callable[[float], float]


_US_UNITS: dict[str, tuple[str, int, Callable[[float], float], Callable[[float], float]]] = {
    "L": ("US gal", 1, units.us_gallons_from_litres, units.litres_from_us_gallons),
    "g": ("oz", 1, units.ounces_from_grams, units.grams_from_ounces),
    "°C": ("°F", 0, units.fahrenheit_from_celsius, units.celsius_from_fahrenheit),
    "cm": ("in", 0, units.inches_from_centimetres, units.centimetres_from_inches),
}


def display_unit(key: str, system: str = METRIC) -> DisplayUnit:
    """The unit in which the quantity of a field is typed; system: metric or us."""
    bound = limit(key)
    if system != US or bound.unit not in _US_UNITS:
        return DisplayUnit(bound.unit, bound.decimals, _same, _same)
    unit, more_decimals, shown, kept = _US_UNITS[bound.unit]
    places = 0 if bound.whole else bound.decimals + 2

    def rounded(value: float) -> float:
        return round(kept(value), places)

    return DisplayUnit(unit, bound.decimals + more_decimals, shown, rounded)


def _same(value: float) -> float:
    return value
