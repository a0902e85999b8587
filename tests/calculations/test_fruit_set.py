"""Set rate and days to pick together: recovered from crops whose truth is known, and told apart from what is open."""

import numpy as np
import pytest

from growlog.calculations.flower_records import Flowers, FlowerSource, SetCheck, TaggedFlower, UsualLag, explained_picks
from growlog.calculations.fruit_set import FlowerRecords, FruitSet, estimate_fruit_set
from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_curve import PickPoint
from tests.calculations.simulated_flowers import flowering_crop

USUAL = UsualLag(4, 9, "common practice")
FLOWERS = [Flowers(age, 2) for age in range(40, 60, 2)]
PICKS = [PickPoint(age, 1, None) for age in range(46, 60, 2)]


def told(records: FlowerRecords, as_of: int = 60, usual: UsualLag = USUAL) -> FruitSet:
    """The estimate, which is expected to be there."""
    found = estimate_fruit_set(records, usual, as_of)
    assert isinstance(found, FruitSet), found
    return found


def test_half_of_the_flowers_setting_and_six_days_to_pick_are_found() -> None:
    found = told(FlowerRecords(FLOWERS, PICKS))
    assert found.rate.low < 0.5 < found.rate.high
    assert found.days.low < 6 < found.days.high
    assert found.figures[0].value == pytest.approx(100 * found.rate.value)


def test_flowers_still_too_young_are_open_and_not_failed() -> None:
    more = [*FLOWERS, Flowers(59, 20)]
    last_pick = [*PICKS, PickPoint(60, 1, None)]
    before, after = told(FlowerRecords(FLOWERS, last_pick)), told(FlowerRecords(more, last_pick))
    assert after.rate.value == pytest.approx(before.rate.value, abs=0.02)
    assert after.open_flowers == pytest.approx(before.open_flowers + 20, abs=0.5)
    assert "too young to tell" in after.sentences[1]


def test_fruit_picked_before_any_flower_could_bring_it_is_reported_and_left_out() -> None:
    early = [PickPoint(38, 3, None), PickPoint(41, 2, None)]
    found = told(FlowerRecords(FLOWERS, [*early, *PICKS]))
    assert found.unexplained == 5
    assert found.rate.value == pytest.approx(told(FlowerRecords(FLOWERS, PICKS)).rate.value, abs=0.02)
    assert "5 fruit were picked that no flower" in found.sentences[-1]


def test_more_fruit_than_flowers_are_unexplained() -> None:
    sessions = explained_picks([Flowers(40, 2)], [PickPoint(46, 3, None, 1)], USUAL)
    assert [(s.explained, s.unexplained) for s in sessions] == [(2, 2)]


def test_tags_give_the_days_and_fruit_checks_the_rate() -> None:
    tags = [TaggedFlower(40 + i, 50 + i, 49 + i) for i in range(6)] + [TaggedFlower(45, dropped_age=48)] * 2
    tagged = told(FlowerRecords([], [], tags), usual=UsualLag(5, 15, "common practice"))
    assert tagged.days.value == pytest.approx(9.5, abs=0.5)
    assert tagged.rate.value == pytest.approx(0.75, abs=0.08)
    checked = told(FlowerRecords(FLOWERS, PICKS, checks=[SetCheck(60, 40)]))
    assert checked.rate.value == pytest.approx(0.59, abs=0.04)
    assert checked.rate.high - checked.rate.low < 0.15


@pytest.mark.parametrize(
    ("records", "words"),
    [
        (FlowerRecords([], PICKS), "No flower was written down"),
        (FlowerRecords(FLOWERS[:1], PICKS), "without a flower written down"),
        (FlowerRecords(FLOWERS[:2], PICKS[:2]), "old enough to tell"),
        (FlowerRecords(FLOWERS, [PickPoint(58, 2, None)]), "were picked so far"),
        (FlowerRecords(FLOWERS, []), "old enough to tell"),
        (FlowerRecords([Flowers(40, 0), Flowers(41, -3)], []), "No flower was written down"),
    ],
)
def test_too_little_is_a_sentence(records: FlowerRecords, words: str) -> None:
    found = estimate_fruit_set(records, USUAL, 60)
    assert isinstance(found, NotYet)
    assert words in found.reason


def test_all_picks_on_one_day_and_every_flower_setting_break_nothing() -> None:
    one_day = told(FlowerRecords(FLOWERS, [PickPoint(58, 12, None)]))
    every = told(FlowerRecords(FLOWERS, [PickPoint(age, 2, None) for age in range(46, 66, 2)]), 70)
    for found in (one_day, every):
        assert 0 < found.rate.low < found.rate.value < found.rate.high < 1
        assert np.isfinite(found.covariance).all()
    assert every.rate.value > 0.85


def test_which_flowers_were_counted_is_kept() -> None:
    assert told(FlowerRecords(FLOWERS, PICKS, source=FlowerSource.SEEN_OPEN)).source is FlowerSource.SEEN_OPEN


@pytest.mark.slow
@pytest.mark.parametrize("with_tags", [False, True])
def test_rate_and_days_are_recovered_without_bias_beyond_five_per_cent(with_tags: bool) -> None:
    rates, days, covered = [], [], []
    for seed in range(3000, 3120):
        crop = flowering_crop(seed)
        records = FlowerRecords([], [], crop.tags) if with_tags else FlowerRecords(crop.flowers, crop.picks)
        found = told(records, crop.end_age, crop.usual)
        rates.append(found.rate.value / crop.rate - 1)
        days.append(found.days.value / crop.days - 1)
        covered += [found.rate.low <= crop.rate <= found.rate.high, found.days.low <= crop.days <= found.days.high]
    assert abs(np.mean(rates)) < 0.05
    assert abs(np.mean(days)) < 0.05
    assert 0.7 <= np.mean(covered) <= 0.9
