"""What a crop, its plants and placements refuse; what money refuses."""

from datetime import date
from decimal import Decimal

import pytest

from growlog.records.crop import Crop, Placement, Plant, StartedFrom
from growlog.records.cultivar import Cultivar, FloweringHabit
from growlog.records.logbook import LogbookFacts
from growlog.records.money import Money, money_of

SOWN = date(2025, 11, 15)


def fields_of(problems: list) -> set[str]:
    return {p.field for p in problems}


def test_plant_age_counts_from_sowing_and_for_bought_plants_from_transplanting() -> None:
    assert Crop("1", "a", "c", sown_on=SOWN, transplanted_on=date(2025, 12, 1)).day_zero == SOWN
    bought = Crop("1", "a", "c", StartedFrom.BOUGHT_PLANT, transplanted_on=date(2025, 12, 1))
    assert bought.day_zero == date(2025, 12, 1)


def test_a_crop_without_day_zero_is_refused() -> None:
    assert fields_of(Crop("1", "a", "c").problems()) == {"sown_on"}
    assert fields_of(Crop("1", "a", "c", StartedFrom.BOUGHT_PLANT).problems()) == {"transplanted_on"}
    with pytest.raises(ValueError, match="day 0"):
        _ = Crop("1", "a", "c").day_zero


def test_dates_before_day_zero_are_refused() -> None:
    crop = Crop("1", "a", "c", sown_on=SOWN, cleared_on=date(2025, 11, 14), emerged_on=date(2025, 11, 1))
    assert fields_of(crop.problems()) == {"cleared_on", "emerged_on"}


def test_more_seeds_emerged_than_sown_are_refused() -> None:
    assert fields_of(Crop("1", "a", "c", sown_on=SOWN, seeds_sown=3, seeds_emerged=4).problems()) == {"seeds_emerged"}


def test_names_and_orders_are_checked() -> None:
    assert fields_of(Crop("1", " ", "c", sown_on=SOWN).problems()) == {"name"}
    assert fields_of(Plant("1", "c", "1", SOWN, date(2025, 11, 1)).problems()) == {"lost_on"}
    assert fields_of(Placement("1", "c", "r", SOWN, date(2025, 11, 1), floor_share=1.2).problems()) == {
        "until_day",
        "floor_share",
    }
    assert fields_of(Cultivar("1", "", "x", FloweringHabit.SEPARATE, 0).problems()) == {"species", "packet_days"}
    assert fields_of(LogbookFacts("1", "", "eur").problems()) == {"name", "currency"}


def test_a_placement_covers_its_first_and_its_last_day() -> None:
    placement = Placement("1", "c", "r", SOWN, date(2025, 11, 20))
    assert [placement.covers(date(2025, 11, d)) for d in (14, 15, 20, 21)] == [False, True, True, False]


def test_money_is_whole_minor_units_rounded_half_to_even() -> None:
    assert money_of(Decimal("4.305")) == Money(430)
    assert money_of(Decimal("12"), "JPY") == Money(12, "JPY")  # ISO 4217: no minor unit
    assert (Money(95, "EUR") + Money(5, "EUR")).amount == Decimal("1.00")
    with pytest.raises(ValueError, match="currency"):
        Money(1, "EUR") + Money(1, "SEK")


def test_names_with_line_breaks_or_halves_of_letters_are_refused() -> None:
    for name in ("two\nlines", "half \udcff"):
        assert fields_of(Crop("1", name, "c", sown_on=SOWN).problems()) == {"name"}
        assert fields_of(Cultivar("1", "", name, FloweringHabit.SEPARATE).problems()) == {"species"}
    assert Crop("1", "a/b \U0001f345 \u05d2\u05df", "c", sown_on=SOWN).problems() == []
