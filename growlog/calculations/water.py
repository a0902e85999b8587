"""Source water: what it brings into a feed, its alkalinity in the usual units, and blends."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from growlog.calculations.nutrients import add_up, formula_weight, scaled

_CACO3 = formula_weight({"Ca": 1, "C": 1, "O": 3})
_CAO = formula_weight({"Ca": 1, "O": 1})
_HCO3 = formula_weight({"H": 1, "C": 1, "O": 3})
CACO3_MG_PER_MEQ = _CACO3 / 2


@dataclass(frozen=True)
class Water:
    """An analysis of source water; rain and reverse osmosis are the empty one.

    nutrients_mg_per_l: by nutrient, as elements. alkalinity in mg/L CaCO3. None: not measured.
    """

    nutrients_mg_per_l: Mapping[str, float] = field(default_factory=dict)
    ec_ms_per_cm: float | None = None
    ph: float | None = None
    alkalinity_mg_per_l_caco3: float | None = None


RAIN_OR_REVERSE_OSMOSIS = Water()


def check_water(water: Water) -> None:
    """ValueError naming the first figure that cannot be true: mg/L 0 to 20000, EC 0 to 20 mS/cm, pH 0 to 14,
    alkalinity 0 to 2000 mg/L CaCO3."""
    stated = [(f"{n} of the water", mg, 20000.0, "mg/L") for n, mg in water.nutrients_mg_per_l.items()]
    measured = [
        ("ec_ms_per_cm", water.ec_ms_per_cm, 20.0, "mS/cm"),
        ("ph", water.ph, 14.0, ""),
        ("alkalinity_mg_per_l_caco3", water.alkalinity_mg_per_l_caco3, 2000.0, "mg/L"),
    ]
    for name, value, highest, unit in [*stated, *measured]:
        if value is not None and not 0 <= value <= highest:
            raise ValueError(f"{name} {value:g} is outside 0 to {highest:g} {unit}".rstrip())


def alkalinity_from_german_degrees(degrees_dh: float) -> float:
    """mg/L CaCO3 of carbonate hardness in °dH (0 and above): 1 °dH is 10 mg/L CaO, by definition of the degree."""
    if not degrees_dh >= 0:
        raise ValueError(f"degrees_dh {degrees_dh:g} is outside 0 °dH and above")
    return degrees_dh * 10 * _CACO3 / _CAO


def alkalinity_from_bicarbonate(bicarbonate_mg_per_l: float) -> float:
    """mg/L CaCO3 of the alkalinity that so much bicarbonate (0 mg/L and above) is: two HCO3- to one CaCO3."""
    if not bicarbonate_mg_per_l >= 0:
        raise ValueError(f"bicarbonate_mg_per_l {bicarbonate_mg_per_l:g} is outside 0 mg/L and above")
    return bicarbonate_mg_per_l / _HCO3 * CACO3_MG_PER_MEQ


def alkalinity_meq_per_l(water: Water) -> float:
    """meq/L of a water's alkalinity; 0 where it was not measured."""
    return (water.alkalinity_mg_per_l_caco3 or 0.0) / CACO3_MG_PER_MEQ


def blend(waters: Sequence[tuple[Water, float]]) -> Water:
    """Waters joined by volume in L, each 0 or more and above 0 in all; ValueError outside.

    Contents and alkalinity follow the volumes exactly; EC nearly so; pH does not blend and is left out.
    """
    total_l = sum(volume for _, volume in waters)
    if total_l <= 0 or any(volume < 0 for _, volume in waters):
        raise ValueError(f"volume {total_l:g} in all is outside above 0 L")
    contents = add_up(scaled(water.nutrients_mg_per_l, volume / total_l) for water, volume in waters)
    return Water(
        contents,
        _mean([(water.ec_ms_per_cm, volume) for water, volume in waters]),
        None,
        _mean([(water.alkalinity_mg_per_l_caco3, volume) for water, volume in waters]),
    )


def _mean(values: Sequence[tuple[float | None, float]]) -> float | None:
    """Weighted by volume; None where any was not measured, since the blend is then unknown."""
    known = [(value, volume) for value, volume in values if value is not None]
    if len(known) < len(values):
        return None
    return sum(value * volume for value, volume in known) / sum(volume for _, volume in known)
