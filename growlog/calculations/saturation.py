"""How near a tank or a stock is to gypsum and calcium phosphate falling out, at 25 °C.

Sources: Parkhurst, D. L. and Appelo, C. A. J. (2013) Description of input and examples for PHREEQC version 3, US
Geological Survey (gypsum, ion pairs); Martell, A. E. and Smith, R. M. (2001) Critical stability constants, NIST
Standard Reference Database 46 (calcium hydrogenphosphate).
"""

import math
from collections.abc import Mapping

from growlog.calculations.allowed import require
from growlog.calculations.conductivity import LIMITING_CONDUCTIVITY, MOST_STRENGTH, free_ions, log_activity
from growlog.calculations.nutrients import mmol_per_l

LOG_KSP_GYPSUM = -4.58
# Ca, H and PO4 of CaHPO4.2H2O; the anhydrous salt is less soluble by the difference.
LOG_KSP_BRUSHITE, LOG_KSP_MONETITE = -18.995, -19.275
_PK_H2PO4, _PK_HPO4 = 7.21, 12.35
_LOG_K_WITH_HPO4 = {"Ca": 2.74, "Mg": 2.87}
_LOG_K_WITH_H2PO4 = {"Ca": 1.41, "Mg": 1.51}


def ionic_strength(nutrients_mg_per_l: Mapping[str, float]) -> float:
    """mol/L of a solution's free ions, from nutrients in mg/L as elements."""
    return free_ions(_mol_per_l(nutrients_mg_per_l))[1]


def gypsum_index(nutrients_mg_per_l: Mapping[str, float]) -> float | None:
    """The saturation index of gypsum: 0 saturated, above it falls out; None without calcium or sulfate."""
    free, strength = _free(nutrients_mg_per_l)
    if not (free.get("Ca") and free.get("S")):
        return None
    both = math.log10(free["Ca"]) + math.log10(free["S"]) + 2 * log_activity(2, strength)
    return both - LOG_KSP_GYPSUM


def brushite_index(nutrients_mg_per_l: Mapping[str, float], ph: float) -> float | None:
    """The saturation index of CaHPO4.2H2O at a pH (0 to 14); None without calcium or phosphate. ValueError outside."""
    require("ph", ph, 0, 14)
    free, strength = _free(nutrients_mg_per_l)
    if not (free.get("Ca") and free.get("P")):
        return None
    log_calcium = math.log10(free["Ca"]) + log_activity(2, strength)
    log_h2po4 = math.log10(_h2po4_activity(free, strength, ph))
    log_po4 = log_h2po4 - _PK_H2PO4 - _PK_HPO4 + 2 * ph
    return log_calcium + log_po4 - ph - LOG_KSP_BRUSHITE


def _h2po4_activity(free: Mapping[str, float], strength: float, ph: float) -> float:
    """Of the whole phosphate, shared over H2PO4-, HPO4-- and their pairs with calcium and magnesium."""
    one, two = 10 ** log_activity(1, strength), 10 ** log_activity(2, strength)
    hpo4 = 10 ** (ph - _PK_H2PO4)  # activity, with that of H2PO4- as 1
    per_activity = 1 / one + hpo4 / two
    for ion in ("Ca", "Mg"):
        activity = free.get(ion, 0.0) * two
        per_activity += activity * (10 ** _LOG_K_WITH_HPO4[ion] * hpo4 + 10 ** _LOG_K_WITH_H2PO4[ion] / one)
    return free["P"] / per_activity


def _free(nutrients_mg_per_l: Mapping[str, float]) -> tuple[dict[str, float], float]:
    free, strength = free_ions(_mol_per_l(nutrients_mg_per_l))
    return free, min(strength, MOST_STRENGTH)


def _mol_per_l(nutrients_mg_per_l: Mapping[str, float]) -> dict[str, float]:
    ions = mmol_per_l(nutrients_mg_per_l)
    ions["NO3-N"] = ions.get("NO3-N", 0.0) + ions.pop("N", 0.0)
    return {ion: mmol / 1000 for ion, mmol in ions.items() if ion in LIMITING_CONDUCTIVITY}
