"""The yield so far: sums as weighed, estimates only from what was weighed by then."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.yield_curve import CurvePoint, PickPoint, cumulative_yield, first_pick_age, yield_so_far

GRAMS = st.one_of(st.none(), st.floats(0.1, 5000))
PICKS = st.lists(
    st.builds(
        lambda age, count, per_fruit, culled: PickPoint(age, count, per_fruit and per_fruit * count, culled),
        st.integers(0, 200),
        st.integers(1, 30),
        GRAMS,
        st.integers(0, 5),
    ),
    max_size=25,
)


def test_weighed_picks_add_up_day_by_day() -> None:
    curve = cumulative_yield([PickPoint(40, 2, 150.0), PickPoint(50, 3, 250.0), PickPoint(40, 1, 50.0)])
    assert curve == [CurvePoint(40, 3, 200.0, 0.0), CurvePoint(50, 6, 450.0, 0.0)]
    assert not any(point.is_estimate for point in curve)


def test_an_unweighed_pick_is_estimated_by_what_was_weighed_before_it_and_not_after() -> None:
    curve = cumulative_yield([PickPoint(40, 2, 200.0), PickPoint(50, 3, None), PickPoint(60, 10, 5000.0)])
    assert curve[1] == CurvePoint(50, 5, 500.0, 300.0)
    assert curve[2] == CurvePoint(60, 15, 5500.0, 300.0)


def test_fruit_picked_before_any_was_weighed_waits_for_the_first_weight() -> None:
    early = [PickPoint(40, 2, None)]
    assert cumulative_yield(early) == [CurvePoint(40, 2, 0.0, 0.0)]
    assert yield_so_far(early).unknown_count == 2
    later = [*early, PickPoint(50, 1, 80.0)]
    assert cumulative_yield(later) == [CurvePoint(40, 2, 0.0, 0.0), CurvePoint(50, 3, 240.0, 160.0)]
    assert yield_so_far(later).unknown_count == 0


def test_culled_fruit_is_counted_but_is_no_yield() -> None:
    total = yield_so_far([PickPoint(40, 2, 200.0, 1), PickPoint(45, 0, 0.0, 3)])
    assert (total.fruit_count, total.culled_count, total.weight_g, total.mean_fruit_g) == (2, 4, 200.0, 100.0)


def test_the_first_pick_is_the_first_marketable_fruit() -> None:
    assert first_pick_age([PickPoint(30, 0, 0.0, 2), PickPoint(41, 1, None), PickPoint(36, 2, 90.0)]) == 36
    assert first_pick_age([PickPoint(30, 0, 0.0, 2)]) is None


def test_without_a_pick_there_is_no_curve_and_nothing_is_known() -> None:
    assert cumulative_yield([]) == []
    assert yield_so_far([]) == yield_so_far([PickPoint(50, 1, 9.0)], up_to_age=49)
    assert yield_so_far([]).mean_fruit_g is None


def test_fifty_two_fruit_of_seven_pounds_are_61_g_each() -> None:
    # Common practice, no source; the pound is 453.59237 g by international agreement (1959).
    total = yield_so_far([PickPoint(36, 20, 7 * 453.59237 * 20 / 52), PickPoint(60, 32, 7 * 453.59237 * 32 / 52)])
    assert total.fruit_count == 52
    assert total.mean_fruit_g == pytest.approx(61, abs=0.5)


@given(PICKS, st.integers(0, 200))
def test_the_figure_of_a_day_never_changes_when_more_is_picked_after_it(picks: list[PickPoint], age: int) -> None:
    by_then = [p for p in picks if p.age <= age]
    whole = [point for point in cumulative_yield(picks) if point.age <= age]
    assert whole == cumulative_yield(by_then)
    assert yield_so_far(picks, age) == yield_so_far(by_then)


@given(PICKS)
def test_a_yield_never_falls(picks: list[PickPoint]) -> None:
    curve = cumulative_yield(picks)
    for before, after in pairwise(curve):
        assert before.age < after.age
        assert before.fruit_count <= after.fruit_count
        assert before.weight_g <= after.weight_g + 1e-9
        assert before.estimated_g <= after.estimated_g


@given(PICKS)
def test_totals_are_the_sums_of_the_picks(picks: list[PickPoint]) -> None:
    total = yield_so_far(picks)
    assert total.fruit_count == sum(p.fruit_count for p in picks)
    assert total.culled_count == sum(p.culled_count for p in picks)
    weighed_g = sum(p.weight_g for p in picks if p.weight_g is not None)
    assert total.weight_g - total.estimated_g == pytest.approx(weighed_g, abs=1e-6)
    assert (total.unknown_count > 0) == (bool(picks) and all(p.weight_g is None for p in picks))
