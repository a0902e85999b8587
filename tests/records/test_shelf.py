"""What products, their stock, source waters and blends refuse and ask."""

from dataclasses import replace
from datetime import date

import pytest

from growlog.records.problems import Problem
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct, StockMove, StockMoveSort
from growlog.records.recipe import Mix, MixPart, WaterShare
from growlog.records.source_water import WATER_ELEMENTS, SourceWater

DAY = date(2026, 1, 18)
SOLID = ShelfProduct("1", "Salt", ProductForm.SOLID, analysis=(LabelShare("n_nitrate", 14.5),))


def refused(problems: list[Problem]) -> list[str]:
    """The fields that are refused, not merely asked about."""
    return [p.field for p in problems if not p.asks]


def test_a_product_needs_no_more_than_a_name() -> None:
    assert ShelfProduct("1", "Base A").problems() == []
    assert refused(ShelfProduct("1", "").problems()) == ["name"]


def test_a_liquid_labelled_by_weight_needs_its_density() -> None:
    liquid = replace(SOLID, form=ProductForm.LIQUID)
    assert refused(liquid.problems()) == ["density_g_per_ml"]
    assert replace(liquid, density_g_per_ml=1.2).problems() == []
    assert replace(liquid, basis=LabelBasis.IN_VOLUME).problems() == []


def test_a_solid_is_not_labelled_by_volume() -> None:
    assert SOLID.problems() == []
    assert refused(replace(SOLID, basis=LabelBasis.IN_VOLUME).problems()) == ["basis"]


def test_more_than_100_per_cent_in_one_line_is_refused_and_in_sum_asked_about() -> None:
    assert refused(replace(SOLID, analysis=(LabelShare("k2o", 101),)).problems()) == ["analysis"]
    summed = replace(SOLID, analysis=(LabelShare("p2o5", 60), LabelShare("k2o", 41))).problems()
    assert [(p.field, p.asks) for p in summed] == [("analysis", True)]


def test_stock_is_counted_in_ml_of_a_liquid_and_g_of_a_solid() -> None:
    assert (ShelfProduct("1", "Base A").measure, SOLID.measure) == ("mL", "g")


def test_no_less_than_nothing_comes_goes_or_is_paid() -> None:
    assert refused(StockMove("1", "p", DAY, StockMoveSort.USED, -1.0).problems()) == ["amount"]
    assert refused(StockMove("1", "p", DAY, StockMoveSort.BOUGHT, 1.0, -5).problems()) == ["price_minor"]


def test_a_water_without_figures_is_sound_but_not_without_a_name() -> None:
    assert SourceWater("1", "Rain").problems() == []
    assert refused(SourceWater("1", " ").problems()) == ["name"]


@pytest.mark.parametrize("element", WATER_ELEMENTS)
def test_each_element_of_a_water_is_held_to_the_limits_at_its_own_field(element: str) -> None:
    field = f"{element}_mg_per_l"
    assert refused(replace(SourceWater("1", "Tap"), **{field: -1.0}).problems()) == [field]


def test_the_shares_of_a_blend_add_up_to_the_whole() -> None:
    mix = Mix("1", "A + B", 1, (MixPart("A", 2.0),), waters=(WaterShare("tap", 0.6), WaterShare("rain", 0.4)))
    assert mix.problems() == []
    assert refused(replace(mix, waters=mix.waters[:1]).problems()) == ["waters"]
    assert "waters" in refused(replace(mix, waters=(WaterShare("tap", 1.2),)).problems())
