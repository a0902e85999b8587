"""The board's axis: ages to pixels and back, zoom, pan, labels."""

from datetime import date
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.desktop.board.axis import LEAST_SPAN_DAYS, AgeAxis

lasts = st.integers(1, 500)
widths = st.floats(50, 3000)
factors = st.floats(0.1, 20)
shares = st.floats(0, 1)


def axis_of(last: int, width: float) -> AgeAxis:
    return AgeAxis.over(0, last).placed(100, width)


@given(lasts, widths, st.floats(-50, 600))
def test_an_age_comes_back_from_its_pixel(last: int, width: float, age: float) -> None:
    axis = axis_of(last, width)
    assert axis.age(axis.x(age)) == pytest.approx(age, abs=1e-6)


@given(lasts, widths, st.lists(st.tuples(factors, shares, st.floats(-2000, 2000)), max_size=6))
def test_what_is_in_view_never_leaves_the_bounds(
    last: int, width: float, moves: list[tuple[float, float, float]]
) -> None:
    axis = axis_of(last, width)
    for factor, share, pixels in moves:
        axis = axis.zoomed(factor, axis.left + share * width).panned(pixels)
        assert axis.lowest - 1e-6 <= axis.start < axis.end <= axis.highest + 1e-6
        assert axis.end - axis.start >= min(LEAST_SPAN_DAYS, axis.highest - axis.lowest) - 1e-6


@given(st.integers(60, 500), widths, shares)
def test_zooming_in_keeps_the_age_under_the_pointer(last: int, width: float, share: float) -> None:
    axis = axis_of(last, width)
    x = axis.left + share * width
    assert axis.zoomed(2, x).age(x) == pytest.approx(axis.age(x), abs=1e-6)


@given(lasts, widths, factors)
def test_fitting_after_any_zoom_shows_everything(last: int, width: float, factor: float) -> None:
    axis = axis_of(last, width)
    assert axis.zoomed(factor, 300).fitted() == axis
    assert axis.fitted().is_whole


@given(lasts, widths, st.integers(0, 500))
def test_every_day_of_the_crop_can_be_brought_into_view(last: int, width: float, age: int) -> None:
    axis = axis_of(last, width).zoomed(10, 100).showing(min(age, last))
    assert axis.start - 1e-6 <= min(age, last) <= axis.end + 1e-6


@given(lasts, widths, st.floats(20, 80))
def test_labels_stand_no_closer_than_asked(last: int, width: float, least: float) -> None:
    axis = axis_of(last, width)
    ticks = axis.age_ticks(least)
    assert all(axis.x(b) - axis.x(a) >= least - 1e-6 for a, b in pairwise(ticks))
    assert all(axis.start <= t <= axis.end for t in ticks)


def test_a_season_of_112_days_is_labelled_by_the_week() -> None:
    assert axis_of(112, 720).age_ticks(32) == list(range(0, 113, 7))


def test_a_close_view_is_labelled_by_the_day() -> None:
    axis = axis_of(112, 720).zoomed(100, 100)
    assert axis.age_ticks(32)[:3] == [0, 1, 2]


def test_by_the_calendar_a_season_is_labelled_by_months() -> None:
    # 15 November 2025 is day 0: 1 December is day 16, 1 January day 47.
    assert axis_of(112, 400).calendar_ticks(date(2025, 11, 15), 60) == [16, 47, 78, 106]


def test_by_the_calendar_a_month_is_labelled_on_mondays() -> None:
    # 15 November 2025 is a Saturday (ISO 8601 weekday 6): the first Monday is day 2.
    assert axis_of(28, 600).calendar_ticks(date(2025, 11, 15), 60) == [2, 9, 16, 23]


def test_week_marks_are_left_out_where_they_would_run_together() -> None:
    axis = axis_of(112, 720)
    assert axis.week_ticks(2, 6)[:2] == [2, 9]
    assert axis.week_ticks(2, 60) == []
