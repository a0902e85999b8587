"""Labour, gear and shares in whole minor units."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations import labour_and_money as money
from growlog.calculations.cost_explained import explain_cost_per_fruit, explain_labour_cost


def test_labour_costs_its_minutes_at_the_rate_of_an_hour_which_may_be_zero() -> None:
    assert money.labour_cost_minor(Decimal(90), Decimal("12.40")) == 1860
    assert money.labour_cost_minor(Decimal(90), Decimal(0)) == 0
    assert money.labour_cost_minor(Decimal(90), Decimal(1200), decimals=0) == 1800
    assert explain_labour_cost(Decimal(90), Decimal("12.40")).value == Decimal("18.60")


def test_before_the_first_fruit_there_is_no_cost_of_one() -> None:
    assert money.per_unit(1234, 0) is None
    assert money.per_unit(1234, 4) == Decimal("308.5")
    assert explain_cost_per_fruit(Decimal("12.34"), 0).value is None
    assert explain_cost_per_fruit(Decimal("10.00"), 3, "EUR").value == Decimal("3.3333")


def test_gear_costs_nothing_more_past_its_life() -> None:
    assert money.gear_cost_minor(10_000, 100, 0, 25) == 2500
    assert money.gear_cost_minor(10_000, 100, 90, 25) == 1000
    assert money.gear_cost_minor(10_000, 100, 100, 25) == 0
    assert [money.gear_cost_of_crop_minor(1000, 3, crop) for crop in (1, 2, 3, 4)] == [333, 334, 333, 0]


@pytest.mark.parametrize("wrong", [
    lambda: money.labour_cost_minor(Decimal(-1), Decimal(1)), lambda: money.per_unit(1, -1),
    lambda: money.gear_cost_minor(100, 0, 0, 1), lambda: money.share_out_minor(100, [Decimal(0)]),
    lambda: money.share_out_minor(100, [Decimal(-1), Decimal(2)]),
])  # fmt: skip
def test_what_cannot_be_is_refused(wrong) -> None:
    with pytest.raises(ValueError, match="is outside"):
        wrong()


@given(st.integers(-(10**9), 10**9), st.lists(st.decimals(0, 1000, places=3), min_size=1, max_size=8))
def test_shares_add_up_to_the_last_coin(total: int, weights: list[Decimal]) -> None:
    if not any(weights):
        return
    shares = money.share_out_minor(total, weights)
    assert sum(shares) == total
    assert all(abs(s - total * w / sum(weights)) < 1 for s, w in zip(shares, weights, strict=True))


@given(st.integers(0, 10**7), st.integers(1, 2000), st.lists(st.integers(0, 400), max_size=12))
def test_days_of_gear_that_follow_each_other_never_cost_more_than_its_price(
    price: int, life: int, spells: list[int]
) -> None:
    before, costs = 0, []
    for days in spells:
        costs.append(money.gear_cost_minor(price, life, before, days))
        before += days
    assert all(cost >= 0 for cost in costs)
    assert sum(costs) == money.gear_cost_minor(price, life, 0, before) <= price
