"""Amounts of yield in sentences: whole fruit, or their weight in the units shown."""

from growlog.calculations.pick_intervals import Measure
from growlog.calculations.units import ounces_from_grams, pounds_from_kilograms
from growlog.words import say, show_number, units

GRAMS_UP_TO = 999.5


def amount_band(low: float, high: float, measure: Measure) -> str:
    """A band in words, such as 6 to 10 fruit. low, high: fruit or g."""
    unit, decimals = say("fruit"), 0
    if measure is Measure.GRAMS:
        low, high, unit, decimals = _weights(low, high)
    first, second = show_number(low, decimals), show_number(high, decimals)
    if first == second:
        return f"{first}\u2009{unit}"
    return say("{low} to {high}", low=first, high=f"{second}\u2009{unit}")


def _weights(low_g: float, high_g: float) -> tuple[float, float, str, int]:
    is_small = high_g < GRAMS_UP_TO
    if units() == "us":
        if is_small:
            return ounces_from_grams(low_g), ounces_from_grams(high_g), "oz", 1
        return pounds_from_kilograms(low_g / 1000), pounds_from_kilograms(high_g / 1000), "lb", 2
    return (low_g, high_g, "g", 0) if is_small else (low_g / 1000, high_g / 1000, "kg", 2)
