"""Usual days of a species by the names that growers use."""

import pytest

from growlog.services.yield_view.usual_days import TO_MATURITY, table_name, usual_lag, usual_ranges, usual_rows


@pytest.mark.parametrize(("species", "low", "high"), [("pattypan", 3, 7), ("courgette", 3, 7), ("okra", 4, 7)])
def test_days_from_flower_to_harvest_are_the_published_ones(species: str, low: float, high: float) -> None:
    # Encyclopaedia Britannica, Vegetable farming, table of harvesting.
    lag = usual_lag(species)
    assert (lag.low_days, lag.high_days) == (low, high)
    assert "Encyclopaedia Britannica" in lag.source


def test_aubergine_is_the_tables_eggplant() -> None:
    # Iowa State University Extension, Vegetable harvest guide.
    assert table_name("aubergine") == "eggplant"
    assert (usual_lag("aubergine").low_days, usual_lag("aubergine").high_days) == (25, 40)


def test_a_cherry_tomato_is_a_tomato_and_a_pumpkin_no_summer_squash() -> None:
    assert [r.counted_from for r in usual_ranges("cherry tomato", TO_MATURITY)] == ["transplanting"]
    assert table_name("pumpkin") == "pumpkin"


def test_a_plant_that_is_not_in_the_table_gets_a_wide_range_named_as_practice() -> None:
    lag = usual_lag("pepino")
    assert lag.low_days < lag.high_days
    assert lag.source == "common practice, no source"


def test_every_row_has_its_source_and_says_what_is_from_memory() -> None:
    assert all(row.source for row in usual_rows())
    strawberry = next(r for r in usual_rows() if r.crop == "strawberry")
    assert strawberry.source.endswith("from memory")
