"""What routines and their answers, feed plans and light programmes refuse."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest

from growlog.records.feed_plan import FeedStep
from growlog.records.light_plan import LightStep
from growlog.records.problems import Problem
from growlog.records.routine import DueAnswer, DueOutcome, Routine, RoutineFor, RoutineWhen

DAY = date(2026, 1, 18)
ROUTINE = Routine("1", "Look under the leaves", every_days=3)
STEP = LightStep("1", "room", DAY)


def refused(problems: list[Problem]) -> list[str]:
    """The fields that are refused, not merely asked about."""
    return [p.field for p in problems if not p.asks]


def test_a_whole_routine_and_its_answer_have_nothing_wrong() -> None:
    assert ROUTINE.problems() == []
    assert DueAnswer("1", "routine:1:crop", DAY, DueOutcome.DONE).problems() == []


def test_a_routine_says_what_is_to_be_done() -> None:
    assert refused(replace(ROUTINE, name=" ").problems()) == ["name"]


def test_a_routine_for_one_crop_says_which() -> None:
    assert refused(replace(ROUTINE, who=RoutineFor.CROP).problems()) == ["crop_id"]


@pytest.mark.parametrize(("when", "field"), [
    (RoutineWhen.EVERY_DAYS, "every_days"), (RoutineWhen.AT_AGE, "at_age"), (RoutineWhen.ON_DAY, "from_day"),
])  # fmt: skip
def test_a_rule_needs_the_number_or_day_that_it_counts_by(when: RoutineWhen, field: str) -> None:
    assert refused(Routine("1", "Look", when=when).problems()) == [field]


@pytest.mark.parametrize("when", [RoutineWhen.WHILE_FEMALES_OPEN, RoutineWhen.WHILE_FLOWERING])
def test_a_flowering_rule_needs_no_number(when: RoutineWhen) -> None:
    assert Routine("1", "Look", when=when).problems() == []


def test_a_routine_does_not_end_before_it_begins() -> None:
    assert refused(replace(ROUTINE, from_day=DAY, until_day=DAY - timedelta(days=1)).problems()) == ["until_day"]


def test_a_room_has_no_plant_age_and_no_flowers() -> None:
    at_age = Routine("1", "Clean", RoutineFor.ROOM, RoutineWhen.AT_AGE, at_age=20)
    flowering = Routine("1", "Clean", RoutineFor.ROOM, RoutineWhen.WHILE_FLOWERING)
    assert refused(at_age.problems()) == refused(flowering.problems()) == ["when"]


@pytest.mark.parametrize("until", [None, DAY])
def test_what_is_put_off_is_put_off_to_a_later_day(until: date | None) -> None:
    answer = DueAnswer("1", "k", DAY, DueOutcome.PUT_OFF, until_day=until)
    assert refused(answer.problems()) == ["until_day"]
    assert replace(answer, until_day=DAY + timedelta(days=1)).problems() == []


def test_what_is_left_out_has_a_reason() -> None:
    assert refused(DueAnswer("1", "k", DAY, DueOutcome.LEFT_OUT, reason=" ").problems()) == ["reason"]


@pytest.mark.parametrize(("change", "field"), [
    ({"from_age": -1}, "from_age"), ({"strength_percent": 401}, "strength_percent"), ({"volume_l": -1.0}, "volume_l"),
])  # fmt: skip
def test_a_step_of_the_feed_plan_stays_within_the_limits(change: dict[str, Any], field: str) -> None:
    step = FeedStep("1", "crop", 21, "mix")
    assert step.problems() == []
    assert refused(replace(step, **change).problems()) == [field]


def test_a_light_step_starts_on_a_day_or_at_an_age_and_not_at_both() -> None:
    assert STEP.problems() == []
    assert refused(replace(STEP, from_day=None).problems()) == ["from_day"]
    assert refused(replace(STEP, crop_id="crop", from_age=20).problems()) == ["from_day"]
    assert replace(STEP, from_day=None, crop_id="crop", from_age=20).problems() == []


def test_an_age_belongs_to_a_crop() -> None:
    assert refused(replace(STEP, from_day=None, from_age=20).problems()) == ["crop_id"]


def test_a_light_step_has_at_most_24_hours_of_light() -> None:
    assert refused(replace(STEP, photoperiod_h=24.5).problems()) == ["photoperiod_h"]
