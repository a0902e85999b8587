"""Fruit of the next days: from flowers where they can tell, else from the recent rate, and always said which."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from growlog.calculations.coming_picks import Basis, ComingAsk, ComingPicks, coming_picks
from growlog.calculations.flower_records import Flowers, FlowerSource, UsualLag
from growlog.calculations.fruit_set import FlowerRecords, estimate_fruit_set
from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_curve import PickPoint
from tests.calculations.simulated_flowers import flowering_crop

ASK = ComingAsk(date(2026, 1, 1), 60)
USUAL = UsualLag(4, 9, "common practice")
FLOWERS = [Flowers(age, 2) for age in range(40, 61, 2)]
PICKS = [PickPoint(age, 1, None) for age in range(46, 61, 2)]
NO_FLOWERS = NotYet("No flower was written down.")


def told(
    flowers: list[Flowers], picks: list[PickPoint], ask: ComingAsk = ASK, with_flowers: bool = True
) -> ComingPicks:
    """The band, which is expected to be there."""
    known = estimate_fruit_set(FlowerRecords(flowers, picks), USUAL, ask.as_of_age) if with_flowers else NO_FLOWERS
    found = coming_picks(ask, flowers, picks, known, seed=2)
    assert isinstance(found, ComingPicks)
    return found


def test_the_next_fortnight_is_a_band_with_its_last_day() -> None:
    found = told(FLOWERS, PICKS)
    end = found.days[-1]
    assert (end.age, len(found.days)) == (74, 14)
    assert end.low <= 7 <= end.high  # one fruit every second day
    assert found.sentence == f"{end.low} to {end.high}\u2009fruit by 16 March 2026."
    assert found == told(FLOWERS, PICKS)


def test_without_new_flowers_only_those_that_are_out_can_bring_fruit() -> None:
    found = told(FLOWERS, PICKS, replace(ASK, flowers_go_on=False))
    assert found.days[-1].high <= 8
    assert found.days[-1].middle < told(FLOWERS, PICKS).days[-1].middle
    assert found.days[-1].high == found.days[-3].high  # nothing is left by then


def test_the_band_never_falls_and_ends_at_the_planned_clearing() -> None:
    days = told(FLOWERS, PICKS, replace(ASK, planned_end_age=66)).days
    assert days[-1].age == 66
    for band in ("low", "middle", "high"):
        values = [getattr(day, band) for day in days]
        assert values == sorted(values)


def test_culls_are_taken_off() -> None:
    half_culled = [PickPoint(p.age, p.fruit_count, None, 1) for p in PICKS]
    flowers = [Flowers(f.age, 4) for f in FLOWERS]
    assert told(flowers, half_culled).days[-1].middle == pytest.approx(told(FLOWERS, PICKS).days[-1].middle, abs=2)


def test_a_crop_without_flowers_written_down_uses_the_recent_rate_and_says_so() -> None:
    found = told([], PICKS, with_flowers=False)
    assert found.basis is Basis.RECENT_RATE
    assert found.why_rate == NO_FLOWERS.reason
    assert "not from flowers" in found.basis_sentence
    assert found.days[-1].low <= 7 <= found.days[-1].high


def test_picks_that_fall_behind_their_flowers_are_told() -> None:
    flowers = [Flowers(age, 2) for age in range(30, 90, 2)]
    picks = [PickPoint(age, 1, None) for age in range(36, 91, 2)]
    few = [p for p in picks if p.age <= 76] + [PickPoint(82, 1, None)]
    for given_picks, is_told in ((picks, False), (few, True)):
        known = estimate_fruit_set(FlowerRecords(flowers, given_picks), USUAL, 90)
        found = coming_picks(replace(ASK, as_of_age=90), flowers, given_picks, known, 2, flowers)
        assert isinstance(found, ComingPicks)
        assert ("if the plant is waning" in found.basis_sentence) is is_told


def test_flowers_seen_open_serve_crops_that_set_by_themselves() -> None:
    known = estimate_fruit_set(FlowerRecords(FLOWERS, PICKS, source=FlowerSource.SEEN_OPEN), USUAL, 60)
    found = coming_picks(ASK, FLOWERS, PICKS, known, seed=2)
    assert isinstance(found, ComingPicks)
    assert "flowers seen open" in found.basis_sentence


@pytest.mark.parametrize(
    ("picks", "ask", "words"),
    [
        ([], ASK, "Nothing was picked yet"),
        ([PickPoint(50, 4, None)], ASK, "One picking day"),
        (PICKS, replace(ASK, planned_end_age=60), "no time left"),
        (PICKS, replace(ASK, days=0), "no time left"),
    ],
)
def test_what_cannot_be_told_is_a_sentence(picks: list[PickPoint], ask: ComingAsk, words: str) -> None:
    found = coming_picks(ask, [], picks, NO_FLOWERS, seed=2)
    assert isinstance(found, NotYet)
    assert words in found.reason


@settings(max_examples=40, deadline=None)
@given(
    st.lists(st.builds(Flowers, st.integers(0, 90), st.integers(-2, 40)), max_size=12),
    st.lists(st.builds(PickPoint, st.integers(0, 90), st.integers(0, 60), st.none(), st.integers(0, 5)), max_size=12),
    st.integers(0, 95),
)
def test_no_records_however_odd_give_a_crash_or_a_band_upside_down(
    flowers: list[Flowers], picks: list[PickPoint], age: int
) -> None:
    known = estimate_fruit_set(FlowerRecords(flowers, picks), USUAL, age)
    found = coming_picks(replace(ASK, as_of_age=age), flowers, picks, known, seed=2)
    if isinstance(found, NotYet):
        assert found.reason.endswith(".")
        return
    assert all(0 <= day.low <= day.middle <= day.high for day in found.days)
    assert found.days[-1].high <= 3 * sum(max(f.count, 0) for f in flowers) + 6 * sum(p.fruit_count for p in picks) + 9


@pytest.mark.slow
def test_the_band_of_known_crops_holds_in_about_four_of_five() -> None:
    held = []
    for seed in range(4000, 4080):
        crop = flowering_crop(seed)
        known = estimate_fruit_set(FlowerRecords(crop.flowers, crop.picks), crop.usual, crop.end_age)
        ask = ComingAsk(date(2026, 1, 1), crop.end_age, flowers_go_on=False)
        found = coming_picks(ask, crop.flowers, crop.picks, known, seed)
        assert isinstance(found, ComingPicks)
        truth = crop.picked_between(crop.end_age, crop.end_age + 14)
        held.append(found.days[-1].low <= truth <= found.days[-1].high)
    assert 0.7 <= np.mean(held) <= 0.9
