"""Nutrients as labels and laboratories state them, as elements, and as the ions they become in water.

Atomic weights: Prohaska, T. et al. (2022) Standard atomic weights of the elements 2021, Pure and Applied Chemistry 94.
"""

from collections.abc import Iterable, Mapping
from types import MappingProxyType

ATOMIC_WEIGHTS: Mapping[str, float] = MappingProxyType(
    {
        "H": 1.008, "B": 10.81, "C": 12.011, "N": 14.007, "O": 15.999, "Na": 22.99, "Mg": 24.305, "Si": 28.085,
        "P": 30.974, "S": 32.06, "Cl": 35.45, "K": 39.0983, "Ca": 40.078, "Mn": 54.938, "Fe": 55.845,
        "Cu": 63.546, "Zn": 65.38, "Mo": 95.95,
    }
)  # fmt: skip

NITRATE_N, AMMONIUM_N, UREA_N, UNSTATED_N = "NO3-N", "NH4-N", "urea-N", "N"
NITROGEN_FORMS = (NITRATE_N, AMMONIUM_N, UREA_N, UNSTATED_N)
ELEMENTS = ("N", "P", "K", "Ca", "Mg", "S", "Si", "Fe", "Mn", "Zn", "Cu", "B", "Mo", "Cl", "Na")

# What a label or an analysis may state: the nutrient that is meant, and the formula that the figure is given in.
_STATED_AS: dict[str, tuple[str, dict[str, int]]] = {
    "n": (UNSTATED_N, {"N": 1}),
    "n_nitrate": (NITRATE_N, {"N": 1}),
    "n_ammonium": (AMMONIUM_N, {"N": 1}),
    "n_urea": (UREA_N, {"N": 1}),
    "no3": (NITRATE_N, {"N": 1, "O": 3}),
    "nh4": (AMMONIUM_N, {"N": 1, "H": 4}),
    "p2o5": ("P", {"P": 2, "O": 5}),
    "po4": ("P", {"P": 1, "O": 4}),
    "k2o": ("K", {"K": 2, "O": 1}),
    "cao": ("Ca", {"Ca": 1, "O": 1}),
    "caco3": ("Ca", {"Ca": 1, "C": 1, "O": 3}),
    "mgo": ("Mg", {"Mg": 1, "O": 1}),
    "so3": ("S", {"S": 1, "O": 3}),
    "so4": ("S", {"S": 1, "O": 4}),
    "sio2": ("Si", {"Si": 1, "O": 2}),
    "fe2o3": ("Fe", {"Fe": 2, "O": 3}),
    "mno": ("Mn", {"Mn": 1, "O": 1}),
    "zno": ("Zn", {"Zn": 1, "O": 1}),
    "cuo": ("Cu", {"Cu": 1, "O": 1}),
    "b2o3": ("B", {"B": 2, "O": 3}),
    "moo3": ("Mo", {"Mo": 1, "O": 3}),
    "na2o": ("Na", {"Na": 2, "O": 1}),
} | {element.lower(): (element, {element: 1}) for element in ELEMENTS if element != "N"}

# The charge of the ion that each nutrient is in a feed of pH 5 to 6.5. Chelated iron, boric and silicic acid and urea
# carry next to none; nitrogen of unstated form is unknown.
ION_CHARGES: Mapping[str, int] = MappingProxyType(
    {
        NITRATE_N: -1, AMMONIUM_N: 1, "P": -1, "K": 1, "Ca": 2, "Mg": 2, "S": -2, "Cl": -1, "Na": 1,
        "Mn": 2, "Zn": 2, "Cu": 2, "Mo": -2,
    }
)  # fmt: skip

LABEL_WORDS = tuple(_STATED_AS)


def formula_weight(atoms: Mapping[str, int]) -> float:
    """g/mol of a formula given as counts of its atoms; ValueError for an element without a weight here."""
    unknown = set(atoms) - set(ATOMIC_WEIGHTS)
    if unknown:
        raise ValueError(f"formula {', '.join(sorted(unknown))} is outside the elements {', '.join(ATOMIC_WEIGHTS)}")
    return sum(ATOMIC_WEIGHTS[element] * count for element, count in atoms.items())


