"""On which days flowers count as open."""

from datetime import date, timedelta
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.flowering import common_days, open_spans

DAY = date(2026, 1, 10)
DAYS = st.lists(st.integers(0, 40).map(lambda n: DAY + timedelta(days=n)), max_size=8)


def day(number: int) -> date:
    """A day so many days on."""
    return DAY + timedelta(days=number)


def test_what_was_seen_holds_for_a_few_days() -> None:
    assert open_spans([DAY], [], 3) == ((DAY, day(3)),)
    assert open_spans([day(8), DAY, day(2)], [], 3) == ((DAY, day(5)), (day(8), day(11)))


def test_a_look_that_saw_none_ends_it() -> None:
    assert open_spans([DAY], [day(2)], 3) == ((DAY, day(1)),)
    assert open_spans([DAY], [DAY], 3) == ((DAY, day(3)),)
    assert open_spans([DAY, day(3)], [day(2)], 5) == ((DAY, day(1)), (day(3), day(8)))


def test_days_of_both_are_common() -> None:
    assert common_days([(DAY, day(5))], [(day(3), day(9)), (day(-4), DAY)]) == ((day(3), day(5)), (DAY, DAY))
    assert common_days([(DAY, day(2))], [(day(3), day(9))]) == ()


def test_a_look_cannot_hold_for_less_than_no_day() -> None:
    with pytest.raises(ValueError, match="holds_days -1"):
        open_spans([DAY], [], -1)


@given(DAYS, DAYS, st.integers(0, 9))
def test_each_sight_lies_in_a_span_and_no_look_that_saw_none_does(
    seen: list[date], none: list[date], holds: int
) -> None:
    spans = open_spans(seen, none, holds)
    inside = {a + timedelta(days=n) for a, b in spans for n in range((b - a).days + 1)}
    assert set(seen) <= inside
    assert not (set(none) - set(seen)) & inside
    assert all(later[0] > earlier[1] for earlier, later in pairwise(spans))
