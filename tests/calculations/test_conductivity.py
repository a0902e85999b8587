"""EC: single salts against measured standards, whole recipes against PHREEQC."""

import pytest

from growlog.calculations.conductivity import (
    LIMITING_CONDUCTIVITY,
    charge_balance,
    conductivity_ms_per_cm,
    estimate_ec,
    meter_ppm,
    strength_for_ec,
)
from growlog.calculations.dose_units import DosePerLitre
from growlog.calculations.nutrients import ATOMIC_WEIGHTS, element_of, elements, mmol_per_l
from growlog.calculations.products import mix
from tests.calculations.test_products import RECIPES, SALTS
from tests.reference import published

NAMES = {"NO3-": "NO3-N", "NH4+": "NH4-N", "H2PO4-": "P", "K+": "K", "Ca2+": "Ca", "Mg2+": "Mg", "SO4 2-": "S"}
ALL_IONS = NAMES | {"Cl-": "Cl", "Na+": "Na", "HCO3-": "HCO3-", "H+": "H+", "Mn2+": "Mn", "Zn2+": "Zn", "Cu2+": "Cu"}


@pytest.mark.parametrize("row", [r for r in published("ionic_conductivity") if r["ion"] in ALL_IONS], ids=str)
def test_limiting_conductivities_are_the_handbook_s(row: dict[str, str]) -> None:
    # CRC Handbook of Chemistry and Physics, 95th edition (2014).
    assert LIMITING_CONDUCTIVITY[ALL_IONS[row["ion"]]] == float(row["lambda0_molar_S_cm2_per_mol"])


@pytest.mark.parametrize(
    ("ions", "measured"),
    [
        # KCl: meter standards and CRC Handbook; the others: CRC Handbook, 97th edition, Equivalent conductivity of
        # electrolytes.
        ({"K": 10, "Cl": 10}, 1.413),
        ({"K": 20, "Cl": 20}, 2.7654),
        ({"K": 100, "Cl": 100}, 12.88),
        ({"Na": 10, "Cl": 10}, 1.1845),
        ({"Ca": 5, "Cl": 10}, 1.203),
        ({"Mg": 5, "Cl": 10}, 1.1449),
        ({"Na": 10, "S": 5}, 1.1238),
    ],
)
def test_a_single_salt_reads_its_standard(ions: dict[str, float], measured: float) -> None:
    assert conductivity_ms_per_cm(ions) == pytest.approx(measured, rel=0.02)


def recipe_ions(recipe: str) -> dict[str, float]:
    """mmol/L of a recipe that is given in ions."""
    ions = {}
    for row in published("recipes"):
        if row["recipe"] == recipe and row["kind"] == "ion":
            name = NAMES[row["item"]]
            charge = 2 if row["unit"] == "meq/L" and row["item"] in ("Ca2+", "Mg2+", "SO4 2-") else 1
            ions[name] = float(row["amount"]) / charge
    return ions


HOAGLAND = {"NO3-N": 15, "P": 1, "K": 6, "Ca": 5, "Mg": 2, "S": 2}
WHOLE = {
    "Hoagland-1": HOAGLAND,
    "Knop": {"NO3-N": 14.661, "P": 1.837, "K": 4.31, "Ca": 6.094, "Mg": 1.014, "S": 1.014},
} | {
    name: recipe_ions(name)
    for name in (
        "Steiner-1984", "Sonneveld-cucumber", "Sonneveld-tomato-2009", "Sonneveld-sweet-pepper", "Sonneveld-lettuce",
        "Sonneveld-bean",
    )
}  # fmt: skip
WHOLE["Cornell-CEA-lettuce"] = {
    ion: mmol
    for ion, mmol in mmol_per_l(
        mix([(SALTS[f], DosePerLitre(g, "g")) for f, g in RECIPES["Cornell-CEA-lettuce"].items()]).nutrients_mg_per_l
    ).items()
    if ion in NAMES.values()
}
# Computed with PHREEQC of the US Geological Survey, ammonium counted as potassium.
BY_PHREEQC = {
    "Hoagland-1": 2.16, "Knop": 2.00, "Steiner-1984": 2.11, "Sonneveld-cucumber": 2.28, "Sonneveld-tomato-2009": 2.75,
    "Sonneveld-sweet-pepper": 2.24, "Sonneveld-lettuce": 2.66, "Sonneveld-bean": 1.76, "Cornell-CEA-lettuce": 1.39,
}  # fmt: skip


