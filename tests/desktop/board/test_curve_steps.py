"""What is handed to the yield chart."""

from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.yield_curve import CurvePoint
from growlog.desktop.board.curve_steps import count_ticks, drawn_curve, point_at, round_ticks
from tests.desktop.board.boards import POINTS


def test_the_curve_rises_on_the_day_of_a_pick_and_stays_level_between() -> None:
    drawn = drawn_curve(POINTS[:2], 60, by_count=False)
    assert list(drawn.whole.ages) == [0, 43, 43, 50, 50, 60]
    assert list(drawn.whole.values) == [0, 0, 180, 180, 420, 420]
    assert not drawn.has_estimate


def test_by_count_nothing_is_an_estimate() -> None:
    drawn = drawn_curve(POINTS, 112, by_count=True)
    assert list(drawn.whole.values) == [0, 0, 2, 2, 5, 5, 8, 8]
    assert not drawn.has_estimate


def test_the_estimated_part_begins_where_the_first_estimate_does() -> None:
    drawn = drawn_curve(POINTS, 112, by_count=False)
    assert drawn.has_estimate
    assert list(drawn.sure_part().ages) == [0, 43, 43, 50, 50, 60]
    assert list(drawn.estimated_part().ages) == [60, 60, 112]
    assert drawn.weighed.values[-1] == 460.0


def test_before_the_first_pick_there_is_no_point() -> None:
    assert point_at(POINTS, 42) is None
    assert point_at(POINTS, 43) == POINTS[0]
    assert point_at(POINTS, 59) == POINTS[1]


@given(st.floats(0.5, 1e6), st.integers(1, 8))
def test_axis_labels_are_round_even_and_within_the_curve(highest: float, most: int) -> None:
    ticks = round_ticks(highest, most)
    step = ticks[1]
    assert f"{step:.0e}"[0] in "125"
    assert ticks[-1] <= highest * (1 + 1e-6)
    assert len(ticks) - 1 <= max(most, 2)


def test_a_curve_of_four_kilograms_has_labels_in_a_low_chart_too() -> None:
    assert round_ticks(4120, 2) == [0, 2000, 4000]


def test_fruit_are_labelled_in_whole_numbers() -> None:
    assert count_ticks(3, 6) == [0, 1, 2, 3]


def test_a_curve_without_weight_has_only_its_ground() -> None:
    assert drawn_curve((CurvePoint(5, 1, 0.0, 0.0),), 9, by_count=False).whole.values.max() == 0
    assert round_ticks(0, 5) == [0.0]
