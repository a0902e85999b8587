"""Degree days of one day by a named method: the same day gives different sums by different methods."""

from enum import StrEnum
from math import asin, cos, pi

from growlog.calculations.allowed import require
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.words import mark, say


class DegreeDayMethod(StrEnum):
    """How a day's highest and lowest temperature become degree days."""

    SIMPLE_AVERAGE = "simple-average"
    SUBSTITUTION = "substitution"
    MAXIMUM_MIRRORED = "maximum-mirrored"
    PIECEWISE = "piecewise"
    SINGLE_SINE = "single-sine"


_WORDS = {
    DegreeDayMethod.SIMPLE_AVERAGE: mark(
        "The mean of the highest and the lowest temperature, less the base; never below zero."
    ),
    DegreeDayMethod.SUBSTITUTION: mark(
        "Temperatures below the base count as the base, those above the ceiling as the ceiling; then their mean less "
        "the base."
    ),
    DegreeDayMethod.MAXIMUM_MIRRORED: mark(
        "The highest temperature alone, less the base; what it is above the ceiling is taken off the ceiling."
    ),
    DegreeDayMethod.PIECEWISE: mark(
        "Four cases, by whether the highest, the mean and the lowest temperature lie above the base."
    ),
    DegreeDayMethod.SINGLE_SINE: mark(
        "The area above the base, and below the ceiling, of a sine wave through the highest and the lowest temperature."
    ),
}
_SOURCES = {
    DegreeDayMethod.SIMPLE_AVERAGE: "University of California IPM; Midwestern Regional Climate Center",
    DegreeDayMethod.SUBSTITUTION: "Iowa State University, Agronomy 541, lesson 2b",
    DegreeDayMethod.MAXIMUM_MIRRORED: "Perry, K. and Wehner, T. (1996) HortTechnology 6(1): 27",
    DegreeDayMethod.PIECEWISE: "Met Éireann, degree days",
    DegreeDayMethod.SINGLE_SINE: "Baskerville, G. and Emin, P. (1969) Rapid estimation of heat accumulation from "
    "maximum and minimum temperatures, Ecology 50 (from memory)",
}


def degree_days(
    method: DegreeDayMethod, highest: float, lowest: float, base: float, ceiling: float | None = None
) -> float:
    """Degree days of one day, in the degrees of the temperatures, all °C or all °F; never below zero.

    highest, lowest: -100 to 150, lowest not above highest. base below ceiling. ceiling: needed by maximum-mirrored;
    None: no ceiling. ValueError where they do not fit, and where simple-average or piecewise is given a ceiling.
    Sources: see explain_degree_days.
    """
    for name, value in (("highest", highest), ("base", base)):
        require(name, value, -100, 150, "degrees")
    require("lowest", lowest, -100, highest, "degrees")
    _check_ceiling(method, base, ceiling)
    top = float("inf") if ceiling is None else ceiling
    if method is DegreeDayMethod.SUBSTITUTION:
        return (_held(highest, base, top) + _held(lowest, base, top)) / 2 - base
    if method is DegreeDayMethod.MAXIMUM_MIRRORED:
        return max(0.0, min(highest, 2 * top - highest) - base)
    if method is DegreeDayMethod.PIECEWISE:
        return _four_cases(highest, lowest, base)
    if method is DegreeDayMethod.SINGLE_SINE:
        above_ceiling = 0.0 if ceiling is None else _sine_area(highest, lowest, ceiling)
        return _sine_area(highest, lowest, base) - above_ceiling
    return max(0.0, (highest + lowest) / 2 - base)


def explain_degree_days(
    method: DegreeDayMethod, highest: float, lowest: float, base: float, ceiling: float | None, unit: str
) -> Figure:
    """The degree days of a day with their explanation. unit: °C or °F, of all temperatures. Ranges as degree_days."""
    given = [
        Input("method", method.value),
        Input("tmax", highest, unit),
        Input("tmin", lowest, unit),
        Input("base", base, unit),
    ]
    if ceiling is not None:
        given.append(Input("ceiling", ceiling, unit))
    value = degree_days(method, highest, lowest, base, ceiling)
    words = say(_WORDS[method])
    return Figure("degree-days", value, f"{unit}·d", tuple(given), words, _SOURCES[method], Sure.PUBLISHED)


def _check_ceiling(method: DegreeDayMethod, base: float, ceiling: float | None) -> None:
    if ceiling is None:
        if method is DegreeDayMethod.MAXIMUM_MIRRORED:
            raise ValueError(say("The method {method} needs a ceiling.", method=method.value))
        return
    if method in (DegreeDayMethod.SIMPLE_AVERAGE, DegreeDayMethod.PIECEWISE):
        raise ValueError(say("The method {method} has no ceiling.", method=method.value))
    require("ceiling", ceiling, base, 150, "degrees")


def _held(value: float, low: float, high: float) -> float:
    return min(max(value, low), high)


def _four_cases(highest: float, lowest: float, base: float) -> float:
    if lowest >= base:
        return (highest + lowest) / 2 - base
    if highest <= base:
        return 0.0
    if (highest + lowest) / 2 >= base:
        return (highest - base) / 2 - (base - lowest) / 4
    return (highest - base) / 4


def _sine_area(highest: float, lowest: float, base: float) -> float:
    mean, swing = (highest + lowest) / 2, (highest - lowest) / 2
    if lowest >= base:
        return mean - base
    if highest <= base:
        return 0.0
    angle = asin(_held((base - mean) / swing, -1, 1))
    return max(0.0, ((mean - base) * (pi / 2 - angle) + swing * cos(angle)) / pi)
