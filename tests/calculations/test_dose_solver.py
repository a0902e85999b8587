"""Doses for a target: recipes recovered, limits kept, misses explained."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from growlog.calculations.dose_solver import Choice, Solution, solve_doses, solve_rounded
from growlog.calculations.dose_units import DosePerLitre
from growlog.calculations.nutrients import elements
from growlog.calculations.products import Product, mix
from growlog.services.mixing import ready_salts
from tests.calculations.test_products import RECIPES

SALTS = {salt.formula: salt.product for salt in ready_salts()}
# Steiner (1984), The universal nutrient solution: the only weights, in g/L, of these five salts; from memory.
STEINER = {
    "Ca(NO3)2.4H2O": 1.062657, "KNO3": 0.303307, "KH2PO4": 0.136084, "K2SO4": 0.261379, "MgSO4.7H2O": 0.492932,
}  # fmt: skip
FIVE = [Choice(SALTS[f], "g") for f in STEINER]
TARGET = {"Ca": 180.351, "P": 30.9738, "Mg": 48.61, "N": 168.084, "K": 273.6881}


def amounts(solution: Solution) -> list[float]:
    """The doses as numbers."""
    return [dose.amount for dose in solution.doses]


def test_a_recipe_s_weights_are_recovered_from_its_elements() -> None:
    solution = solve_doses(FIVE, TARGET)
    assert amounts(solution) == pytest.approx(list(STEINER.values()), rel=1e-2)
    assert solution.unmet == ()
    assert solution.nutrients_mg_per_l["S"] == pytest.approx(112.2, rel=5e-3)  # falls out, without a target


def test_trace_elements_are_recovered_beside_the_main_ones() -> None:
    # Hoagland and Arnon (1950), Circular 347, in g/L of feed.
    grams = {"KNO3": 0.50551, "Ca(NO3)2.4H2O": 1.18073, "KH2PO4": 0.136084, "MgSO4.7H2O": 0.492932, "H3BO3": 0.00286}
    grams |= {"MnCl2.4H2O": 0.00181, "ZnSO4.7H2O": 0.00022, "CuSO4.5H2O": 0.00008}
    feed = mix([(SALTS[f], DosePerLitre(g, "g")) for f, g in grams.items()])
    target = {e: mg for e, mg in elements(feed.nutrients_mg_per_l).items() if e not in ("S", "Cl")}
    solution = solve_doses([Choice(SALTS[f], "g") for f in grams], target)
    assert amounts(solution) == pytest.approx(list(grams.values()), rel=1e-2)


def test_a_recipe_of_ten_salts_is_recovered_from_its_elements() -> None:
    # Brechner and Both, Hydroponic Lettuce Handbook (n.d.), from memory.
    grams = RECIPES["Cornell-CEA-lettuce"]
    feed = mix([(SALTS[f], DosePerLitre(g, "g")) for f, g in grams.items()])
    solution = solve_doses([Choice(SALTS[f], "g") for f in grams], elements(feed.nutrients_mg_per_l))
    assert amounts(solution) == pytest.approx(list(grams.values()), rel=1e-2)


def test_what_rounding_takes_off_its_target_says_so() -> None:
    solution = solve_rounded([Choice(SALTS["KNO3"], "g", step_per_l=0.1)], {"K": 95})
    assert amounts(solution) == pytest.approx([0.2])
    assert "Rounding" in solution.unmet[0].reason


def test_the_water_counts_towards_the_target() -> None:
    solution = solve_doses([Choice(SALTS["Ca(NO3)2.4H2O"], "g")], {"Ca": 100}, {"Ca": 60})
    assert amounts(solution)[0] == pytest.approx(0.04 / 0.16972, rel=1e-4)
    over = solve_doses([Choice(SALTS["Ca(NO3)2.4H2O"], "g")], {"Ca": 100}, {"Ca": 160})
    assert amounts(over) == [0]
    assert "water alone" in over.unmet[0].reason


def test_an_element_without_a_product_is_said() -> None:
    solution = solve_doses([Choice(SALTS["KNO3"], "g")], {"K": 100, "Fe": 2})
    assert [(miss.element, miss.reason) for miss in solution.unmet] == [("Fe", "No product here brings Fe.")]


def test_an_element_held_back_by_another_is_said() -> None:
    solution = solve_doses([Choice(SALTS["KNO3"], "g")], {"K": 300, "N": 50})
    reasons = {miss.element: miss.reason for miss in solution.unmet}
    assert reasons["K"] == "Every product with K here also brings N."
    assert reasons["N"] == f"It comes with K in {SALTS['KNO3'].name}."


def test_a_limit_is_kept_and_said() -> None:
    solution = solve_doses([Choice(SALTS["KNO3"], "g", highest_per_l=0.2)], {"K": 300})
    assert amounts(solution) == pytest.approx([0.2])
    assert "highest" in solution.unmet[0].reason


def test_a_locked_dose_is_kept_and_the_others_fit_around_it() -> None:
    locked = [Choice(SALTS["KNO3"], "g", locked_per_l=0.1), Choice(SALTS["K2SO4"], "g")]
    assert amounts(solve_doses(locked, {"K": 100})) == pytest.approx([0.1, (100 - 38.672) / 448.75], rel=1e-3)


def test_rounded_doses_are_whole_steps_and_the_rest_takes_up_the_error() -> None:
    steps = [Choice(c.product, "g", step_per_l=s) for c, s in zip(FIVE, (0.01, 0.05, 0.01, 0.01, 0.01), strict=True)]
    solution = solve_rounded(steps, TARGET)
    for dose, choice in zip(solution.doses, steps, strict=True):
        assert dose.amount / choice.step_per_l == pytest.approx(round(dose.amount / choice.step_per_l), abs=1e-9)
    assert elements(solution.nutrients_mg_per_l)["K"] == pytest.approx(TARGET["K"], rel=0.03)


def test_a_product_of_unknown_content_is_left_out() -> None:
    assert amounts(solve_doses([Choice(Product("tonic"), "g"), FIVE[1]], {"K": 100}))[0] == 0


@pytest.mark.parametrize(
    ("target", "highest", "named"), [({}, None, "target"), ({"K": -1}, None, "target of K"), ({"K": 1}, -1, "highest")]
)
def test_impossible_targets_and_limits_are_refused_by_name(
    target: dict[str, float], highest: float | None, named: str
) -> None:
    with pytest.raises(ValueError, match=named):
        solve_doses([Choice(SALTS["KNO3"], "g", highest)], target)


@settings(max_examples=60)
@given(
    st.lists(st.sampled_from(sorted(SALTS)), min_size=1, max_size=6, unique=True),
    st.dictionaries(st.sampled_from(["N", "P", "K", "Ca", "Mg", "S", "Fe"]), st.floats(0, 500), min_size=1),
    st.dictionaries(st.sampled_from(["K", "Ca", "Mg"]), st.floats(0, 300)),
)
def test_a_target_however_infeasible_never_gives_a_negative_dose(
    formulas: list[str], target: dict[str, float], water: dict[str, float]
) -> None:
    solution = solve_doses([Choice(SALTS[f], "g") for f in formulas], target, water)
    assert all(dose.amount >= 0 for dose in solution.doses)
    assert all(miss.reason for miss in solution.unmet)
