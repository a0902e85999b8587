"""The mixer as a whole: results, refusals beside their field, warnings."""

from dataclasses import replace
from pathlib import Path

import pytest

from growlog.calculations.products import LIQUID, SOLID, Product
from growlog.calculations.water import Water
from growlog.records.problems import RecordRefused
from growlog.services.mix_checks import mix_problems, product_problems
from growlog.services.mixing import (
    SolverWishes,
    crop_targets,
    doses_for_target,
    read_mix,
    ready_salts,
    strength_for_target_ec,
    work_out,
    write_mix,
)
from growlog.sharing.mix_file import MixDose, MixFile

SALTS = {salt.formula: salt.product for salt in ready_salts()}
# Hoagland and Arnon (1950), Circular 347, g/L of the main salts.
GRAMS = {"KH2PO4": 0.136084, "KNO3": 0.50551, "Ca(NO3)2.4H2O": 1.18073, "MgSO4.7H2O": 0.492932}
HOAGLAND = MixFile(
    tank_l=100,
    products=tuple(SALTS[f] for f in GRAMS),
    doses=tuple(MixDose(SALTS[f].name, g, "g/L") for f, g in GRAMS.items()),
)
LEAF = Product("leaf part", LIQUID, "w/v", {"n": 3}, label_max_per_l=4)


def test_a_recipe_gives_its_printed_elements_and_the_ec_of_phreeqc() -> None:
    result = work_out(HOAGLAND)
    printed = {"N": 210, "P": 31, "K": 235, "Ca": 200, "Mg": 48.6, "S": 64}  # as tabulated after Circular 347
    assert result.elements_mg_per_l == pytest.approx(printed, rel=5e-3)
    assert result.ec.estimate == pytest.approx(2.16, rel=0.03)  # PHREEQC, US Geological Survey
    assert abs(result.charges.difference_percent) < 0.5
    assert result.doses[1].tank_amount == pytest.approx(50.551)


def test_half_strength_halves_what_the_products_bring_but_not_the_water() -> None:
    watered = replace(HOAGLAND, water=Water({"Ca": 40}), strength=0.5)
    assert work_out(watered).elements_mg_per_l["Ca"] == pytest.approx(40 + 200.4 / 2, rel=1e-3)
    assert work_out(watered).doses[1].tank_amount == pytest.approx(50.551 / 2)


def test_a_target_gives_the_doses_of_the_recipe() -> None:
    elements = {e: mg for e, mg in work_out(HOAGLAND).elements_mg_per_l.items() if e != "S"}
    result = work_out(replace(HOAGLAND, doses=(), target_mg_per_l=elements))
    assert [d.amount for d in result.doses] == pytest.approx(list(GRAMS.values()), rel=1e-2)
    assert result.unmet == ()


def test_wishes_lock_exclude_and_round_to_the_scale() -> None:
    wished = replace(HOAGLAND, doses=(), target_mg_per_l={"K": 235, "N": 210, "Ca": 200, "P": 31})
    saltpetre, phosphate = SALTS["KNO3"].name, SALTS["KH2PO4"].name
    wishes = SolverWishes({saltpetre: 0.4}, frozenset({phosphate}), {"Ca": 2.0}, smallest_g=0.5)
    doses, unmet = doses_for_target(wished, wishes)
    amounts = {dose.product: dose.amount for dose in doses}
    assert amounts[saltpetre] == 0.4
    assert amounts[phosphate] == 0
    for amount in amounts.values():
        assert amount * 100 / 0.5 == pytest.approx(round(amount * 100 / 0.5), abs=1e-6)
    assert "P" in {miss.element for miss in unmet}


def test_a_strength_is_found_for_an_ec() -> None:
    strength = strength_for_target_ec(HOAGLAND, 1.2)
    assert work_out(replace(HOAGLAND, strength=strength)).ec.estimate == pytest.approx(1.2, rel=1e-4)


def test_the_ec_of_a_water_counts_where_its_ions_are_not_known() -> None:
    plain = work_out(HOAGLAND).ec.estimate
    assert work_out(replace(HOAGLAND, water=Water(ec_ms_per_cm=0.5))).ec.estimate == pytest.approx(plain + 0.5)


def test_an_acid_takes_up_alkalinity_and_counts_as_a_nutrient() -> None:
    acid = Product("nitric acid", LIQUID, "w/v", {"n_nitrate": 10})
    water = Water({"Ca": 40.078, "Mg": 12.1525}, alkalinity_mg_per_l_caco3=150.13)
    sour = MixFile(products=(acid,), doses=(MixDose("nitric acid", 0.28014, "mL/L"),), water=water)
    result = work_out(sour)
    assert result.elements_mg_per_l["N"] == pytest.approx(28.014)
    # 3 meq/L of alkalinity less 2 meq/L of acid leave 1 meq/L, beside 2 meq/L nitrate.
    assert result.charges.anions_meq_per_l == pytest.approx(3, rel=1e-3)
    base = Product("base", LIQUID, "w/v", {"k": 39.0983})
    both = replace(sour, water=None, products=(acid, base), doses=(*sour.doses, MixDose("base", 0.2, "mL/L")))
    assert not any("more acid" in w for w in work_out(both).warnings)  # 2 meq/L of either
    too_sour = replace(sour, doses=(MixDose("nitric acid", 1, "mL/L"),))
    assert any("more acid" in w for w in work_out(too_sour).warnings)


