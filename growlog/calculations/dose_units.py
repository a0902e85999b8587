"""The units that doses are given in, as amounts per litre of finished feed.

Source: National Institute of Standards and Technology, Handbook 44, appendix C (gallon of 231 cubic inches; spoons and
fluid ounces as its parts). The imperial gallon is 4.54609 L by definition.
"""

from collections.abc import Iterable
from dataclasses import dataclass

from growlog.calculations.units import G_PER_OUNCE, L_PER_US_GALLON

L_PER_IMPERIAL_GALLON = 4.54609
ML_PER_US_FLUID_OUNCE = L_PER_US_GALLON * 1000 / 128
ML_PER_IMPERIAL_FLUID_OUNCE = L_PER_IMPERIAL_GALLON * 1000 / 160
ML_PER_US_TEASPOON = ML_PER_US_FLUID_OUNCE / 6
ML_PER_METRIC_TEASPOON = 5.0
G_PER_POUND = 16 * G_PER_OUNCE

# What is measured out: "mL" by volume or "g" by weight, and how many of them it is.
_AMOUNTS: dict[str, tuple[str, float]] = {
    "mL": ("mL", 1.0),
    "L": ("mL", 1000.0),
    "tsp": ("mL", ML_PER_US_TEASPOON),
    "tsp_metric": ("mL", ML_PER_METRIC_TEASPOON),
    "tbsp": ("mL", 3 * ML_PER_US_TEASPOON),
    "tbsp_metric": ("mL", 3 * ML_PER_METRIC_TEASPOON),
    "fl_oz": ("mL", ML_PER_US_FLUID_OUNCE),
    "fl_oz_imp": ("mL", ML_PER_IMPERIAL_FLUID_OUNCE),
    "mg": ("g", 0.001),
    "g": ("g", 1.0),
    "kg": ("g", 1000.0),
    "oz": ("g", G_PER_OUNCE),
    "lb": ("g", G_PER_POUND),
}
_VOLUMES_L: dict[str, float | None] = {
    "L": 1.0,
    "100L": 100.0,
    "1000L": 1000.0,
    "gal_us": L_PER_US_GALLON,
    "100gal_us": 100 * L_PER_US_GALLON,
    "gal_imp": L_PER_IMPERIAL_GALLON,
    "100gal_imp": 100 * L_PER_IMPERIAL_GALLON,
    "tank": None,
}
DOSE_UNITS = tuple(f"{amount}/{volume}" for amount in _AMOUNTS for volume in _VOLUMES_L)


@dataclass(frozen=True)
class DosePerLitre:
    """An amount per litre of feed. measure: "mL" or "g"."""

    amount: float
    measure: str


def dose_per_litre(amount: float, unit: str, tank_l: float | None = None) -> DosePerLitre:
    """A dose in mL/L or g/L.

    amount: 0 or more; unit: one of DOSE_UNITS, such as "mL/gal_us"; tank_l: above 0, needed for doses per tank.
    ValueError outside. Source: NIST Handbook 44, appendix C.
    """
    if not 0 <= amount < float("inf"):
        raise ValueError(f"amount {amount:g} is outside 0 and above")
    measure, factor = _amount_of(unit)
    return DosePerLitre(amount * factor / _volume_l(unit, tank_l), measure)


def dose_in_unit(dose: DosePerLitre, unit: str, tank_l: float | None = None) -> float:
    """The number of a dose in another unit of the same measure; ValueError where one weighs and the other fills."""
    measure, factor = _amount_of(unit)
    if measure != dose.measure:
        raise ValueError(f"unit {unit!r} is outside the units in {dose.measure}")
    return dose.amount * _volume_l(unit, tank_l) / factor


def measure_of(unit: str) -> str:
    """ "mL" for doses by volume, "g" for doses by weight; ValueError for an unknown unit."""
    return _amount_of(unit)[0]


def read_unit(text: str) -> str:
    """A unit as it was typed, in the spelling of DOSE_UNITS: "ml/l" is "mL/L". What is not known stays as it was."""
    typed = text.replace(" ", "").replace("fl.oz", "fl_oz").casefold()
    return next((unit for unit in DOSE_UNITS if unit.casefold() == typed), text)


def mixes_gallons(units: Iterable[str]) -> bool:
    """Whether US and imperial gallons (or ounces of either) stand side by side: worth a question."""
    parts = [part for unit in units for part in unit.split("/")]
    imperial = any(part.endswith("_imp") for part in parts)
    return imperial and any(part.endswith("_us") or part == "fl_oz" for part in parts)


def _amount_of(unit: str) -> tuple[str, float]:
    if unit not in DOSE_UNITS:
        raise ValueError(f"unit {unit!r} is outside the known, such as mL/L, g/L, mL/gal_us, oz/100gal_us, tsp/gal_us")
    return _AMOUNTS[unit.split("/")[0]]


def _volume_l(unit: str, tank_l: float | None) -> float:
    volume_l = _VOLUMES_L[unit.split("/")[1]]
    if volume_l is not None:
        return volume_l
    if tank_l is None or not tank_l > 0:
        raise ValueError(f"tank_l {tank_l} is outside above 0 L, which a dose per tank needs")
    return tank_l
