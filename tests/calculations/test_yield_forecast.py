"""Forecasts end where they must, say why they are not there, and do not change when asked again."""

from dataclasses import replace
from datetime import date

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.calculations.season_prior import EarlierSeason, season_like
from growlog.calculations.yield_curve import PickPoint
from growlog.calculations.yield_forecast import ForecastAsk, YieldForecast, forecast_yield

SOWN = date(2026, 1, 1)
ASK = ForecastAsk(SOWN, as_of_age=70, horizon_days=60, planned_end_age=100)
PICKS = [PickPoint(age, 1 + (age % 3), 90.0 * (1 + age % 3)) for age in range(40, 71, 3)]


def told(picks: list[PickPoint], ask: ForecastAsk = ASK) -> YieldForecast:
    """The forecast, which is expected to be there."""
    found = forecast_yield(picks, ask, seed=3)
    assert isinstance(found, YieldForecast)
    return found


def why_not(picks: list[PickPoint], ask: ForecastAsk = ASK) -> str:
    """Why there is none."""
    found = forecast_yield(picks, ask, seed=3)
    assert isinstance(found, NotYet)
    return found.reason


def test_the_forecast_ends_at_the_planned_clearing_and_at_the_stated_horizon() -> None:
    assert told(PICKS).to_age == 100
    assert told(PICKS, replace(ASK, horizon_days=10)).to_age == 80
    assert told(PICKS, replace(ASK, planned_end_age=None)).to_age == 130
    assert "11 April 2026" in told(PICKS).sentences[0]


def test_the_same_seed_gives_the_same_band_and_later_picks_change_nothing() -> None:
    one, two = told(PICKS), told([*PICKS, PickPoint(75, 30, 3000.0)])
    assert (one.low, one.middle, one.high) == (two.low, two.middle, two.high)
    assert one.curve == two.curve


def test_the_band_widens_with_the_days_and_holds_a_steady_rate() -> None:
    found = told(PICKS)
    rate = sum(p.fruit_count for p in PICKS) / 33 * 30
    assert found.low <= rate <= found.high
    widths = [point.high - point.low for point in found.curve]
    assert widths == sorted(widths)
    assert found.curve[0].low == found.curve[0].high == found.so_far


def test_by_weight_the_forecast_is_that_of_the_count_times_the_fruit() -> None:
    by_count, by_weight = told(PICKS), told(PICKS, replace(ASK, measure=Measure.GRAMS))
    assert by_weight.middle == pytest.approx(90 * by_count.middle, rel=0.1)
    assert "kg" in by_weight.sentences[0]


@pytest.mark.parametrize(
    ("picks", "words"),
    [
        ([], "Nothing was picked yet."),
        (PICKS[:1], "One pick so far"),
        ([PickPoint(40, 1, None), PickPoint(40, 4, None)], "fell on one day"),
        (PICKS[:3], "too few for a curve"),
        ([PickPoint(age, 1, None) for age in (40, 45, 50, 60)], "Fewer than 5 fruit"),
    ],
)
def test_too_few_picks_are_a_sentence(picks: list[PickPoint], words: str) -> None:
    assert words in why_not(picks)


def test_before_a_third_of_the_season_it_names_the_day_from_which_it_will_speak() -> None:
    reason = why_not(PICKS, replace(ASK, as_of_age=55))
    assert "Less than a third" in reason
    assert "2 March 2026" in reason  # day 60 of a season from day 40 to day 100


def test_a_crop_that_is_dead_or_past_its_clearing_promises_nothing() -> None:
    assert "nothing more is to come" in why_not(PICKS, replace(ASK, stopped_age=68))
    assert "no time left" in why_not(PICKS, replace(ASK, planned_end_age=70))
    assert "at least one day" in why_not(PICKS, replace(ASK, horizon_days=0))


def test_weeks_without_a_pick_lower_the_band_and_are_said() -> None:
    silent = replace(ASK, as_of_age=91, planned_end_age=121)
    quiet, lively = told(PICKS, silent), told(PICKS)
    assert quiet.middle < lively.middle / 2
    assert quiet.futures.stop_chance > 0.3
    assert "No pick for 21 days" in quiet.sentences[-1]


def test_two_flushes_leave_the_band_finite_and_not_wild() -> None:
    picks = [PickPoint(40 + i * 3, n, None) for i, n in enumerate([2, 6, 8, 5, 1, 1, 2, 6, 9, 6, 2])]
    found = told(picks)
    assert 0 <= found.low <= found.middle <= found.high < 3 * found.so_far


def test_what_the_growers_earlier_crops_did_decides_where_the_picks_do_not() -> None:
    picks = [PickPoint(40 + 4 * i, n, None) for i, n in enumerate([1, 3, 5, 6, 6, 5])]
    ask = replace(ASK, as_of_age=60)
    early, late = (forecast_yield(picks, ask, 3, season_like([EarlierSeason(peak, 0.08)] * 6)) for peak in (0.2, 0.7))
    assert isinstance(early, YieldForecast)
    assert isinstance(late, YieldForecast)
    assert early.middle < late.middle
    assert any("your earlier crops (6)" in sentence for sentence in early.sentences)


def test_without_a_peak_it_says_that_none_can_be_told_yet() -> None:
    found = told(PICKS)
    assert found.no_peak_yet
    assert "no peak can be told yet" in found.sentences[1]
    assert found.figure.low == found.low
    assert "AICc logistic" in {i.name for i in found.figure.inputs}


PICK_LISTS = st.lists(
    st.builds(
        PickPoint, st.integers(0, 120), st.integers(0, 400), st.one_of(st.none(), st.floats(0, 1e5)), st.integers(0, 9)
    ),
    max_size=20,
)


@settings(max_examples=60, deadline=None)
@given(PICK_LISTS, st.integers(0, 150), st.sampled_from(list(Measure)))
def test_no_picks_however_odd_give_a_wild_band_or_a_crash(picks: list[PickPoint], age: int, measure: Measure) -> None:
    found = forecast_yield(picks, ForecastAsk(SOWN, age, 30, age + 40, measure=measure), seed=1)
    if isinstance(found, NotYet):
        assert found.reason.endswith(".")
        return
    assert np.isfinite([found.low, found.middle, found.high]).all()
    assert 0 <= found.low <= found.high <= 60 * found.so_far
