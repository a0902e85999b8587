"""The limits table and what is made from it."""

import pytest

from growlog.records.entry import Feed
from growlog.records.limits import LIMITS, limit
from growlog.records.problems import RecordRefused, check_quantity, refuse


def test_a_range_outside_which_one_is_asked_lies_within_the_accepted_range() -> None:
    assert len(LIMITS) > 40
    for bound in LIMITS.values():
        assert bound.lowest < bound.highest
        for asked in (bound.ask_below, bound.ask_above):
            assert asked is None or bound.lowest < asked < bound.highest


@pytest.mark.parametrize(
    ("key", "value"),
    [("ph", 15), ("ph", -0.1), ("fruit_count", -1), ("photoperiod_h", 25), ("relative_humidity_percent", 101),
     ("ec_ms_per_cm", 20.1), ("weight_g", 0), ("ph", float("nan"))],
)  # fmt: skip
def test_a_value_that_cannot_be_is_refused(key: str, value: float) -> None:
    (problem,) = check_quantity(key, value)
    assert not problem.asks
    assert str(LIMITS[key].label) in problem.sentence


@pytest.mark.parametrize(("key", "value"), [("ph", 4.4), ("ph", 7.6), ("ec_ms_per_cm", 5.1)])
def test_an_unusual_value_is_asked_about_not_refused(key: str, value: float) -> None:
    (problem,) = check_quantity(key, value)
    assert problem.asks


@pytest.mark.parametrize(("key", "value"), [("ph", 4.5), ("ph", 7.5), ("ec_ms_per_cm", 5), ("ph", None)])
def test_a_usual_or_missing_value_has_no_problem(key: str, value: float | None) -> None:
    assert check_quantity(key, value) == []


def test_half_a_fruit_is_refused() -> None:
    assert "whole number" in check_quantity("fruit_count", 2.5)[0].sentence


def test_a_field_without_a_limit_is_our_mistake() -> None:
    with pytest.raises(KeyError):
        limit("no_such_field")


def test_refusing_names_every_firm_problem_and_leaves_questions_out() -> None:
    with pytest.raises(RecordRefused) as refused:
        refuse(Feed(volume_l=-1, ph=15, ec_ms_per_cm=6).problems())
    assert {p.field for p in refused.value.problems} == {"volume_l", "ph"}
