"""Units as growers write them into headings and cells, each with its way to the unit that is kept."""

import re
from collections.abc import Callable

from growlog.calculations import units as exact

_Convert = Callable[[float], float]


def _times(factor: float) -> _Convert:
    def convert(value: float) -> float:
        return value * factor

    return convert


_SAME = _times(1)
_G_PER_KG, _ML_PER_L = 1000.0, 1000.0
# Spellings are case-folded; the micro sign is kept as µ (U+00B5). By the unit that is kept.
_UNITS: dict[str, dict[str, _Convert]] = {
    "g": {
        **dict.fromkeys(("g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes"), _SAME),
        **dict.fromkeys(("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"), _times(_G_PER_KG)),
        "mg": _times(0.001),
        **dict.fromkeys(("oz", "ozs", "ounce", "ounces"), _times(exact.G_PER_OUNCE)),
        **dict.fromkeys(("lb", "lbs", "pound", "pounds"), _times(exact.G_PER_POUND)),
    },
    "L": {
        **dict.fromkeys(("l", "lt", "ltr", "liter", "liters", "litre", "litres"), _SAME),
        **dict.fromkeys(("ml", "milliliter", "milliliters", "millilitre", "millilitres", "cc"), _times(1 / _ML_PER_L)),
        "dl": _times(0.1),
        "cl": _times(0.01),
        **dict.fromkeys(("gal", "gals", "gallon", "gallons"), _times(exact.L_PER_US_GALLON)),
        **dict.fromkeys(("qt", "quart", "quarts"), _times(exact.L_PER_US_GALLON / 4)),
        **dict.fromkeys(("pt", "pint", "pints"), _times(exact.L_PER_US_GALLON / 8)),
    },
    "mS/cm": {
        **dict.fromkeys(("ms", "ms/cm", "ds/m", "mmho/cm", "mmhos/cm"), _SAME),
        **dict.fromkeys(("µs", "µs/cm", "us", "us/cm"), _times(0.001)),
        "cf": _times(0.1),  # conductivity factor: ten times the EC in mS/cm
    },
    "°C": {
        **dict.fromkeys(("c", "°c", "ºc", "degc", "deg c", "celsius", "centigrade"), _SAME),
        **dict.fromkeys(("f", "°f", "ºf", "degf", "deg f", "fahrenheit"), exact.celsius_from_fahrenheit),
    },
    "%": {
        **dict.fromkeys(("%", "percent", "per cent", "pct", "%rh", "% rh"), _SAME),
        "share": _times(100),
    },
    "cm": {
        **dict.fromkeys(("cm", "centimeter", "centimeters", "centimetre", "centimetres"), _SAME),
        **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), _times(0.1)),
        **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), _times(100)),
        **dict.fromkeys(("in", "inch", "inches", '"', "″"), _times(exact.CM_PER_INCH)),
        **dict.fromkeys(("ft", "foot", "feet", "'", "′"), _times(exact.CM_PER_INCH * 12)),
    },
    "h": {
        **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), _SAME),
        **dict.fromkeys(("min", "mins", "minute", "minutes"), _times(1 / 60)),
    },
    "min": {
        **dict.fromkeys(("min", "mins", "minute", "minutes", "'"), _SAME),
        **dict.fromkeys(("h", "hr", "hrs", "hour", "hours"), _times(60)),
    },
    "d": dict.fromkeys(("d", "day", "days"), _SAME),
    "µmol/m²/s": dict.fromkeys(("µmol/m²/s", "µmol", "umol", "umol/m2/s", "µmol/m2/s", "ppfd"), _SAME),
    "lx": {**dict.fromkeys(("lx", "lux"), _SAME), "klx": _times(1000), "klux": _times(1000)},
    "": dict.fromkeys(("fruit", "fruits", "pc", "pcs", "piece", "pieces", "pod", "pods", "ea", "×", "x"), _SAME),
}  # fmt: skip
_OFFERED = {
    "g": ("g", "kg", "oz", "lb"),
    "L": ("L", "mL", "gal"),
    "mS/cm": ("mS/cm", "µS/cm", "CF"),
    "°C": ("°C", "°F"),
    "%": ("%", "share"),
    "cm": ("cm", "mm", "m", "in", "ft"),
    "h": ("h", "min"),
    "min": ("min", "h"),
}


def tidy_unit(text: str) -> str:
    """A unit's spelling in the form of the table."""
    return re.sub(r"\s+", " ", text.casefold().replace("μ", "µ")).strip(" .")


def in_kept_unit(value: float, unit: str, kept: str) -> float | None:
    """The value in the unit that is kept; None where the unit is none of its sort. "" stands for the kept unit."""
    if not unit or unit == kept:
        return value
    convert = _UNITS.get(kept, {}).get(tidy_unit(unit))
    if convert is None:
        return None
    return round(convert(value), 6)  # a factor leaves dust behind the decimals that any instrument shows


def is_unit_of(text: str, kept: str) -> bool:
    """Whether a word is a unit of this sort."""
    return tidy_unit(text) in _UNITS.get(kept, {})


def unit_in(heading: str, kept: str) -> str:
    """The unit that a heading states for this sort of quantity, "" if none."""
    bracketed = re.findall(r"[(\[]\s*([^)\]]+?)\s*[)\]]", heading)
    words = re.findall(r"[^\s()\[\],;:_]+", heading)
    for word in (*bracketed, *reversed(words)):
        if kept and is_unit_of(word, kept):
            return tidy_unit(word)
    return ""


def units_offered(kept: str) -> tuple[str, ...]:
    """The units to choose from for a column of this sort, the kept one first."""
    return _OFFERED.get(kept, (kept,) if kept else ())


def same_unit(one: str, other: str, kept: str) -> bool:
    """Whether two spellings mean the same unit."""
    table = _UNITS.get(kept, {})
    first, second = table.get(tidy_unit(one or kept)), table.get(tidy_unit(other or kept))
    return first is not None and second is not None and first(10.0) == second(10.0)
