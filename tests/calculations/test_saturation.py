"""Saturation of whole recipes, against PHREEQC."""

import pytest

from growlog.calculations.clashes import precipitation_warnings
from growlog.calculations.nutrients import ATOMIC_WEIGHTS, element_of
from growlog.calculations.saturation import brushite_index, gypsum_index, ionic_strength
from tests.calculations.test_conductivity import WHOLE


def mg_per_l(recipe: str, times: float = 1.0) -> dict[str, float]:
    """A recipe's nutrients, so many times as strong."""
    return {ion: times * mmol * ATOMIC_WEIGHTS[element_of(ion)] for ion, mmol in WHOLE[recipe].items()}


def test_hoagland_at_feed_strength_is_far_from_gypsum_and_below_calcium_phosphate() -> None:
    # PHREEQC of the US Geological Survey with minteq.v4 (constants of NIST 46): gypsum -1.1, brushite at pH 5.8 -0.55.
    assert gypsum_index(mg_per_l("Hoagland-1")) == pytest.approx(-1.1, abs=0.06)
    assert brushite_index(mg_per_l("Hoagland-1"), 5.8) == pytest.approx(-0.55, abs=0.06)


def test_hoagland_s_salts_in_one_tank_reach_gypsum_at_about_eight_times() -> None:
    # PHREEQC: 7.9 times (phreeqc.dat) and 8.3 times (minteq.v4).
    below, above = gypsum_index(mg_per_l("Hoagland-1", 7)), gypsum_index(mg_per_l("Hoagland-1", 9))
    assert below is not None
    assert above is not None
    assert below < 0 < above
    assert (gypsum_index(mg_per_l("Hoagland-1", 100)) or 0) > 0  # outside the activity model: the sign only


@pytest.mark.parametrize("recipe", WHOLE)
def test_each_recipe_is_clear_as_a_feed_and_clouds_above_ph_6_and_a_half(recipe: str) -> None:
    assert precipitation_warnings(mg_per_l(recipe), ph=5.5) == ()
    assert len(precipitation_warnings(mg_per_l(recipe), ph=6.6)) == 1
    assert precipitation_warnings(mg_per_l(recipe)) == ()


@pytest.mark.parametrize("recipe", WHOLE)
def test_each_recipe_as_one_stock_is_warned_of_for_both(recipe: str) -> None:
    stock = precipitation_warnings(mg_per_l(recipe, 100))
    assert [any(word in warning for warning in stock) for word in ("gypsum", "phosphate")] == [True, True]


def test_without_its_ions_nothing_falls_out() -> None:
    assert gypsum_index({"Ca": 100}) is None
    assert brushite_index({"P": 100}, 6) is None
    assert ionic_strength({}) == 0
    with pytest.raises(ValueError, match="ph 15"):
        brushite_index({"P": 100, "Ca": 10}, 15)


_BRUSHITE = """
PHASES
Brushite
    CaHPO4:2H2O = Ca+2 + H+ + PO4-3 + 2H2O
    log_k -18.995
END
"""


@pytest.mark.slow
@pytest.mark.parametrize("recipe", WHOLE)
def test_each_recipe_s_saturation_agrees_with_phreeqc_run_here(recipe: str) -> None:
    phreeqpython = pytest.importorskip("phreeqpython")
    program = phreeqpython.PhreeqPython()
    program.ip.run_string(_BRUSHITE)
    ions = dict(WHOLE[recipe])
    potassium = ions["K"] + ions.pop("NH4-N", 0.0)
    names = {"NO3-N": "N(5)", "Ca": "Ca", "Mg": "Mg", "S": "S(6)", "P": "P"}
    content = {names[ion]: mmol for ion, mmol in ions.items() if ion in names} | {"K": potassium}
    for ph in (5.0, 5.8, 6.5):
        solution = program.add_solution({"units": "mmol/l", "pH": ph, "temp": 25} | content)
        assert gypsum_index(mg_per_l(recipe)) == pytest.approx(solution.si("Gypsum"), abs=0.03)
        assert brushite_index(mg_per_l(recipe), ph) == pytest.approx(solution.si("Brushite"), abs=0.1)
        solution.forget()