@pytest.mark.parametrize("recipe", WHOLE)
def test_a_whole_recipe_agrees_with_phreeqc(recipe: str) -> None:
    assert conductivity_ms_per_cm(WHOLE[recipe]) == pytest.approx(BY_PHREEQC[recipe], rel=0.03)


@pytest.mark.slow
@pytest.mark.parametrize("recipe", WHOLE)
def test_a_whole_recipe_agrees_with_phreeqc_run_here(recipe: str) -> None:
    phreeqpython = pytest.importorskip("phreeqpython")
    ions = dict(WHOLE[recipe])
    potassium = ions["K"] + ions.pop("NH4-N", 0.0)
    names = {"NO3-N": "N(5)", "Ca": "Ca", "Mg": "Mg", "S": "S(6)", "P": "P"}
    content = {names[ion]: mmol for ion, mmol in ions.items() if ion in names} | {"K": potassium}
    solution = phreeqpython.PhreeqPython().add_solution({"units": "mmol/l", "pH": 5.0, "temp": 25} | content)
    try:
        assert conductivity_ms_per_cm(WHOLE[recipe]) == pytest.approx(solution.sc / 1000, rel=0.03)
    finally:
        solution.forget()


def test_the_plain_sum_of_limiting_conductivities_reads_too_high() -> None:
    plain = sum(LIMITING_CONDUCTIVITY[ion] * mmol for ion, mmol in HOAGLAND.items()) / 1000
    assert 1.14 < plain / conductivity_ms_per_cm(HOAGLAND) < 1.30


def mg_per_l(ions: dict[str, float]) -> dict[str, float]:
    """mmol/L into mg/L."""
    return {ion: mmol * ATOMIC_WEIGHTS[element_of(ion)] for ion, mmol in ions.items()}


@pytest.mark.parametrize("recipe", [name for name in WHOLE if name.startswith("Sonneveld")])
def test_a_recipe_in_mmol_is_the_printed_one_in_mg(recipe: str) -> None:
    rows = [row for row in published("recipe_ppm") if row["recipe"] == recipe]
    assert len(rows) == 6
    found = elements(mg_per_l(WHOLE[recipe]))
    for row in rows:
        assert found[row["element"]] == pytest.approx(float(row["computed"]), rel=5e-3), row["id"]


def test_the_band_holds_the_estimate_and_widens_where_charges_miss() -> None:
    whole = estimate_ec(mg_per_l(HOAGLAND))
    assert whole.low == pytest.approx(0.9 * whole.estimate)
    assert whole.high == pytest.approx(1.1 * whole.estimate)
    half_known = estimate_ec(mg_per_l({"K": 6, "Ca": 5}))
    assert half_known.low < 0.6 * half_known.estimate
    assert estimate_ec({}).estimate == 0


def test_a_complete_recipe_balances_its_charges() -> None:
    # Steiner 1984 has 20 meq/L on either side.
    balance = charge_balance(mg_per_l(WHOLE["Steiner-1984"]))
    assert balance.cations_meq_per_l == pytest.approx(20)
    assert balance.difference_percent == pytest.approx(0, abs=1e-6)
    assert charge_balance({}).difference_percent == 0


def test_the_scales_of_meters_are_multiples_of_the_ec() -> None:
    # 640: Faber, UC ANR; 500 and 700: instrument makers.
    assert meter_ppm(2.4) == pytest.approx({500: 1200, 640: 1536, 700: 1680})


def test_the_strength_for_an_ec_reads_that_ec() -> None:
    def ec_at(strength: float) -> float:
        return conductivity_ms_per_cm({ion: mmol * strength for ion, mmol in HOAGLAND.items()})

    assert ec_at(strength_for_ec(ec_at, 1.2)) == pytest.approx(1.2, rel=1e-6)
    with pytest.raises(ValueError, match="target_ms_per_cm"):
        strength_for_ec(ec_at, -1)


def test_the_ec_rises_with_the_strength_however_strong() -> None:
    read = [conductivity_ms_per_cm({"K": c, "NO3-N": c, "Ca": c, "S": c}) for c in (1, 10, 100, 1000, 10_000, 1e6)]
    assert read == sorted(read)
    plain_sum = 1e6 * sum(LIMITING_CONDUCTIVITY[ion] for ion in ("K", "NO3-N", "Ca", "S")) / 1000
    assert read[-1] < plain_sum


def test_a_negative_ion_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="K -1"):
        conductivity_ms_per_cm({"K": -1})