def nutrient_factor(stated_as: str) -> tuple[str, float]:
    """The nutrient behind a label's word and the factor (0 to 1) from the stated figure to the element.

    stated_as: one of LABEL_WORDS, such as "p2o5"; ValueError for another. "p2o5" gives ("P", 0.43643).
    Source: International Fertilizer Association, conversion factors (n.d.), recomputed from atomic weights.
    """
    if stated_as not in _STATED_AS:
        raise ValueError(f"analysis {stated_as!r} is outside the known: {', '.join(LABEL_WORDS)}")
    nutrient, atoms = _STATED_AS[stated_as]
    element = element_of(nutrient)
    return nutrient, ATOMIC_WEIGHTS[element] * atoms[element] / formula_weight(atoms)


def element_of(nutrient: str) -> str:
    """The element of a nutrient: N for each form of nitrogen, else itself."""
    return "N" if nutrient in NITROGEN_FORMS else nutrient


def nutrients_from_label(analysis: Mapping[str, float]) -> dict[str, float]:
    """Nutrients as elements, in the unit of the label (per cent, mg/L ...), from its guaranteed analysis.

    analysis: LABEL_WORDS to figures, each 0 or more. "n" is the total; what no form accounts for stays unstated.
    ValueError for an unknown word, a negative figure, one element stated twice, or forms of nitrogen that together
    exceed the total by more than rounding (0.2 and 2 per cent of it).
    """
    found: dict[str, float] = {}
    for word, figure in analysis.items():
        nutrient, factor = nutrient_factor(word)
        if not figure >= 0:
            raise ValueError(f"{word} {figure:g} is outside 0 and above")
        if nutrient in found:
            raise ValueError(f"{word} {figure:g} states {nutrient} a second time; state it once")
        found[nutrient] = figure * factor
    if UNSTATED_N in found:
        found[UNSTATED_N] = _nitrogen_without_form(found)
    return {nutrient: amount for nutrient, amount in found.items() if amount > 0}


def _nitrogen_without_form(found: Mapping[str, float]) -> float:
    total = found[UNSTATED_N]
    named = sum(found.get(form, 0.0) for form in (NITRATE_N, AMMONIUM_N, UREA_N))
    if named > total * 1.02 + 0.2:
        raise ValueError(f"n {total:g} is outside {named:g} and above, which its forms add up to")
    left = total - named
    # Labels round each form by itself; a remainder within that rounding is no nitrogen.
    return left if named == 0 or left > 0.2 + total * 0.02 else 0.0


def add_up(parts: Iterable[Mapping[str, float]]) -> dict[str, float]:
    """The sum of several sets of nutrients in one unit."""
    total: dict[str, float] = {}
    for part in parts:
        for nutrient, amount in part.items():
            total[nutrient] = total.get(nutrient, 0.0) + amount
    return total


def scaled(nutrients: Mapping[str, float], factor: float) -> dict[str, float]:
    """A set of nutrients, each times a factor."""
    return {nutrient: amount * factor for nutrient, amount in nutrients.items()}


def elements(nutrients: Mapping[str, float]) -> dict[str, float]:
    """Element totals in the trade's order, in the unit given; the forms of nitrogen become N."""
    totals = add_up({element_of(nutrient): amount} for nutrient, amount in nutrients.items())
    return {element: totals[element] for element in ELEMENTS if element in totals}


def mmol_per_l(element_mg_per_l: Mapping[str, float]) -> dict[str, float]:
    """mmol/L of each nutrient given in mg/L of its element."""
    return {n: mg / ATOMIC_WEIGHTS[element_of(n)] for n, mg in element_mg_per_l.items()}


def meq_per_l(nutrient_mg_per_l: Mapping[str, float]) -> dict[str, float]:
    """Signed milliequivalents per L of the nutrients that are ions; the others are left out.

    Phosphate counts as H2PO4-, which it is almost wholly at pH 5 to 6.5.
    """
    return {n: mmol * ION_CHARGES[n] for n, mmol in mmol_per_l(nutrient_mg_per_l).items() if n in ION_CHARGES}
