"""The price of electricity by day and by time of day."""

import re
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.cost_explained import explain_cost, explain_cost_by_bands
from growlog.calculations.tariff import (
    Tariff,
    TariffBand,
    check_bands,
    check_tariffs,
    cost_of_kwh,
    daily_cost,
    minor_units,
    minutes_by_band,
    tariff_on,
)

DAY = TariffBand(7 * 60, 22 * 60, Decimal("0.30"))
NIGHT = TariffBand(22 * 60, 7 * 60, Decimal("0.18"))
WHOLE = (TariffBand(0, 1440, Decimal("0.25")),)


def test_the_cost_is_that_of_the_published_examples() -> None:
    # US Department of Energy, as quoted: 96 kWh at 8.5 cents are 8.16; 456.25 kWh at 17 cents are 77.56.
    assert minor_units(cost_of_kwh(Decimal(96), Decimal("0.085"))) == 816
    assert explain_cost(Decimal("456.25"), Decimal("0.17"), "USD").value == Decimal("77.56")


def test_a_band_that_crosses_midnight_covers_both_sides_of_it() -> None:
    # By hand: on from 20:00 for 16 h, so 20-22 and 7-12 by day, 22-7 by night.
    assert minutes_by_band(20 * 60, 16 * 60, (DAY, NIGHT)) == [7 * 60, 9 * 60]


def test_each_band_is_paid_at_its_own_price() -> None:
    # By hand: 1 kW, 7 h at 0.30 and 9 h at 0.18 are 2.10 + 1.62.
    assert daily_cost(Decimal(1000), 20 * 60, 16 * 60, (DAY, NIGHT)) == Decimal("3.72")
    figure = explain_cost_by_bands(Decimal(1000), 20 * 60, 16 * 60, Decimal(10), (DAY, NIGHT), "EUR")
    assert (figure.value, figure.unit) == (Decimal("37.20"), "EUR")
    assert "price 22:00-07:00" in {i.name for i in figure.inputs}


@pytest.mark.parametrize(
    ("bands", "sentence"),
    [
        ((DAY, TariffBand(21 * 60, 7 * 60, Decimal(1))), "Two bands of the tariff hold at 21:00."),
        ((DAY,), "The tariff has no price at 00:00."),
        ((*WHOLE, NIGHT), "Two bands of the tariff hold at 00:00."),
        ((TariffBand(-1, 60, Decimal(1)),), "start_minute -1 is outside 0 to 1440 min"),
    ],
)
def test_bands_that_overlap_or_leave_a_gap_are_refused(bands: tuple[TariffBand, ...], sentence: str) -> None:
    with pytest.raises(ValueError, match=re.escape(sentence)):
        check_bands(bands)


def test_a_tariff_holds_until_the_next_one_begins() -> None:
    first, second = Tariff(date(2025, 1, 1), WHOLE), Tariff(date(2026, 1, 1), WHOLE, date(2026, 6, 30))
    check_tariffs([second, first])
    assert tariff_on([first, second], date(2024, 12, 31)) is None
    assert tariff_on([first, second], date(2025, 12, 31)) is first
    assert tariff_on([first, second], date(2026, 1, 1)) is second
    assert tariff_on([first, second], date(2026, 7, 1)) is None


@pytest.mark.parametrize("until", [date(2026, 1, 1), date(2027, 1, 1)])
def test_tariffs_that_overlap_are_refused_with_the_day(until: date) -> None:
    with pytest.raises(ValueError, match="Two tariffs hold on 2026-01-01"):
        check_tariffs([Tariff(date(2025, 1, 1), WHOLE, until), Tariff(date(2026, 1, 1), WHOLE)])


def test_two_tariffs_of_one_day_and_one_that_ends_too_soon_are_refused() -> None:
    with pytest.raises(ValueError, match="Two tariffs hold on 2026-01-01"):
        check_tariffs([Tariff(date(2026, 1, 1), WHOLE), Tariff(date(2026, 1, 1), WHOLE)])
    with pytest.raises(ValueError, match="ends before it begins"):
        check_tariffs([Tariff(date(2026, 1, 2), WHOLE, date(2026, 1, 1))])


@given(st.integers(0, 1440), st.integers(0, 1440), st.integers(0, 1439), st.integers(0, 1439))
def test_every_minute_with_light_is_paid_once(on_at: int, on_for: int, start: int, end: int) -> None:
    if start == end:
        bands: tuple[TariffBand, ...] = (TariffBand(start, end, Decimal(1)),)
    else:
        bands = (TariffBand(start, end, Decimal(1)), TariffBand(end, start, Decimal(2)))
    assert sum(minutes_by_band(on_at, on_for, bands)) == on_for
