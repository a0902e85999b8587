"""The EC that a feed should read at 25 °C, from its ions, and the scales that meters show it on.

Sources: limiting conductivities from the CRC Handbook of Chemistry and Physics, 95th edition (2014); their fall with
concentration after Appelo, C. A. J. (2010) Specific conductance: how to calculate, to use, and the pitfalls; activities
after Davies, C. W. (1962) Ion Association; ion pairs with the constants of Parkhurst, D. L. and Appelo, C. A. J. (2013)
Description of input and examples for PHREEQC version 3, US Geological Survey.
"""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from growlog.calculations.nutrients import ION_CHARGES, meq_per_l, mmol_per_l

BICARBONATE, HYDROGEN = "HCO3-", "H+"
# S cm² per mol at 25 °C and infinite dilution, of the ion that each nutrient becomes.
LIMITING_CONDUCTIVITY: Mapping[str, float] = MappingProxyType(
    {
        "NO3-N": 71.42, "NH4-N": 73.5, "P": 36.0, "K": 73.48, "Ca": 118.94, "Mg": 106.0, "S": 160.0, "Cl": 76.31,
        "Na": 50.08, "Mn": 107.0, "Zn": 105.6, "Cu": 107.2, BICARBONATE: 44.5, HYDROGEN: 349.65,
    }
)  # fmt: skip
_CHARGES = {**{n: abs(z) for n, z in ION_CHARGES.items()}, BICARBONATE: 1, HYDROGEN: 1}
LOG_K_CASO4, LOG_K_MGSO4 = 2.30, 2.37
# Ionic strength in mol/L, some ten times that of a feed, beyond which activities are outside their range: an EC is then
# a rough guess, and of a saturation index only the sign counts.
MOST_STRENGTH = 0.5
METER_SCALES = (500, 640, 700)
# A judgement, not a published figure: the spread of the usual estimators around each other at feed strength.
BAND = 0.10


@dataclass(frozen=True)
class ChargeBalance:
    """Cations and anions in meq/L; difference_percent: cations minus anions in per cent of both together."""

    cations_meq_per_l: float
    anions_meq_per_l: float

    @property
    def difference_percent(self) -> float:
        """0 for a feed whose whole content is known; beyond ±10 a label leaves something out."""
        both = self.cations_meq_per_l + self.anions_meq_per_l
        return 100 * (self.cations_meq_per_l - self.anions_meq_per_l) / both if both else 0.0


@dataclass(frozen=True)
class EcEstimate:
    """mS/cm at 25 °C: the estimate and its band."""

    estimate: float
    low: float
    high: float


def charge_balance(
    nutrients_mg_per_l: Mapping[str, float], bicarbonate_meq: float = 0.0, hydrogen_meq: float = 0.0
) -> ChargeBalance:
    """The charges of a feed's ions; chelated iron, boron, silica, urea and nitrogen of unstated form carry none."""
    charges = meq_per_l(nutrients_mg_per_l).values()
    return ChargeBalance(
        sum(q for q in charges if q > 0) + hydrogen_meq, -sum(q for q in charges if q < 0) + bicarbonate_meq
    )


def conductivity_ms_per_cm(ions_mmol_per_l: Mapping[str, float]) -> float:
    """EC at 25 °C in mS/cm of ions given in mmol/L, by the keys of LIMITING_CONDUCTIVITY; others carry nothing.

    For feeds up to about 100 mmol/L of salts; ValueError for a negative amount. Sources: see the module.
    """
    for ion, mmol in ions_mmol_per_l.items():
        if not mmol >= 0:
            raise ValueError(f"{ion} {mmol:g} is outside 0 mmol/L and above")
    free, strength = free_ions({i: c / 1000 for i, c in ions_mmol_per_l.items() if i in LIMITING_CONDUCTIVITY})
    return sum(LIMITING_CONDUCTIVITY[ion] * _slowing(_CHARGES[ion], strength) * c for ion, c in free.items())


