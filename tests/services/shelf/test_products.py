"""Products on the shelf: labels checked per field, written, changed, taken back."""

from dataclasses import replace

import pytest

from growlog.records.problems import RecordRefused
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.shelf import (
    acid_solution,
    add_product,
    calc_product,
    change_product,
    check_product,
    density_from_weight,
    in_own_measure,
    new_product,
    ready_products,
    remove_product,
    shelf,
)
from growlog.services.undo import undo
from tests.services.mixer.bottles import bottle, salt


def label(form: str = "liquid", basis: str = "w/v", density: float | None = None, **analysis: float) -> ShelfProduct:
    """A product with a label."""
    made = bottle("Leaf part", basis, density, **analysis)
    return replace(made, form=ProductForm(form))


@pytest.mark.parametrize(
    ("product", "fields"),
    [
        (label(k2o=101), ["analysis", "k2o"]),
        (label(basis="w/w", k2o=5), ["density_g_per_ml"]),
        (label(basis="w/w", density=1.2, k2o=5), []),
        (label("solid", "w/v", k2o=5), ["basis"]),
        (label(p2o5=60, k2o=60, ca=40), ["analysis"]),
        (label(p=5, p2o5=5), ["analysis"]),
        (label(gold=5), ["analysis"]),
        (label(n=2, n_nitrate=5), ["analysis"]),
        (label(), []),
        (replace(label(k2o=5), name=" "), ["name"]),
        (replace(label(k2o=5), maker_dose_unit="cap"), ["maker_dose_unit"]),
        (replace(label(k2o=5), label_max_per_l=0.0), ["label_max_per_l"]),
        (replace(label(k2o=5), analysis=(LabelShare("k2o", 5), LabelShare("k2o", 6))), ["k2o"]),
        (replace(label(k2o=5), pack_price_minor=-1), ["pack_price_minor"]),
    ],
)
def test_a_wrong_label_is_told_beside_its_field(log: OpenLogbook, product: ShelfProduct, fields: list[str]) -> None:
    assert sorted({p.field for p in check_product(log, product) if not p.asks}) == sorted(fields)
    if fields:
        with pytest.raises(RecordRefused):
            add_product(log, product)
        assert shelf(log) == []


def test_a_product_is_added_changed_removed_and_each_is_taken_back(log: OpenLogbook) -> None:
    product = label(k2o=5)
    added = add_product(log, product, 250)
    assert [(i.product, i.level) for i in shelf(log)] == [(product, 250)]
    changed = change_product(log, replace(product, name="Fruit part"))
    undo(log, changed)
    assert shelf(log)[0].product.name == "Leaf part"
    removed = remove_product(log, product.id)
    assert shelf(log) == []
    undo(log, removed)
    undo(log, added)
    assert shelf(log) == []
    with log.unit() as unit:
        assert unit.stock_moves.all() == []


def test_two_products_do_not_share_a_name(log: OpenLogbook) -> None:
    add_product(log, label(k2o=5))
    with pytest.raises(RecordRefused, match="of this name"):
        add_product(log, replace(bottle("leaf PART"), analysis=()))


def test_a_label_read_too_long_ago_is_not_written_over(log: OpenLogbook) -> None:
    product = label(k2o=5)
    add_product(log, product)
    change_product(log, replace(product, note="shake"))
    with pytest.raises(LogbookProblem, match="changed elsewhere"):
        change_product(log, replace(product, note="stir"))


def test_a_product_without_analysis_is_unknown_to_the_calculations() -> None:
    assert not calc_product(new_product("Tonic")).is_known
    assert calc_product(label(basis="w/w", density=1.2, k2o=5)).density_g_per_ml == 1.2


def test_a_density_comes_from_the_weight_of_a_volume() -> None:
    assert density_from_weight(121, 100) == pytest.approx(1.21)
    with pytest.raises(ValueError, match="outside above 0"):
        density_from_weight(121, 0)


def test_an_amount_is_turned_into_what_the_stock_is_counted_in() -> None:
    assert in_own_measure(calc_product(salt("a", k=1)), 5, "g") == 5
    assert in_own_measure(calc_product(salt("a", k=1)), 5, "mL") is None
    assert in_own_measure(calc_product(label(density=1.25, k2o=1)), 5, "g") == 4


def test_the_common_salts_are_ready_by_chemistry_only(log: OpenLogbook) -> None:
    ready = {r.formula: r for r in ready_products()}
    assert len(ready_products()) == 40
    nitrate = ready["KNO3"].on_shelf()
    add_product(log, nitrate)
    assert calc_product(nitrate).analysis_pct == {"n_nitrate": 13.854, "k": 38.672}
    assert ready["KNO3"].on_shelf().id != nitrate.id
    assert "13-0-46" in ready["KNO3"].note
    assert "iron from your label" in ready["C10H12FeN2NaO8"].note
    assert ready["C10H12FeN2NaO8"].product.chelate == "EDTA"
    assert [f for f, r in ready.items() if r.needs_strength] == ["HNO3", "H3PO4", "H2SO4"]


def test_an_acid_comes_as_the_solution_it_is_bought_as(log: OpenLogbook) -> None:
    # Table of concentrated reagent-grade acids: nitric acid, 69.6 % by weight, 1.41 g/mL, is 15.6 mol/L.
    nitric = next(r for r in ready_products() if r.formula == "HNO3")
    acid = acid_solution(nitric, 69.6, 1.41)
    add_product(log, acid)
    assert (acid.name, acid.form, acid.basis, acid.measure) == (
        "Nitric acid 69.6 %",
        ProductForm.LIQUID,
        LabelBasis.BY_WEIGHT,
        "mL",
    )
    assert calc_product(acid).analysis_pct["n_nitrate"] * 10 * 1.41 / 14.007 == pytest.approx(15.6, rel=5e-3)
    with pytest.raises(ValueError, match="density"):
        acid_solution(nitric, 60, 9)
