"""What was done at one crop: weights, counts and culls, each step taken back as it was made."""

from dataclasses import replace
from datetime import time

import pytest

from growlog.records.entry import Cull, CullCause
from growlog.services.tally import COUNTERS, FRUIT_CHECKS, CannotTally, CropTally
from growlog.services.tally.wording import crop_line, running_line
from tests.services.tally.conftest import MORNING

EMPTY = CropTally("crop-1")


def test_count_total_and_mean_run_along_as_fruit_is_weighed() -> None:
    crop = EMPTY.picked(93).picked(78).picked()
    assert (crop.weights_g, crop.total_g, crop.mean_g, crop.unweighed_count) == ((93.0, 78.0), 171.0, 85.5, 1)
    assert running_line(crop) == "3 fruit, 171\u2009g, mean 85.5\u2009g (1 of them not weighed)"


def test_the_last_fruit_is_struck_in_the_order_picked_weighed_or_not() -> None:
    crop = EMPTY.picked(93).picked().picked(78)
    assert crop.struck_last().fruit == (93.0, None)
    assert crop.struck_last().struck_last().fruit == (93.0,)
    assert crop.struck(0).fruit == (None, 78.0)


def test_striking_from_nothing_is_refused_with_a_sentence() -> None:
    with pytest.raises(CannotTally, match="no fruit to strike"):
        EMPTY.struck_last()


@pytest.mark.parametrize("weight_g", [0, -5, 60000, float("nan")])
def test_a_weight_that_no_fruit_has_is_refused_and_the_state_stands(weight_g: float) -> None:
    crop = EMPTY.picked(93)
    with pytest.raises(CannotTally, match="outside"):
        crop.picked(weight_g)
    assert crop.fruit == (93.0,)


def test_a_number_of_unweighed_fruit_adds_or_takes_the_last_ones_and_keeps_the_weights() -> None:
    crop = EMPTY.picked(93).with_unweighed(3).picked(78)
    assert crop.fruit == (93.0, None, None, None, 78.0)
    assert crop.with_unweighed(1).fruit == (93.0, None, 78.0)
    assert crop.with_unweighed(0).weights_g == (93.0, 78.0)
    with pytest.raises(CannotTally):
        EMPTY.with_unweighed(-1)


def test_culls_are_counted_by_cause_and_taken_back() -> None:
    crop = EMPTY.culled(CullCause.CRACKED).culled(CullCause.MISSHAPEN).culled(CullCause.CRACKED)
    assert crop.culls == (Cull(1, CullCause.MISSHAPEN), Cull(2, CullCause.CRACKED))
    assert crop.culled(CullCause.MISSHAPEN, -1).culls == (Cull(2, CullCause.CRACKED),)
    with pytest.raises(CannotTally, match="none to take back"):
        crop.culled(CullCause.OVERSIZE, -1)


@pytest.mark.parametrize("counter", COUNTERS)
def test_a_counter_holds_its_limits(counter: str) -> None:
    assert getattr(EMPTY.counted(counter, 5, MORNING), counter) == 5
    for wrong in (-1, 1000):
        with pytest.raises(CannotTally):
            EMPTY.counted(counter, wrong, MORNING)


def test_the_pollination_keeps_the_time_of_the_first_flower() -> None:
    crop = EMPTY.counted("females_pollinated", 1, MORNING).counted("females_pollinated", 2, time(9, 30))
    assert crop.pollinated_at == MORNING
    assert crop.counted("females_pollinated", 0, time(10)).pollinated_at is None


def test_males_open_are_seen_and_are_no_pollination() -> None:
    assert EMPTY.counted("males_open", 9, MORNING).pollinated_at is None


def test_a_time_that_was_written_stays_when_the_clocks_time_goes() -> None:
    crop = EMPTY.counted("trusses_vibrated", 4, MORNING)
    assert crop.without_own_time().pollinated_at is None
    assert crop.with_time(time(7)).without_own_time().pollinated_at == time(7)


def test_nought_in_the_fruit_check_is_something_seen() -> None:
    assert not EMPTY.is_touched
    for name in FRUIT_CHECKS:
        assert EMPTY.checked(name, 0).is_touched
        assert not EMPTY.checked(name, 0).checked(name, None).is_touched


def test_minutes_alone_touch_a_crop_but_are_no_work_at_it() -> None:
    crop = EMPTY.with_minutes(8)
    assert (crop.is_touched, crop.is_worked) == (True, False)
    with pytest.raises(CannotTally):
        EMPTY.with_minutes(1441)


def test_the_line_of_a_crop_names_only_what_was_done() -> None:
    assert crop_line(EMPTY) == ""
    crop = EMPTY.picked(93).picked(78).counted("females_pollinated", 2, MORNING)
    assert crop_line(crop) == "2 picked, 171\u2009g; 2 pollinated"
    assert crop_line(replace(EMPTY, note="mildew below").with_minutes(3)) == "note; 3 min"