def test_an_unknown_product_is_named_and_not_counted_as_zero() -> None:
    tonic = Product("tonic", LIQUID, "w/v")
    dosed = replace(
        HOAGLAND, products=(*HOAGLAND.products, tonic), doses=(*HOAGLAND.doses, MixDose("tonic", 1, "mL/L"))
    )
    result = work_out(dosed)
    assert result.unknown_products == ("tonic",)
    assert any("tonic" in w for w in result.warnings)


def test_more_than_the_label_allows_is_warned_of_and_allowed() -> None:
    over = MixFile(products=(LEAF,), doses=(MixDose("leaf part", 20, "mL/gal_us"),))
    warnings = work_out(over).warnings
    assert any("above the maximum" in w for w in warnings)
    assert any("without its form" in w for w in warnings)
    assert not any("maximum" in w for w in work_out(replace(over, doses=(MixDose("leaf part", 4, "mL/L"),))).warnings)


def test_a_solid_by_the_spoon_is_held_against_its_label_in_grams() -> None:
    salt = Product("salt", SOLID, "w/w", {"k": 10}, density_g_per_ml=1.0, label_max_per_l=1.0)
    spoons = MixFile(products=(salt,), doses=(MixDose("salt", 1, "tsp/gal_us"),))
    assert any("above the maximum" in w for w in work_out(spoons).warnings)


def test_two_kinds_of_gallon_are_asked_about() -> None:
    both = MixFile(
        products=(LEAF,), doses=(MixDose("leaf part", 1, "mL/gal_us"), MixDose("leaf part", 1, "mL/gal_imp"))
    )
    assert any("gallons" in w for w in work_out(both).warnings)


@pytest.mark.parametrize(
    ("product", "field"),
    [
        (Product("a", SOLID, "w/w", {"k2o": 101}), "k2o"),
        (Product("a", LIQUID, "w/w", {"k2o": 5}), "density_g_per_ml"),
        (Product("a", LIQUID, "", {"k2o": 5}), "basis"),
        (Product("a", SOLID, "w/v", {"k2o": 5}), "basis"),
        (Product("a", "jelly"), "form"),
        (Product("a", SOLID, "w/w", {"k": 60, "p": 60}), "analysis"),
        (Product("a", SOLID, "w/w", {"k": 6, "k2o": 6}), "analysis"),
        (Product("a", LIQUID, "w/w", {"k": 6}, 0.01), "density_g_per_ml"),
        (Product("a", label_max_per_l=0), "label_max_per_l"),
    ],
)
def test_a_wrong_label_is_told_beside_its_field(product: Product, field: str) -> None:
    assert [p.field for p in product_problems(product)] == [field]


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"tank_l": 0}, "tank_l"),
        ({"smallest_g": 0}, "smallest_g"),
        ({"doses": (MixDose("Potassium nitrate", 1, "g/gal"),)}, "unit"),
        ({"strength": 0}, "strength"),
        ({"ph": 15}, "ph"),
        ({"doses": ()}, "dose"),
        ({"doses": (MixDose("nobody", 1, "g/L"),)}, "product"),
        ({"doses": (MixDose("Potassium nitrate", -1, "g/L"),)}, "amount"),
        ({"doses": (MixDose("Potassium nitrate", 1, "pinch"),)}, "unit"),
        ({"doses": (MixDose("Potassium nitrate", 1001, "g/L"),)}, "amount"),
        ({"doses": (MixDose("Potassium nitrate", 100, "g/L"),), "strength": 11}, "amount"),
        ({"doses": (MixDose("Potassium nitrate", 1, "tsp/gal_us"),)}, "density_g_per_ml"),
        ({"doses": (MixDose("Potassium nitrate", 1, "g/tank"),), "tank_l": None}, "tank_l"),
        ({"target_mg_per_l": {"N": 1}}, "target"),
        ({"target_mg_per_l": {"N": -1}, "doses": ()}, "target"),
        ({"water": Water(ph=20)}, "water"),
        ({"products": (*HOAGLAND.products, SALTS["KNO3"])}, "name"),
    ],
)
def test_a_wrong_mix_is_refused_beside_its_field(changed: dict[str, object], field: str) -> None:
    wrong = replace(HOAGLAND, **changed)  # type: ignore[arg-type]
    assert [p.field for p in mix_problems(wrong)] == [field]
    with pytest.raises(RecordRefused):
        work_out(wrong)


def test_a_concentrate_has_no_more_than_a_rough_ec_and_says_so() -> None:
    strong = work_out(
        replace(HOAGLAND, strength=20, doses=tuple(replace(d, amount=d.amount * 5) for d in HOAGLAND.doses))
    )
    assert any("rough guess" in w for w in strong.warnings)
    assert not any("rough guess" in w for w in work_out(HOAGLAND).warnings)


def test_a_saved_mix_is_read_again(tmp_path: Path) -> None:
    write_mix(tmp_path / "mix.toml", HOAGLAND)
    assert work_out(read_mix(tmp_path / "mix.toml")).ec == work_out(HOAGLAND).ec


def test_an_unreadable_file_is_named(tmp_path: Path) -> None:
    (tmp_path / "mix.toml").write_bytes(b"\xff\xfe")
    with pytest.raises(RecordRefused, match=r"mix\.toml"):
        read_mix(tmp_path / "mix.toml")
    (tmp_path / "mix.toml").write_text("tank_l = 'x'", encoding="utf-8")
    with pytest.raises(RecordRefused, match="tank_l"):
        read_mix(tmp_path / "mix.toml")


def test_crop_targets_carry_their_source_and_certainty() -> None:
    tomato = [t for t in crop_targets() if t.crop == "tomato" and t.parameter == "EC"]
    assert tomato
    assert all(t.source and t.certainty in ("high", "medium", "low") for t in tomato)
