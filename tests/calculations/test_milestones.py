"""Milestones at their plant ages, the packet's figure, and what is usual."""

from datetime import date

import pytest

from growlog.calculations.milestones import (
    CountedFrom,
    Milestone,
    SeenAges,
    UsualRange,
    against_packet,
    against_usual,
    explain_milestone,
    first_flower_to_first_pick,
    milestone_ages,
    peak_week,
    usual_for,
)
from growlog.calculations.yield_curve import PickPoint

SOWN = date(2026, 1, 1)
SEEN = SeenAges(emergence=4, transplanting=18, first_male=25, first_female=30, first_set=32)
PICKS = [
    PickPoint(34, 0, 40.0, 1),
    PickPoint(36, 1, 60.0),
    PickPoint(43, 4, None),
    PickPoint(48, 3, 200.0),
    PickPoint(60, 2, 90.0),
]
# Rows as printed in a harvest guide of Iowa State University, and in Encyclopaedia Britannica's harvesting table.
USUAL = [
    UsualRange("cucumber", "days to maturity", 55, 65, "sowing", "Iowa State, Vegetable harvest guide"),
    UsualRange("cucumber, slicing", "flower to harvest", 15, 18, "flowering", "Iowa State, Vegetable harvest guide"),
    UsualRange("summer squash (courgette)", "flower to harvest", 3, 7, "fruit age", "Encyclopaedia Britannica"),
]


def test_a_first_pick_on_day_36_of_a_packets_55_days_is_19_days_and_35_per_cent_early() -> None:
    # Common practice, no source.
    found = against_packet(55, CountedFrom.SOWING, SEEN, PICKS, SOWN)
    assert found is not None
    assert (found.days, found.late_days) == (36, -19)
    assert found.late_percent == pytest.approx(-34.5, abs=0.1)
    assert found.sentence == "19 days, 35 %, early."
    assert found.figure.value == -19
    assert found.figure.as_of == date(2026, 2, 6)


@pytest.mark.parametrize(
    ("counted_from", "days", "late"), [(CountedFrom.EMERGENCE, 32, 2), (CountedFrom.TRANSPLANTING, 18, -12)]
)
def test_the_packets_days_are_counted_from_what_the_packet_counts_from(
    counted_from: CountedFrom, days: int, late: int
) -> None:
    found = against_packet(30, counted_from, SEEN, PICKS, SOWN)
    assert found is not None
    assert (found.days, found.late_days) == (days, late)


def test_without_a_pick_or_the_packets_start_there_is_no_comparison() -> None:
    assert against_packet(55, CountedFrom.SOWING, SEEN, [], SOWN) is None
    assert against_packet(55, CountedFrom.TRANSPLANTING, SeenAges(), PICKS, SOWN) is None
    with pytest.raises(ValueError, match="packet_days 0"):
        against_packet(0, CountedFrom.SOWING, SEEN, PICKS, SOWN)


def test_every_milestone_has_its_plant_age_and_culls_are_no_first_pick() -> None:
    ages = milestone_ages(SEEN, PICKS)
    assert list(ages.values()) == [4, 25, 30, 32, 36, 43, 60]
    assert list(milestone_ages(SeenAges(), []).values()) == [None] * len(Milestone)
    assert explain_milestone(Milestone.LAST_PICK, 60, SOWN).as_of == date(2026, 3, 2)


def test_the_peak_week_holds_most_fruit_and_of_equal_ones_is_the_heavier_and_the_earlier() -> None:
    peak = peak_week(PICKS)
    assert peak is not None
    assert (peak.start_age, peak.fruit_count) == (43, 7)
    even = peak_week([PickPoint(40, 2, 90.0), PickPoint(60, 2, 90.0), PickPoint(80, 2, 80.0)])
    assert even is not None
    assert even.start_age == 40
    assert peak_week([]) is None


def test_first_flower_to_first_pick_needs_both_in_order() -> None:
    assert first_flower_to_first_pick(SEEN, PICKS) == 6
    assert first_flower_to_first_pick(SeenAges(first_female=40), PICKS) is None
    assert first_flower_to_first_pick(SeenAges(), PICKS) is None


@pytest.mark.parametrize(("days", "off", "words"), [(5, 0, "within"), (2, -1, "fewer than"), (9, 2, "more than")])
def test_days_are_held_against_the_usual_range_with_its_source(days: int, off: int, words: str) -> None:
    (row,) = usual_for("Summer squash", "flower to harvest", USUAL)
    found = against_usual(days, row)
    assert found.off_days == off
    assert words in found.sentence
    assert found.sentence.startswith("From flower to pick: ")
    assert "Britannica" in found.sentence


def test_the_usual_ranges_of_a_crop_are_those_of_its_kind() -> None:
    assert [r.low_days for r in usual_for("cucumber", "days to maturity", USUAL)] == [55]
    assert usual_for("okra", "days to maturity", USUAL) == []
