"""What tariffs, purchases, lamps, devices and the worth of an hour refuse."""

from dataclasses import replace
from datetime import date, time

import pytest

from growlog.records.crop import Crop, Placement
from growlog.records.logbook import LogbookFacts
from growlog.records.problems import Problem
from growlog.records.purchase import Purchase
from growlog.records.room import Device, Lamp
from growlog.records.tariff import Tariff, TariffBand

DAY = date(2026, 1, 18)
DAYTIME, NIGHT = TariffBand(time(6), time(22), "0.31"), TariffBand(time(22), time(6), "0.2045")
TARIFF = Tariff("1", "Two rates", DAY, (DAYTIME, NIGHT), 42)


def refused(problems: list[Problem]) -> list[str]:
    """The fields that are refused, not merely asked about."""
    return [p.field for p in problems if not p.asks]


def test_bands_that_cover_the_day_once_are_sound_and_so_is_one_price_all_day() -> None:
    assert TARIFF.problems() == []
    assert replace(TARIFF, bands=(TariffBand(time(0), time(0), "0.30"),)).problems() == []


def test_a_tariff_has_a_name_and_a_price() -> None:
    assert refused(replace(TARIFF, name="").problems()) == ["name"]
    assert refused(replace(TARIFF, bands=()).problems()) == ["bands"]


@pytest.mark.parametrize("text", ["", "cheap", "0,31", "-0.1", "NaN", "Infinity", "1001"])
def test_a_price_of_a_kwh_is_a_decimal_number(text: str) -> None:
    (problem,) = replace(TARIFF, bands=(replace(DAYTIME, price_per_kwh=text), NIGHT)).problems()
    assert problem.field == "bands"
    assert "not a price" in problem.sentence


def test_bands_that_overlap_are_refused() -> None:
    (problem,) = replace(TARIFF, bands=(DAYTIME, replace(NIGHT, from_at=time(21, 30)))).problems()
    assert "overlap" in problem.sentence


def test_bands_that_leave_a_gap_are_refused() -> None:
    (problem,) = replace(TARIFF, bands=(DAYTIME, replace(NIGHT, until_at=time(5, 59)))).problems()
    assert "gap" in problem.sentence


def test_a_daily_charge_is_never_negative() -> None:
    assert refused(replace(TARIFF, daily_charge_minor=-1).problems()) == ["daily_charge_minor"]


def test_a_purchase_says_what_and_its_life_in_one_way() -> None:
    pots = Purchase("1", "Pots", DAY, price_minor=1800, life_crops=4)
    assert pots.problems() == []
    assert refused(replace(pots, name=" ").problems()) == ["name"]
    assert refused(replace(pots, life_days=900).problems()) == ["life_days"]
    assert refused(replace(pots, price_minor=-1).problems()) == ["price_minor"]


def test_lamps_and_devices_stay_within_the_limits() -> None:
    assert refused(Lamp("1", "room", "Panel", ballast_loss_percent=61).problems()) == ["ballast_loss_percent"]
    assert refused(Lamp("1", "room", "Panel", rated_life_h=0).problems()) == ["rated_life_h"]
    assert refused(Device("1", "room", "").problems()) == ["name"]
    assert refused(Device("1", "room", "Fan", hours_per_day=25).problems()) == ["hours_per_day"]
    assert refused(Device("1", "room", "Fan", duty_percent=101).problems()) == ["duty_percent"]


def test_an_hour_may_be_worth_nothing_but_not_less() -> None:
    assert LogbookFacts("1", "Box room", "EUR", 0).problems() == []
    assert refused(LogbookFacts("1", "Box room", "EUR", -1).problems()) == ["labour_rate_minor_per_h"]


def test_shop_prices_and_shares_of_the_energy_stay_within_the_limits() -> None:
    crop = Crop("1", "Boxroom Gold", "c", sown_on=DAY, shop_price_minor_per_kg=-1)
    assert refused(crop.problems()) == ["shop_price_minor_per_kg"]
    assert refused(Placement("1", "c", "r", DAY, energy_share=1.1).problems()) == ["energy_share"]
