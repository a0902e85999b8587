"""Source waters: saved analyses, blends of them, and alkalinity as reports state it."""

from collections.abc import Callable, Mapping, Sequence

from growlog.calculations.nutrients import NITRATE_N, nutrient_factor
from growlog.calculations.water import (
    CACO3_MG_PER_MEQ,
    RAIN_OR_REVERSE_OSMOSIS,
    Water,
    alkalinity_from_bicarbonate,
    alkalinity_from_german_degrees,
    blend,
)
from growlog.records.change import Change
from growlog.records.problems import Problem, refuse
from growlog.records.recipe import WaterShare
from growlog.records.source_water import WATER_ELEMENTS, SourceWater
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_number

_IN_CALCULATIONS = {"ca": "Ca", "mg": "Mg", "na": "Na", "cl": "Cl", "k": "K", "no3_n": NITRATE_N}
_ALKALINITY: dict[str, Callable[[float], float]] = {
    "mg/L CaCO3": float,
    "°dH": alkalinity_from_german_degrees,
    "mg/L HCO3": alkalinity_from_bicarbonate,
    "meq/L": lambda meq: meq * CACO3_MG_PER_MEQ,
}
ALKALINITY_UNITS = tuple(_ALKALINITY)


def waters_of(log: OpenLogbook) -> list[SourceWater]:
    """All saved waters by name."""
    with log.unit() as unit:
        return sorted(unit.waters.all(), key=lambda w: w.name.casefold())


def new_water(name: str = "") -> SourceWater:
    """An empty analysis, which is rain or reverse osmosis, not yet written."""
    return SourceWater(new_id(), name)


def check_water(log: OpenLogbook, water: SourceWater) -> list[Problem]:
    """All problems and questions of a water, each beside its field."""
    with log.unit() as unit:
        return _problems(unit, water)


def save_water(log: OpenLogbook, water: SourceWater) -> Change:
    """Writes a water, new or changed; RecordRefused, or RecordMoved if it changed since."""
    group = new_id()
    with log.unit() as unit:
        refuse(_problems(unit, water))
        if unit.waters.find(water.id) is None:
            unit.add(group, water)
        else:
            unit.change(group, water)
        unit.commit()
    return Change(group, say("Save {name}", name=water.name), (water.id,), None)


def remove_water(log: OpenLogbook, water_id: str) -> Change:
    """Puts a water into the bin. Mixes that used it keep it."""
    group = new_id()
    with log.unit() as unit:
        water = unit.waters.get(water_id)
        unit.remove(group, water)
        unit.commit()
    return Change(group, say("Remove {name}", name=water.name), (water_id,), None)


def alkalinity_of(value: float, unit: str) -> float:
    """mg/L CaCO3 of an alkalinity as reports state it. unit: one of ALKALINITY_UNITS; ValueError for another."""
    if unit not in _ALKALINITY:
        raise ValueError(f"unit {unit!r} is outside {', '.join(ALKALINITY_UNITS)}")
    return _ALKALINITY[unit](value)


def calc_water(water: SourceWater) -> Water:
    """The same analysis for the calculations: sulfate as sulfur; what was not measured is left out."""
    contents = {}
    for element in WATER_ELEMENTS:
        stated = getattr(water, f"{element}_mg_per_l")
        if stated is not None and element == "so4":
            contents["S"] = stated * nutrient_factor("so4")[1]
        elif stated is not None:
            contents[_IN_CALCULATIONS[element]] = stated
    return Water(contents, water.ec_ms_per_cm, water.ph, water.alkalinity_mg_per_l_caco3)


def source_water(water: Water, name: str) -> SourceWater:
    """A water of a file as one to be saved, not yet written; elements that no saved water has are left out."""
    so4 = nutrient_factor("so4")[1]
    stated = water.nutrients_mg_per_l.get
    sulfur = stated("S")
    return SourceWater(
        new_id(),
        name,
        ec_ms_per_cm=water.ec_ms_per_cm,
        ph=water.ph,
        alkalinity_mg_per_l_caco3=water.alkalinity_mg_per_l_caco3,
        ca_mg_per_l=stated("Ca"),
        mg_mg_per_l=stated("Mg"),
        na_mg_per_l=stated("Na"),
        cl_mg_per_l=stated("Cl"),
        so4_mg_per_l=None if sulfur is None else sulfur / so4,
        k_mg_per_l=stated("K"),
        no3_n_mg_per_l=stated(NITRATE_N),
    )


def blended(waters: Mapping[str, SourceWater], shares: Sequence[WaterShare]) -> Water:
    """The blend of saved waters by their shares; none: rain or reverse osmosis. Waters that are gone count as such.

    An empty analysis counts as clean: its EC and alkalinity are 0 in a blend.
    """
    parts = [(calc_water(waters[s.water_id]), s.water_share) for s in shares if s.water_id in waters]
    if not parts:
        return RAIN_OR_REVERSE_OSMOSIS
    if len(parts) == 1 and parts[0][1] >= 1 - 1e-9:
        return parts[0][0]
    left = 1 - sum(share for _, share in parts)
    known = [(_clean(water), share) for water, share in parts]
    return blend([*known, (_CLEAN, left)] if left > 1e-9 else known)


def blend_name(waters: Mapping[str, SourceWater], shares: Sequence[WaterShare]) -> str:
    """The blend in words, such as "tap 50 %, rain 50 %"; rain or reverse osmosis where there is none."""
    named = [(waters[s.water_id].name, s.water_share) for s in shares if s.water_id in waters]
    if not named:
        return say("rain or reverse osmosis")
    if len(named) == 1:
        return named[0][0]
    return ", ".join(f"{name} {show_number(100 * share, 0)} %" for name, share in named)


_CLEAN = Water({}, 0.0, None, 0.0)


def _clean(water: Water) -> Water:
    return _CLEAN if water == RAIN_OR_REVERSE_OSMOSIS else water


def _problems(unit: UnitOfWork, water: SourceWater) -> list[Problem]:
    found = water.problems()
    same = [w for w in unit.waters.all() if w.id != water.id and _key(w.name) == _key(water.name)]
    if same:
        found.append(Problem("name", say("There is a water of this name already. Choose another.")))
    return found


def _key(name: str) -> str:
    return name.strip().casefold()