def estimate_ec(
    nutrients_mg_per_l: Mapping[str, float],
    bicarbonate_meq: float = 0.0,
    hydrogen_meq: float = 0.0,
    unexplained_ms_per_cm: float = 0.0,
) -> EcEstimate:
    """The EC of a feed in mS/cm at 25 °C with its band.

    unexplained_ms_per_cm: what the source water reads beyond the ions of its analysis. Nitrogen of unstated form is
    taken as nitrate. The band is 10 %, wider by half of what the charges miss.
    """
    ions = mmol_per_l(nutrients_mg_per_l)
    ions["NO3-N"] = ions.get("NO3-N", 0.0) + ions.pop("N", 0.0)
    estimate = conductivity_ms_per_cm({**ions, BICARBONATE: bicarbonate_meq, HYDROGEN: hydrogen_meq})
    estimate += unexplained_ms_per_cm
    missed = abs(charge_balance(nutrients_mg_per_l, bicarbonate_meq, hydrogen_meq).difference_percent) / 100
    share = min(BAND + missed / 2, 0.5)
    return EcEstimate(estimate, estimate * (1 - share), estimate * (1 + share))


def meter_ppm(ec_ms_per_cm: float) -> dict[int, float]:
    """What meters with the 500, 640 and 700 scale show for an EC; a scale of the meter, not mg/L of nutrients."""
    return {scale: ec_ms_per_cm * scale for scale in METER_SCALES}


def strength_for_ec(ec_of_strength: Callable[[float], float], target_ms_per_cm: float, highest: float = 20.0) -> float:
    """The strength (0 to highest) at which a mix reads the target EC, by halving; the EC must rise with strength.

    ValueError where the water alone reads more, or the highest strength less.
    """
    low, high = 0.0, highest
    weakest, strongest = ec_of_strength(low), ec_of_strength(high)
    if not weakest <= target_ms_per_cm <= strongest:
        raise ValueError(f"target_ms_per_cm {target_ms_per_cm:g} is outside {weakest:g} to {strongest:g} mS/cm")
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if ec_of_strength(middle) < target_ms_per_cm else (low, middle)
    return (low + high) / 2


def free_ions(total: Mapping[str, float]) -> tuple[dict[str, float], float]:
    """Ions in mol/L left over from the pairs CaSO4 and MgSO4, and the ionic strength; by repeated substitution.

    total: mol/L by the keys of LIMITING_CONDUCTIVITY.
    """
    free = dict(total)
    for _ in range(60):
        strength = sum(_CHARGES[ion] ** 2 * c for ion, c in free.items()) / 2
        both = 10 ** (2 * log_activity(2, strength))
        pairing = {"Ca": 10**LOG_K_CASO4 * both, "Mg": 10**LOG_K_MGSO4 * both}
        sulfate = free.get("S", 0.0)
        for ion in pairing.keys() & total.keys():
            free[ion] = total[ion] / (1 + pairing[ion] * sulfate)
        if "S" in total:
            free["S"] = total["S"] / (1 + sum(k * free.get(ion, 0.0) for ion, k in pairing.items()))
    return free, strength


def log_activity(charge: int, ionic_strength: float) -> float:
    """log10 of an ion's activity coefficient at 25 °C. ionic_strength: 0 to about 0.5 mol/L. Source: Davies (1962).

    Held from MOST_STRENGTH on, where the equation would turn upwards and beyond all measure.
    """
    ionic_strength = min(ionic_strength, MOST_STRENGTH)
    root = math.sqrt(ionic_strength)
    return -0.5085 * charge**2 * (root / (1 + root) - 0.3 * ionic_strength)


def _slowing(charge: int, ionic_strength: float) -> float:
    """The factor on a limiting conductivity: a power of the activity coefficient (Appelo 2010)."""
    ionic_strength = min(ionic_strength, MOST_STRENGTH)
    dilute = ionic_strength < 0.36 * charge
    power = 0.6 / math.sqrt(charge) if dilute else math.sqrt(ionic_strength) / charge
    return float(10 ** (power * log_activity(charge, ionic_strength)))
