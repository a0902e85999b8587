"""Partial budgets against published worked examples."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.partial_budget import (
    BudgetLine,
    break_even_price,
    break_even_yield_change,
    cost_lines,
    explain_break_even_price,
    explain_break_even_yield,
    explain_budget,
    partial_budget,
)
from growlog.calculations.units import G_PER_POUND
from growlog.calculations.yield_curve import PickPoint, yield_so_far

AMOUNTS = st.decimals(0, 100_000, places=2)


def lines(*amounts: str) -> tuple[BudgetLine, ...]:
    return tuple(BudgetLine(f"line {i}", Decimal(a)) for i, a in enumerate(amounts))


def test_salad_greens_for_green_beans_as_in_the_extension_handout_partial_budget_analysis() -> None:
    # An extension handout, "Partial budget analysis": salad greens for specialty green beans, per bed.
    budget = partial_budget(lines("150.00"), lines("182.50", "26.66"), lines("28.00", "8.53"), lines("360.00"))
    assert budget.gains == Decimal("359.16")
    assert budget.losses == Decimal("396.53")
    assert budget.net == Decimal("-37.37")


def test_maize_for_dry_beans_as_in_a_farm_press_article_on_partial_budgets() -> None:
    # A farm-press article on partial budgets: maize for dry beans on 100 acres.
    budget = partial_budget(lines("97500"), lines("55000"), lines("69000"), lines("88000"))
    assert budget.net == -4500


def test_the_seven_pounds_of_fifty_two_fruit_are_61_g_a_fruit() -> None:
    # Common practice, no source: 52 fruit and 7 lb.
    assert yield_so_far([PickPoint(40, 52, 7 * G_PER_POUND)]).mean_fruit_g == pytest.approx(61, abs=0.5)


def test_an_amount_below_nought_is_refused_with_its_line() -> None:
    with pytest.raises(ValueError, match="line 0 -1 is outside 0"):
        partial_budget(lines("-1"))


def test_a_change_of_cost_stands_on_one_side_and_what_stays_on_none() -> None:
    added, reduced = cost_lines([("power", Decimal(5)), ("work", Decimal(-2)), ("seed", Decimal(0))])
    assert added == (BudgetLine("power", Decimal(5)),)
    assert reduced == (BudgetLine("work", Decimal(2)),)


@given(cost=AMOUNTS, worth=st.decimals(1, 100_000, places=2))
def test_at_the_break_even_yield_change_both_sides_are_equal(cost: Decimal, worth: Decimal) -> None:
    change = break_even_yield_change(cost, worth)
    assert change is not None
    assert partial_budget([BudgetLine("fruit", worth * change / 100)], (), [BudgetLine("power", cost)]).net == (
        pytest.approx(Decimal(0), abs=Decimal("1e-9"))
    )


def test_a_yield_that_is_worth_nothing_has_no_break_even_change() -> None:
    assert break_even_yield_change(Decimal(5), Decimal(0)) is None
    assert explain_break_even_yield(Decimal(5), Decimal(0)).value is None


def test_a_cheaper_way_may_cost_some_yield() -> None:
    assert break_even_yield_change(Decimal(-20), Decimal(200)) == -10


def test_the_break_even_price_pays_the_added_cost_by_the_added_fruit() -> None:
    assert break_even_price(Decimal(12), Decimal(10)) == Decimal("1.2")
    assert break_even_price(Decimal(-12), Decimal(-10)) == Decimal("1.2")


@pytest.mark.parametrize(("cost", "more"), [(12, 0), (12, -10), (-12, 10)])
def test_there_is_no_break_even_price_where_the_sign_never_turns(cost: int, more: int) -> None:
    assert break_even_price(Decimal(cost), Decimal(more)) is None
    assert explain_break_even_price(Decimal(cost), Decimal(more), "fruit").value is None


def test_the_explanation_lists_every_line_with_its_side() -> None:
    figure = explain_budget(partial_budget(lines("150"), (), lines("28")), "EUR")
    assert figure.value == 122
    assert [(i.name, i.value) for i in figure.inputs] == [("added return: line 0", 150), ("added cost: line 0", 28)]
