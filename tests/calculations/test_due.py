"""When something falls due: in any history it keeps its rhythm, and what was said of it holds."""

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.due import DueDay, DueRule, PutOff, due_days

TODAY = date(2026, 3, 7)


def day(number: int) -> date:
    """A day so many days after today."""
    return TODAY + timedelta(days=number)


PAST = st.integers(-120, 0).map(day)
RHYTHM = st.integers(1, 40)


def test_what_was_never_done_is_due_from_its_first_day_and_then_in_its_rhythm() -> None:
    found = due_days(DueRule(day(2), 7), [], [], TODAY, day(20))
    assert found == [DueDay(day(2), day(2)), DueDay(day(9), day(9)), DueDay(day(16), day(16))]


def test_a_weekly_routine_that_was_not_done_is_late_and_counts_on_from_the_day_it_is_done() -> None:
    rule = DueRule(day(-60), 7)
    late = due_days(rule, [day(-10)], [], TODAY, day(8))
    assert [(d.day, d.late_days) for d in late] == [(TODAY, 3), (day(7), 0)]
    assert due_days(rule, [day(-10), TODAY], [], TODAY, day(8)) == [DueDay(day(7), day(7))]


def test_what_comes_every_day_is_never_late() -> None:
    found = due_days(DueRule(day(-60), 1), [day(-5)], [], TODAY, day(1))
    assert [d.late_days for d in found] == [0, 0]


def test_something_due_once_waits_until_it_is_done_and_a_day_before_it_does_not_count() -> None:
    rule = DueRule(day(-4))
    assert due_days(rule, [day(-9)], [], TODAY, day(9)) == [DueDay(TODAY, day(-4))]
    assert due_days(rule, [day(-2)], [], TODAY, day(9)) == []


def test_what_was_put_off_is_late_only_from_the_new_day() -> None:
    rule = DueRule(day(-60), 7)
    off = [PutOff(day(-3), day(-1))]
    assert due_days(rule, [day(-10)], off, TODAY, TODAY) == [DueDay(TODAY, day(-1))]
    done_since = due_days(rule, [day(-10), day(-2)], off, TODAY, day(6))
    assert done_since == [DueDay(day(5), day(5))]


def test_it_ends_on_its_last_day_and_is_asked_for_within_its_spans_only() -> None:
    assert [d.day for d in due_days(DueRule(TODAY, 2, last=day(3)), [], [], TODAY, day(9))] == [TODAY, day(2)]
    spans = ((day(-3), day(1)), (day(5), day(5)))
    assert [d.day for d in due_days(DueRule(day(-9), 1, spans=spans), [], [], TODAY, day(9))] == [TODAY, day(1), day(5)]


def test_in_a_span_it_is_late_from_the_first_day_of_the_span_at_most() -> None:
    rule = DueRule(day(-60), 3, spans=((day(-4), day(9)),))
    assert due_days(rule, [day(-30)], [], TODAY, TODAY) == [DueDay(TODAY, day(-4))]


def test_a_rhythm_outside_a_year_and_a_range_turned_round_are_refused() -> None:
    with pytest.raises(ValueError, match="every_days 0 is outside 1 to 366"):
        DueRule(TODAY, 0)
    with pytest.raises(ValueError, match="before first_day"):
        due_days(DueRule(TODAY, 1), [], [], TODAY, day(-1))


@given(RHYTHM, st.lists(PAST, max_size=6), PAST)
def test_times_are_a_rhythm_apart_from_the_last_time_on(every: int, done: list[date], first: date) -> None:
    found = due_days(DueRule(first, every), done, [], TODAY, day(90))
    marks = ([max(done)] if done else []) + [d.day for d in found]
    gaps = [(b - a).days for a, b in pairwise(marks)]
    assert all(gap >= every for gap in gaps)
    assert all(gap == every for gap in gaps[1 if done else 0 :])
    assert found


@given(RHYTHM, st.lists(PAST, max_size=6), PAST)
def test_doing_it_today_moves_it_by_one_rhythm(every: int, done: list[date], first: date) -> None:
    found = due_days(DueRule(first, every), [*done, TODAY], [], TODAY, day(90))
    assert found[0] == DueDay(day(every), day(every))


@given(st.one_of(st.none(), RHYTHM), st.lists(PAST, max_size=4), PAST, st.integers(1, 30))
def test_what_was_put_off_today_is_not_asked_for_before_its_day(
    every: int | None, done: list[date], first: date, by: int
) -> None:
    rule = DueRule(first, every)
    off = [PutOff(TODAY, day(by))]
    earlier = [d for d in done if d < TODAY]
    found = due_days(rule, earlier, off, TODAY, day(90))
    assert all(d.day >= day(by) for d in found)
    if due_days(rule, earlier, [], TODAY, TODAY):
        assert found[0] == DueDay(day(by), day(by))


@given(st.one_of(st.none(), RHYTHM), st.lists(PAST, max_size=4), PAST)
def test_nothing_is_early_and_only_the_first_time_is_late(every: int | None, done: list[date], first: date) -> None:
    found = due_days(DueRule(first, every), done, [], TODAY, day(60))
    assert all(d.since >= first and d.late_days >= 0 for d in found)
    assert all(d.late_days == 0 for d in found[1:])
    assert every is not None or len(found) <= 1
