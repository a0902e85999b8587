"""Picks as what was gathered between sessions, in fruit and in grams, and sentences where that cannot be told."""

import pytest

from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure, PickIntervals, pick_intervals
from growlog.calculations.yield_curve import PickPoint


def intervals(picks: list[PickPoint], measure: Measure = Measure.FRUIT, up_to: int | None = None) -> PickIntervals:
    """The intervals, which are expected to be there."""
    found = pick_intervals(picks, measure, up_to)
    assert isinstance(found, PickIntervals)
    return found


def reason(picks: list[PickPoint], measure: Measure = Measure.FRUIT) -> str:
    """Why there are none."""
    found = pick_intervals(picks, measure)
    assert isinstance(found, NotYet)
    return found.reason


def test_sessions_of_a_day_are_one_and_those_too_near_are_taken_together() -> None:
    counts = [(40, 2), (44, 3), (44, 1), (45, 1), (48, 5)]
    found = intervals([PickPoint(age, n, None) for age, n in counts])
    assert found.edges == (37, 40, 44, 48)  # the usual gap is 3 days
    assert found.amounts == (2, 4, 6)
    assert found.sessions == 4


def test_only_picks_up_to_the_day_count_and_culls_alone_begin_no_season() -> None:
    picks = [PickPoint(30, 0, None, 2), PickPoint(40, 1, None), PickPoint(45, 1, None), PickPoint(50, 9, None)]
    found = intervals(picks, up_to=45)
    assert found.total == 2
    assert found.first_age == 40


def test_fruit_without_a_weight_counts_by_weight_with_the_mean_and_a_weight_without_a_count_by_count() -> None:
    picks = [PickPoint(40, 2, 200.0), PickPoint(45, 3, None), PickPoint(50, 0, 400.0)]
    assert intervals(picks, Measure.GRAMS).amounts == (200, 300, 400)
    assert intervals(picks).amounts == (2, 3, 4)


def test_a_three_week_gap_is_one_long_interval() -> None:
    found = intervals([PickPoint(age, 2, None) for age in (40, 43, 46, 67, 70)])
    assert (46, 67) in list(zip(found.edges, found.edges[1:], strict=False))


@pytest.mark.parametrize(
    ("picks", "words"),
    [
        ([], "Nothing was picked yet."),
        ([PickPoint(40, 0, None, 3)], "All fruit picked so far was culled."),
        ([PickPoint(40, 3, None)], "One pick so far"),
        ([PickPoint(40, 3, None), PickPoint(40, 2, None)], "fell on one day"),
        ([PickPoint(40, -1, None), PickPoint(45, 2, None)], "less than no fruit"),
        ([PickPoint(40, 1, float("nan")), PickPoint(45, 2, None)], "less than no fruit"),
        ([PickPoint(40, 0, 90.0), PickPoint(45, 0, 80.0)], "a weight but no count"),
    ],
)
def test_what_cannot_be_told_is_a_sentence(picks: list[PickPoint], words: str) -> None:
    assert words in reason(picks)


def test_counts_without_any_weight_say_nothing_by_weight() -> None:
    assert "by count it can" in reason([PickPoint(40, 3, None), PickPoint(45, 2, None)], Measure.GRAMS)
