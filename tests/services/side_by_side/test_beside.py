"""Crops beside each other: aligned curves, a table with the best marked, photos of an age."""

import csv
from dataclasses import replace
from datetime import timedelta
from io import StringIO

import pytest

from growlog.records.crop import Crop
from growlog.records.entry import Feed
from growlog.services.crops import clear_crop
from growlog.services.facts.facts import fact_keys
from growlog.services.money.prices import prices_of, save_prices
from growlog.services.open_logbook import OpenLogbook
from growlog.services.side_by_side.beside import CropBeside, crops_beside
from growlog.services.side_by_side.better import BETTER
from growlog.services.side_by_side.facts_table import FactRow, facts_csv, facts_table
from growlog.services.side_by_side.series import Aligned, Counted, Per, crop_series, unit_of
from tests.logbooks import add_plant, furnish, plant_crop, write
from tests.services.yield_view.seasons import at, picked


@pytest.fixture
def both(log: OpenLogbook, crop: Crop) -> list[CropBeside]:
    """A growing crop of two plants and a cleared one: 6 fruit, 450 g, and 4 fruit, 400 g."""
    add_plant(log, crop)
    furnish(log, crop, share=0.5)
    picked(log, crop, [(44, 2, 150.0), (50, 4, 300.0)])
    before = plant_crop(log, "Attic Gold", at(0) - timedelta(days=100))
    picked(log, before, [(40, 1, 100.0), (52, 3, 300.0)])
    clear_crop(log, before.id, before.day_zero + timedelta(days=70))
    return crops_beside(log, [crop.id, before.id], at(60))


def row(rows: list[FactRow], key: str) -> FactRow:
    return next(r for r in rows if r.key == key)


def test_curves_lie_at_the_same_plant_age_or_days_from_first_pick(both: list[CropBeside]) -> None:
    by_age = [crop_series(c, Counted.WEIGHT, Per.CROP, Aligned.AGE) for c in both]
    assert [(s.days, s.values) for s in by_age] == [((44, 50), (150, 450)), ((40, 52), (100, 400))]
    assert [s.last_day for s in by_age] == [60, 70]
    by_pick = [crop_series(c, Counted.FRUIT, Per.CROP, Aligned.FIRST_PICK) for c in both]
    assert [(s.days, s.values) for s in by_pick] == [((0, 6), (2, 6)), ((0, 12), (1, 4))]


def test_yield_is_held_against_plants_alive_and_floor(both: list[CropBeside]) -> None:
    per_plant = crop_series(both[0], Counted.WEIGHT, Per.PLANT, Aligned.AGE)
    assert per_plant.values == (75, 225)
    per_m2 = crop_series(both[0], Counted.WEIGHT, Per.FLOOR, Aligned.AGE)
    assert per_m2.values == pytest.approx((250, 750))
    assert unit_of(Counted.WEIGHT, Per.FLOOR, "") == "g/m²"
    assert crop_series(both[1], Counted.WEIGHT, Per.FLOOR, Aligned.AGE).reason == "Its floor is not known."


def test_the_cost_of_a_kg_falls_with_each_pick(log: OpenLogbook, crop: Crop) -> None:
    furnish(log, crop)
    save_prices(log, replace(prices_of(log), currency="EUR", water_price_minor_per_m3=10000))
    write(log, crop, at(30), Feed(volume_l=10))
    picked(log, crop, [(44, 2, 100.0), (50, 4, 300.0)])
    (beside,) = crops_beside(log, [crop.id], at(51))
    series = crop_series(beside, Counted.COST, Per.CROP, Aligned.AGE)
    assert series.days == tuple(range(44, 52))
    assert series.values[0] == pytest.approx(10)  # 1.00 EUR over 0.1 kg
    assert series.values[-1] == pytest.approx(2.5)
    assert unit_of(Counted.COST, Per.CROP, "EUR") == "EUR/kg"


def test_a_crop_without_weights_says_why_it_has_no_curve_by_weight(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop, [(44, 2, None)])
    (beside,) = crops_beside(log, [crop.id], at(51))
    assert crop_series(beside, Counted.WEIGHT, Per.CROP, Aligned.AGE).reason == "No fruit was weighed."
    assert crop_series(beside, Counted.FRUIT, Per.CROP, Aligned.AGE).values == (2,)


def test_the_best_is_marked_by_the_way_that_is_better(both: list[CropBeside]) -> None:
    rows = facts_table(both)
    assert row(rows, "yield-weight").best == (0,)
    assert row(rows, "first-pick-age").best == (1,)  # earlier
    assert row(rows, "mean-fruit-weight").best == ()  # no better way
    assert row(rows, "culled-count").best == ()  # alike
    assert not any(r.key == "milestone-emergence" for r in rows)  # no crop has it


def test_every_better_way_is_of_a_figure_that_exists() -> None:
    assert set(BETTER) <= {key.key for _, key in fact_keys()}


def test_the_table_is_exported_as_csv(both: list[CropBeside]) -> None:
    lines = list(csv.DictReader(StringIO(facts_csv(both, facts_table(both)))))
    weight = next(line for line in lines if line["key"] == "yield-weight")
    assert (weight["Boxroom Gold"], weight["Attic Gold"], weight["best"]) == ("450.0", "400.0", "Boxroom Gold")
    assert weight["better"] == "more"


def test_a_crop_that_was_not_sown_yet_is_left_out(log: OpenLogbook, crop: Crop) -> None:
    young = plant_crop(log, "Late One", at(90))
    assert [c.crop.name for c in crops_beside(log, [crop.id, young.id], at(60))] == ["Boxroom Gold"]
