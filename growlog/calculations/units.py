"""Exact factors between the units a record keeps and those a grower in the United States reads.

Source: Thompson, A. and Taylor, B. N. (2008) Guide for the use of the International System of Units (SI),
NIST Special Publication 811, appendix B.
"""

L_PER_US_GALLON = 3.785411784
G_PER_OUNCE = 28.349523125  # avoirdupois
G_PER_POUND = 453.59237
CM_PER_INCH = 2.54


def us_gallons_from_litres(volume_l: float) -> float:
    """US liquid gallons of a volume in L."""
    return volume_l / L_PER_US_GALLON


def litres_from_us_gallons(volume_gal: float) -> float:
    """L of a volume in US liquid gallons."""
    return volume_gal * L_PER_US_GALLON


def ounces_from_grams(weight_g: float) -> float:
    """Avoirdupois ounces of a weight in g."""
    return weight_g / G_PER_OUNCE


def grams_from_ounces(weight_oz: float) -> float:
    """g of a weight in avoirdupois ounces."""
    return weight_oz * G_PER_OUNCE


def pounds_from_kilograms(weight_kg: float) -> float:
    """Avoirdupois pounds of a weight in kg."""
    return weight_kg * 1000 / G_PER_POUND


def inches_from_centimetres(length_cm: float) -> float:
    """Inches of a length in cm."""
    return length_cm / CM_PER_INCH


def centimetres_from_inches(length_in: float) -> float:
    """cm of a length in inches."""
    return length_in * CM_PER_INCH


def fahrenheit_from_celsius(temperature_c: float) -> float:
    """°F of a temperature in °C."""
    return temperature_c * 9 / 5 + 32


def fahrenheit_days_from_celsius_days(degree_days_c: float) -> float:
    """°F·d of degree days in °C·d, which know no zero to shift."""
    return degree_days_c * 9 / 5


def celsius_from_fahrenheit(temperature_f: float) -> float:
    """°C of a temperature in °F."""
    return (temperature_f - 32) * 5 / 9
