"""Units as people write them behind a number, and how much they are in the units that are kept.

Factors are exact where not said otherwise: those of calculations/units.py, and for spoons, fluid ounces and the
imperial gallon Thompson, A. and Taylor, B. N. (2008) NIST Special Publication 811, appendix B. The foot is 12 inches.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass

from growlog.calculations import units as exact

L_PER_IMPERIAL_GALLON = 4.54609
L_PER_US_FLUID_OUNCE = exact.L_PER_US_GALLON / 128
L_PER_US_TEASPOON = exact.L_PER_US_GALLON / 768
L_PER_US_TABLESPOON = exact.L_PER_US_GALLON / 256


@dataclass(frozen=True)
class LineUnit:
    """A unit. measure: what it measures. to_kept: from it into the unit that is kept.

    Kept are g, L, °C, cm, mS/cm, %, min, µmol/m²/s and lx.
    """

    name: str
    measure: str
    written: tuple[str, ...]
    to_kept: Callable[[float], float]

    def kept(self, value: float) -> float:
        """The value in the kept unit; twelve digits are more than was typed and hide what binary fractions add."""
        return float(f"{self.to_kept(value):.12g}")


def _times(factor: float) -> Callable[[float], float]:
    return factor.__mul__


_ALL = (
    LineUnit("g", "weight", ("g", "gr", "gram", "grams", "gramme", "grammes"), _times(1.0)),
    LineUnit("kg", "weight", ("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"), _times(1000.0)),
    LineUnit("oz", "weight", ("oz", "ounce", "ounces"), _times(exact.G_PER_OUNCE)),
    LineUnit("lb", "weight", ("lb", "lbs", "pound", "pounds"), _times(exact.G_PER_POUND)),
    LineUnit("L", "volume", ("l", "litre", "litres", "liter", "liters"), _times(1.0)),
    LineUnit("mL", "volume", ("ml", "millilitre", "millilitres", "milliliter", "milliliters"), _times(0.001)),
    LineUnit("gal", "volume", ("gal", "gals", "gallon", "gallons"), _times(exact.L_PER_US_GALLON)),
    LineUnit("US gal", "volume", ("us gal", "us gallon", "us gallons"), _times(exact.L_PER_US_GALLON)),
    LineUnit(
        "imp gal",
        "volume",
        ("imp gal", "imp. gal", "imp gallons", "imperial gal", "imperial gallon", "imperial gallons", "uk gal"),
        _times(L_PER_IMPERIAL_GALLON),
    ),
    LineUnit(
        "fl oz", "volume", ("fl oz", "fl. oz", "floz", "fluid ounce", "fluid ounces"), _times(L_PER_US_FLUID_OUNCE)
    ),
    LineUnit("tsp", "volume", ("tsp", "teaspoon", "teaspoons"), _times(L_PER_US_TEASPOON)),
    LineUnit("tbsp", "volume", ("tbsp", "tablespoon", "tablespoons"), _times(L_PER_US_TABLESPOON)),
    LineUnit("°C", "temperature", ("°c", "° c", "c", "degc", "deg c", "degrees c", "celsius"), _times(1.0)),
    LineUnit(
        "°F",
        "temperature",
        ("°f", "° f", "f", "degf", "deg f", "degrees f", "fahrenheit"),
        exact.celsius_from_fahrenheit,
    ),
    LineUnit("cm", "length", ("cm", "centimetre", "centimetres", "centimeter", "centimeters"), _times(1.0)),
    LineUnit("mm", "length", ("mm",), _times(0.1)),
    LineUnit("m", "length", ("m", "metre", "metres", "meter", "meters"), _times(100.0)),
    LineUnit("in", "length", ("in", "inch", "inches", '"'), _times(exact.CM_PER_INCH)),
    LineUnit("ft", "length", ("ft", "foot", "feet"), _times(exact.CM_PER_INCH * 12)),
    LineUnit("mS/cm", "ec", ("ms/cm", "ms", "ds/m"), _times(1.0)),
    LineUnit("µS/cm", "ec", ("µs/cm", "us/cm", "µs"), _times(0.001)),
    LineUnit("%", "percent", ("%", "percent", "per cent"), _times(1.0)),
    LineUnit(
        "µmol/m²/s",
        "ppfd",
        ("µmol/m²/s", "µmol/m2/s", "umol/m²/s", "umol/m2/s", "µmol m-2 s-1", "umol m-2 s-1", "µmol", "umol"),
        _times(1.0),
    ),
    LineUnit("lx", "illuminance", ("lx", "lux"), _times(1.0)),
    LineUnit("min", "duration", ("min", "mins", "minute", "minutes"), _times(1.0)),
    LineUnit("h", "duration", ("h", "hr", "hrs", "hour", "hours"), _times(60.0)),
    LineUnit("am", "clock", ("am", "a.m."), _times(1.0)),
    LineUnit("pm", "clock", ("pm", "p.m."), _times(1.0)),
)

UNITS: dict[str, LineUnit] = {unit.name: unit for unit in _ALL}
_BY_WRITTEN = {written: unit for unit in _ALL for written in unit.written}
_SHOWN = {  # which unit a bare number is in, by the units that the window shows
    "metric": {"weight": "g", "volume": "L", "temperature": "°C", "length": "cm"},
    "us": {"weight": "oz", "volume": "US gal", "temperature": "°F", "length": "in"},
}
_ALWAYS = {"ec": "mS/cm", "percent": "%", "ppfd": "µmol/m²/s", "illuminance": "lx", "duration": "min"}


def _pattern() -> re.Pattern[str]:
    longest_first = sorted(_BY_WRITTEN, key=len, reverse=True)
    alternatives = "|".join(re.escape(w).replace("µ", "[µμ]") for w in longest_first)
    # A unit ends where its letters end; "g/L" is no gram, "250 in all" no inch.
    return re.compile(
        rf"[ \t\u2009\u202f\xa0]*(?!in\s+(?:all|total)\b)({alternatives})(?:(?<=[%\"])|(?![^\W\d_]|/\w))", re.I
    )


_UNIT = _pattern()


def unit_at(text: str, at: int) -> tuple[LineUnit, int] | None:
    """The unit that stands in the text from a place on, and where it ends; None if there is none."""
    found = _UNIT.match(text, at)
    return None if found is None else (unit_named(found[1]), found.end())


def unit_named(written: str) -> LineUnit:
    """The unit of a spelling; KeyError if there is none."""
    return _BY_WRITTEN[written.lower().replace("μ", "µ")]


def is_unit(written: str) -> bool:
    """Whether a word is a spelling of a unit."""
    return written.lower().replace("μ", "µ") in _BY_WRITTEN


def unit_of_bare_number(measure: str, shown: str) -> LineUnit | None:
    """The unit that a number without one is in. shown: the units of the window, "metric" or "us"."""
    name = _SHOWN[shown].get(measure) or _ALWAYS.get(measure)
    return UNITS[name] if name else None
