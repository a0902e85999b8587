"""Labels into elements: factors and salts against published weights."""

import re

import periodictable
import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.nutrients import (
    ATOMIC_WEIGHTS,
    elements,
    formula_weight,
    meq_per_l,
    mmol_per_l,
    nutrient_factor,
    nutrients_from_label,
)
from growlog.calculations.ratios import Mark, ammonium_share_percent, parts_of
from growlog.services.mixing import ReadySalt, ready_salts


@pytest.mark.parametrize("element", ATOMIC_WEIGHTS)
def test_atomic_weights_are_the_published_ones(element: str) -> None:
    # periodictable carries Prohaska et al. (2022), Pure Appl. Chem. 94.
    published_weight = getattr(periodictable, element).mass
    assert ATOMIC_WEIGHTS[element] == pytest.approx(published_weight, rel=1e-4)


@pytest.mark.parametrize(
    ("stated_as", "printed"),
    [
        ("p2o5", 0.4364),  # International Fertilizer Association factors; e-GRO Edible Alert 3(5), 2018
        ("k2o", 0.8302),  # the same, off by 0.006 % in the fourth digit
        ("mgo", 0.6032),  # Virginia Tech SPES-201NP
        ("cao", 1 / 1.3992),  # Virginia Tech SPES-201NP
        ("so4", 0.3339),  # Virginia Tech SPES-201NP
        ("so3", 1 / 2.497),  # from memory
        ("no3", 0.226),  # from memory
        ("caco3", 0.4004),  # from memory: 0.40
    ],
)
def test_oxide_factors_are_the_printed_ones(stated_as: str, printed: float) -> None:
    assert nutrient_factor(stated_as)[1] == pytest.approx(printed, rel=1e-3)


def per_cent_by_formula(formula: str) -> dict[str, float]:
    """Per cent by weight of each element of a formula such as CaSO4.2H2O."""
    weights: dict[str, float] = {}
    for part in formula.split("."):
        times, compound = re.fullmatch(r"(\d*)(.+)", part).groups()  # type: ignore[union-attr]
        for atom, count in periodictable.formula(compound).atoms.items():
            weights[str(atom)] = weights.get(str(atom), 0.0) + atom.mass * count * int(times or 1)
    return {element: 100 * weight / sum(weights.values()) for element, weight in weights.items()}


@pytest.mark.parametrize("salt", ready_salts(), ids=lambda s: s.product.name)
def test_ready_salts_hold_what_their_formula_says(salt: ReadySalt) -> None:
    if salt.product.name.endswith("(label values)"):
        pytest.skip("a label, no formula")
    expected = per_cent_by_formula(salt.formula)
    for element, per_cent in elements(nutrients_from_label(salt.product.analysis_pct)).items():
        assert per_cent == pytest.approx(expected[element], rel=5e-3)


def test_the_formula_weight_of_saltpetre_is_the_handbook_one() -> None:
    assert formula_weight({"K": 1, "N": 1, "O": 3}) == pytest.approx(101.10, abs=0.01)  # CRC Handbook
    with pytest.raises(ValueError, match="Xx"):
        formula_weight({"Xx": 1})


def test_total_nitrogen_keeps_what_no_form_accounts_for() -> None:
    assert nutrients_from_label({"n": 5, "n_nitrate": 3}) == {"NO3-N": 3, "N": 2}
    assert nutrients_from_label({"n": 15.5, "n_nitrate": 14.4, "n_ammonium": 1.1}) == {"NO3-N": 14.4, "NH4-N": 1.1}


@pytest.mark.parametrize(
    ("label", "named"),
    [({"n": 2, "n_nitrate": 3}, "n 2"), ({"p": 1, "p2o5": 2}, "p2o5"), ({"k2o": -1}, "k2o"), ({"xyz": 1}, "xyz")],
)
def test_a_label_that_contradicts_itself_is_refused_by_name(label: dict[str, float], named: str) -> None:
    with pytest.raises(ValueError, match=re.escape(named)):
        nutrients_from_label(label)


def test_calcium_in_milliequivalents_is_the_printed_one() -> None:
    # Faber, B. (UC ANR Cooperative Extension): 200 mg/L Ca are 10 meq/L (he takes 20 for half of calcium).
    assert meq_per_l({"Ca": 200})["Ca"] == pytest.approx(10, rel=5e-3)
    assert mmol_per_l({"Ca": 200})["Ca"] == pytest.approx(4.9903, rel=1e-4)


def test_ratios_are_by_weight_and_none_where_there_is_nothing() -> None:
    assert parts_of({"K": 300, "Ca": 150, "Mg": 50}, ("K", "Ca", "Mg"), "Mg") == (6, 3, 1)
    assert parts_of({"K": 300}, ("K", "Ca"), "Ca") is None
    assert ammonium_share_percent({"NO3-N": 90, "NH4-N": 10}) == 10
    assert ammonium_share_percent({"K": 1}) is None
    assert Mark("K", 250, 200, 300).share == 0.5
    assert Mark("K", 250, 200, 200).share is None


@given(st.dictionaries(st.sampled_from(["n_nitrate", "p2o5", "k2o", "cao", "mgo", "so3"]), st.floats(0.01, 20)))
def test_elements_never_weigh_more_than_the_label(label: dict[str, float]) -> None:
    assert sum(nutrients_from_label(label).values()) <= sum(label.values()) + 1e-9
