"""What is left in a bottle, for how long, and what it cost."""

from datetime import date, timedelta
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.stock import (
    BOUGHT,
    COUNTED,
    THROWN_AWAY,
    USED,
    Level,
    Move,
    cost_per_unit,
    days_left,
    explain_cost,
    explain_days_left,
    explain_level,
    stock_level,
    use_per_day,
)

DAY = date(2026, 3, 1)


def on(days: int, sort: str, amount: float, price: int | None = None) -> Move:
    """A move so many days after the first."""
    return Move(DAY + timedelta(days=days), sort, amount, price)


MOVES = [on(0, BOUGHT, 1000, 900), on(2, USED, 60), on(4, USED, 60), on(5, THROWN_AWAY, 30)]


def test_the_level_is_what_came_less_what_went() -> None:
    assert stock_level(MOVES, DAY + timedelta(days=9)) == Level(850)
    assert stock_level(MOVES, DAY + timedelta(days=3)) == Level(940)


def test_a_count_resets_the_level_and_moves_of_its_day_follow_as_written() -> None:
    counted = [*MOVES, on(6, COUNTED, 700), on(6, USED, 50)]
    assert stock_level(counted, DAY + timedelta(days=6)) == Level(650)


def test_a_level_that_nobody_knows_is_not_zero() -> None:
    assert stock_level([on(0, USED, 5)], DAY).amount is None
    assert stock_level([], DAY).amount is None


def test_more_used_than_was_known_of_is_an_empty_bottle() -> None:
    assert stock_level([on(0, COUNTED, 10), on(1, USED, 25)], DAY + timedelta(days=1)) == Level(0, 15)


def test_use_is_counted_over_the_last_days_and_over_a_week_at_least() -> None:
    assert use_per_day(MOVES, DAY + timedelta(days=4)) == pytest.approx(120 / 7)
    assert use_per_day(MOVES, DAY + timedelta(days=11)) == pytest.approx(120 / 10)
    assert use_per_day(MOVES, DAY + timedelta(days=31)) == pytest.approx(60 / 28)
    assert use_per_day(MOVES, DAY + timedelta(days=90)) == 0
    assert days_left(850, 12) == pytest.approx(70.83, rel=1e-3)
    assert days_left(850, 0) is None


def test_packs_are_weighted_by_what_they_held() -> None:
    # By hand: 900 for 1000 mL and 2100 for 3000 mL are 3000 for 4000 mL.
    assert cost_per_unit([*MOVES, on(7, BOUGHT, 3000, 2100)]) == Decimal("0.75")
    assert cost_per_unit([on(0, BOUGHT, 500)], 1000, 850) == Decimal("0.85")
    assert cost_per_unit([on(0, BOUGHT, 500)]) is None


SORTS = st.sampled_from([BOUGHT, USED, COUNTED, THROWN_AWAY])


@given(st.lists(st.builds(on, st.integers(0, 60), SORTS, st.floats(0, 1000)), max_size=20))
def test_a_level_is_never_below_nothing(moves: list[Move]) -> None:
    level = stock_level(moves, DAY + timedelta(days=60)).amount
    assert level is None or level >= 0


@given(st.lists(st.builds(on, st.integers(0, 60), SORTS, st.floats(0, 1000)), max_size=20), st.floats(0, 1000))
def test_after_a_count_nothing_before_matters(moves: list[Move], counted: float) -> None:
    end = DAY + timedelta(days=61)
    assert stock_level([*moves, Move(end, COUNTED, counted)], end) == Level(counted)


def test_a_negative_amount_is_refused_by_name() -> None:
    with pytest.raises(ValueError, match="amount -1"):
        stock_level([on(0, BOUGHT, -1)], DAY)


def test_each_figure_explains_itself() -> None:
    end = DAY + timedelta(days=11)
    counted = [*MOVES, on(6, COUNTED, 700)]
    level = explain_level(counted, end, "mL")
    assert (level.value, [i.value for i in level.inputs]) == (700, [700])
    assert explain_days_left(counted, end, "mL").value == pytest.approx(700 / 12)
    assert explain_cost(counted, None, None, "mL").value == Decimal("0.9")
    assert explain_level(MOVES, end, "mL").as_of == end
