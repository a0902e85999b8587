"""Forecasts of 300 simulated seasons meet their aims; `python -m tests.calculations.season_recovery` prints them."""

import pytest

from tests.calculations.season_recovery import (
    CALIBRATION_SEED,
    SHARES,
    TEST_SEED,
    Case,
    case,
    cases,
    interval_score,
    table,
)
from tests.calculations.simulated_seasons import SeasonShape, season


def test_the_interval_score_is_the_width_and_ten_times_the_miss() -> None:
    # Gneiting and Raftery (2007), equation 43, with 80 %.
    assert interval_score(2, 6, 5) == 4
    assert interval_score(2, 6, 7) == pytest.approx(14)
    assert interval_score(2, 6, 0) == pytest.approx(24)


def test_a_season_is_the_same_for_the_same_seed_and_the_seeds_of_calibration_are_others() -> None:
    assert season(SeasonShape.TWO_FLUSHES, 5) == season(SeasonShape.TWO_FLUSHES, 5)
    assert season(SeasonShape.TWO_FLUSHES, 5) != season(SeasonShape.TWO_FLUSHES, 6)
    assert CALIBRATION_SEED - TEST_SEED > 300


def test_a_stopped_season_has_no_pick_in_its_last_days() -> None:
    made = [season(SeasonShape.SUDDEN_STOP, seed) for seed in range(20)]
    assert all(s.picks[-1].age < s.planned_end for s in made)


def test_the_table_has_a_row_for_each_shape_and_share() -> None:
    found = [case(season(shape, 77), share) for shape in SeasonShape for share in SHARES]
    assert len(table(found).splitlines()) == 1 + 3 * len(SeasonShape) + 3 + 1


@pytest.fixture(scope="module")
def found() -> list[Case]:
    """Sixty seasons of each of five shapes, at three shares."""
    return cases(60, TEST_SEED)


@pytest.mark.slow
def test_the_eighty_per_cent_band_covers_what_remained_in_seventy_to_ninety_of_a_hundred(found: list[Case]) -> None:
    said = [c.covered for c in found if c.covered is not None]
    assert 0.7 <= sum(said) / len(said) <= 0.9


@pytest.mark.slow
def test_the_forecast_scores_better_than_the_recent_rate_carried_on(found: list[Case]) -> None:
    for share in SHARES:
        of = [c for c in found if c.share == share and c.score is not None]
        assert sum(c.score or 0 for c in of) < sum(c.rival_score for c in of), share


@pytest.mark.slow
def test_from_half_season_on_it_refuses_in_at_most_one_case_in_ten(found: list[Case]) -> None:
    late = [c for c in found if c.share != "1/3"]
    assert sum(c.covered is None for c in late) <= 0.1 * len(late)
