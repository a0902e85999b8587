"""Dew point, the deficit of the leaf, and what the figures of the air are called and worked out from."""

from math import log

from growlog.calculations.allowed import require
from growlog.calculations.climate import saturation_vapour_pressure, vapour_pressure_deficit
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.words import say

_FAO56 = "Allen, R. et al. (1998) Crop evapotranspiration, FAO Irrigation and Drainage Paper 56"


def vapour_pressure(air_temperature_c: float, relative_humidity_percent: float) -> float:
    """Vapour pressure of the air in kPa. Temperature -30 to 60 °C, humidity 0 to 100 %; ValueError outside.

    Source: FAO Irrigation and Drainage Paper 56 (1998), equations 10 and 11.
    """
    require("relative_humidity_percent", relative_humidity_percent, 0, 100, "%")
    return saturation_vapour_pressure(air_temperature_c) * relative_humidity_percent / 100


def mean_saturation_vapour_pressure(highest_c: float, lowest_c: float) -> float:
    """Mean of the day in kPa: of both pressures, not the pressure of the mean temperature. -30 to 60 °C each.

    Source: FAO Irrigation and Drainage Paper 56 (1998), equation 12.
    """
    return (saturation_vapour_pressure(highest_c) + saturation_vapour_pressure(lowest_c)) / 2


def dew_point(air_temperature_c: float, relative_humidity_percent: float) -> float:
    """Dew point in °C. Temperature -30 to 60 °C; humidity 0.1 to 100 %, since dry air has none; ValueError outside.

    Source: FAO Irrigation and Drainage Paper 56 (1998), equation 11 turned over.
    """
    require("relative_humidity_percent", relative_humidity_percent, 0.1, 100, "%")
    ratio = log(vapour_pressure(air_temperature_c, relative_humidity_percent) / 0.6108)
    return 237.3 * ratio / (17.27 - ratio)


def relative_humidity(air_temperature_c: float, dew_point_c: float) -> float:
    """Relative humidity in % from the dew point, which is -30 °C to the air's temperature; ValueError outside."""
    require("dew_point_c", dew_point_c, -30, air_temperature_c, "°C")
    return 100 * saturation_vapour_pressure(dew_point_c) / saturation_vapour_pressure(air_temperature_c)


def leaf_vapour_pressure_deficit(
    air_temperature_c: float, leaf_temperature_c: float, relative_humidity_percent: float
) -> float:
    """VPD from leaf to air in kPa: below 0 where water condenses on the leaf. Ranges as vapour_pressure.

    Source: FAO Irrigation and Drainage Paper 56 (1998), equations 10 and 11, at the leaf's temperature.
    """
    inside = saturation_vapour_pressure(leaf_temperature_c)
    return inside - vapour_pressure(air_temperature_c, relative_humidity_percent)


def water_condenses(surface_c: float, air_temperature_c: float, relative_humidity_percent: float) -> bool:
    """Whether water condenses on a surface: it is at the dew point or colder. Ranges as dew_point."""
    return surface_c <= dew_point(air_temperature_c, relative_humidity_percent)


def explain_vpd(air_c: float, humidity_percent: float) -> Figure:
    """The deficit of the air with its explanation; ranges as vapour_pressure."""
    method = say(
        "The pressure of water vapour that the air could hold at its temperature, times the part of it that is "
        "missing. This is the deficit of the air, not of the leaf."
    )
    value = vapour_pressure_deficit(air_c, humidity_percent)
    return _published("vpd", value, "kPa", _air(air_c, humidity_percent), method, "equations 10 and 11")


def explain_leaf_vpd(air_c: float, leaf_c: float, humidity_percent: float) -> Figure:
    """The deficit from leaf to air with its explanation; ranges as vapour_pressure."""
    method = say(
        "The pressure of water vapour inside a leaf of this temperature, less that of the air. Below zero, water "
        "condenses on the leaf."
    )
    value = leaf_vapour_pressure_deficit(air_c, leaf_c, humidity_percent)
    given = (*_air(air_c, humidity_percent), Input("leaf_c", leaf_c, "°C"))
    return _published("vpd-leaf", value, "kPa", given, method, "equations 10 and 11")


def explain_dew_point(air_c: float, humidity_percent: float) -> Figure:
    """The dew point with its explanation; ranges as dew_point."""
    method = say("The temperature at which the water now in the air would fill it. Colder surfaces turn wet.")
    value = dew_point(air_c, humidity_percent)
    return _published("dew-point", value, "°C", _air(air_c, humidity_percent), method, "equation 11 turned over")


def explain_saturation(air_c: float) -> Figure:
    """The saturation vapour pressure with its explanation; -30 to 60 °C."""
    method = say("0.6108 kPa times e to the power of 17.27 t over (t + 237.3), t being the temperature in °C.")
    given = (Input("temp_c", air_c, "°C"),)
    value = saturation_vapour_pressure(air_c)
    return _published("saturation-vapour-pressure", value, "kPa", given, method, "equation 11")


def _air(air_c: float, humidity_percent: float) -> tuple[Input, ...]:
    return (Input("temp_c", air_c, "°C"), Input("humidity", humidity_percent, "%"))


def _published(key: str, value: float, unit: str, inputs: tuple[Input, ...], method: str, equations: str) -> Figure:
    return Figure(key, value, unit, inputs, method, f"{_FAO56}, {equations}", Sure.PUBLISHED)
