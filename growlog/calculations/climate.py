"""The air of the room."""

from math import exp


def saturation_vapour_pressure(air_temperature_c: float) -> float:
    """Saturation vapour pressure in kPa over water, air_temperature_c -30 to 60 °C; ValueError outside.

    Source: Allen, R. et al. (1998) Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, equation 11.
    """
    if not -30 <= air_temperature_c <= 60:
        raise ValueError(f"air_temperature_c {air_temperature_c} is outside -30 to 60 °C")
    return 0.6108 * exp(17.27 * air_temperature_c / (air_temperature_c + 237.3))


def vapour_pressure_deficit(air_temperature_c: float, relative_humidity_percent: float) -> float:
    """VPD of the air in kPa (not of the leaf). relative_humidity_percent 0 to 100; ValueError outside.

    Source: FAO Irrigation and Drainage Paper 56 (1998), equations 11 and 10.
    """
    if not 0 <= relative_humidity_percent <= 100:
        raise ValueError(f"relative_humidity_percent {relative_humidity_percent} is outside 0 to 100 %")
    return saturation_vapour_pressure(air_temperature_c) * (1 - relative_humidity_percent / 100)
