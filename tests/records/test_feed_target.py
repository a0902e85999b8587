"""Targets of the grower's own."""

from growlog.records.feed_target import FeedTarget, TargetRange


def fields_of(target: FeedTarget) -> list[str]:
    """The fields that have something against them."""
    return [problem.field for problem in target.problems()]


def test_a_target_with_a_name_and_a_range_is_fit() -> None:
    assert fields_of(FeedTarget("t", "Fruit", (TargetRange("N", 140, 180), TargetRange("Ca", 150)))) == []


def test_a_target_needs_a_name_and_a_range() -> None:
    assert fields_of(FeedTarget("t", " ")) == ["name", "ranges"]


def test_a_range_that_ends_below_its_beginning_is_refused() -> None:
    assert "N" in FeedTarget("t", "Fruit", (TargetRange("N", 180, 140),)).problems()[0].sentence


def test_a_negative_content_is_refused() -> None:
    assert fields_of(FeedTarget("t", "Fruit", (TargetRange("N", -1, 140),))) == ["ranges"]
