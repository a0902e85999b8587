"""Labour of a session: the stopwatch, and the minutes that are shared, typed or left over."""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from growlog.services.tally import CannotTally, CropTally, Stopwatch, Tally
from growlog.services.tally.stopwatch import LEFT_ON_AFTER_H
from growlog.services.tally.wording import minutes_line, minutes_text

START = datetime(2026, 1, 18, 12, 40, tzinfo=UTC)
A, B = CropTally("a").picked(93), CropTally("b").picked(12)


def after(**time: int) -> datetime:
    return START + timedelta(**time)


def test_runs_of_the_stopwatch_add_up() -> None:
    watch = Stopwatch().started(START).stopped(after(minutes=5)).started(after(minutes=20))
    assert (watch.running, watch.elapsed_s(after(minutes=22))) == (True, 420)
    assert watch.stopped(after(minutes=22)) == Stopwatch(420)


def test_a_stopwatch_left_on_overnight_is_doubted_and_does_not_count_until_answered(
    tally_of_day: Callable[..., Tally],
) -> None:
    watch = Stopwatch(120, START)
    assert not watch.is_doubtful(after(hours=LEFT_ON_AFTER_H))
    morning = after(hours=13, minutes=20)
    assert watch.is_doubtful(morning)
    tally = tally_of_day(A, stopwatch=watch)
    assert tally.measured_s(morning) == 120
    with pytest.raises(CannotTally, match="left on"):
        tally.shared_equally(morning)
    assert watch.without_present_run() == Stopwatch(120)
    assert watch.stopped(morning).run_s == 120 + 13 * 3600 + 20 * 60


def test_a_clock_that_was_put_back_makes_no_negative_time() -> None:
    watch = Stopwatch(60, START)
    assert watch.is_doubtful(after(minutes=-5))
    assert watch.elapsed_s(after(minutes=-5)) == 60


def test_minutes_are_shared_in_equal_whole_parts_and_the_rest_is_left_over(tally_of_day: Callable[..., Tally]) -> None:
    tally = tally_of_day(A, B, CropTally("c").with_minutes(2), stopwatch=Stopwatch(12 * 60 + 40))
    shared = tally.shared_equally(START)
    assert [shared.of(c).minutes for c in "abc"] == [6, 6, 2]  # the one with nothing but minutes keeps what was typed
    assert shared.left_over_s(START) == 40 - 120
    assert tally_of_day(A, B, stopwatch=Stopwatch(760)).shared_equally(START).left_over_s(START) == 40


def test_typed_minutes_stand_instead_of_the_stopwatch(tally_of_day: Callable[..., Tally]) -> None:
    tally = tally_of_day(A.with_minutes(8), stopwatch=Stopwatch(600)).with_minutes_typed(15)
    assert (tally.measured_s(START), tally.left_over_s(START)) == (900, 420)
    assert tally.with_minutes_typed(None).left_over_s(START) == 120
    with pytest.raises(CannotTally):
        tally.with_minutes_typed(-1)


def test_there_is_nothing_to_share_without_time_or_without_work(tally_of_day: Callable[..., Tally]) -> None:
    with pytest.raises(CannotTally, match="no minutes to share"):
        tally_of_day(A).shared_equally(START)
    with pytest.raises(CannotTally, match="No crop was worked at"):
        tally_of_day(minutes_typed=10).shared_equally(START)


def test_where_the_minutes_went_is_said_with_what_is_left_over() -> None:
    named = [
        ("Boxroom Gold", A.with_minutes(8)),
        ("Landing Light", B.with_minutes(3)),
        ("Porch Violet", CropTally("c")),
    ]
    expected = "8 min here, 3 min Landing Light, 1:40 not given to a crop"
    assert minutes_line(named, "a", 100) == expected
    assert minutes_line(named, "a", -60).endswith("1 min more than was measured")
    assert minutes_line([], "a", None) == ""
    assert minutes_text(13 * 3600 + 20 * 60) == "13 h 20 min"


def test_a_tally_with_only_a_running_stopwatch_would_be_missed(tally_of_day: Callable[..., Tally]) -> None:
    assert not tally_of_day().is_touched
    assert replace(tally_of_day(), stopwatch=Stopwatch(0, START)).is_touched
    assert replace(tally_of_day(), typed="86").is_touched
