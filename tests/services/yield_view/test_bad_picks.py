"""Records that tell too little or the odd: a sentence instead, never a wild curve, never a crash."""

from dataclasses import replace

import pytest

from growlog.calculations.coming_picks import Basis, ComingPicks
from growlog.calculations.fruit_set import FruitSet
from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_forecast import YieldForecast
from growlog.records.crop import Crop
from growlog.records.entry import Cull, CullCause, Pick
from growlog.records.problems import RecordRefused
from growlog.services.crops import clear_crop
from growlog.services.entries import add_entry
from growlog.services.open_logbook import OpenLogbook
from growlog.services.yield_view.outlook import outlook_of
from growlog.services.yield_view.view import yield_of
from tests.logbooks import entry_on
from tests.services.yield_view.seasons import SEASON, at, pick, picked, pollinated, write_all

pytestmark = pytest.mark.slow


def reason(told: object) -> str:
    """Why it is not told; fails where it is."""
    assert isinstance(told, NotYet), told
    return told.reason


def test_no_picks_are_told_as_nothing_picked_yet(log: OpenLogbook, crop: Crop) -> None:
    view = yield_of(log, crop.id, at(60))
    assert reason(view.forecast_fruit) == "Nothing was picked yet."
    assert reason(view.maturity.packet) == "Nothing was picked yet."
    assert "no flower can be reckoned with" in reason(view.coming)
    assert view.facts.fruit_count == 0


def test_one_pick_tells_no_rate(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop, [(44, 2, 150.0)])
    view = yield_of(log, crop.id, at(60))
    assert reason(view.forecast_fruit).startswith("One pick so far")
    assert view.facts.fruit_per_week is None
    assert "cannot be told" in reason(view.coming)


def test_picks_all_on_a_day_tell_no_rate(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop, [(44, 2, 150.0), (44, 1, 80.0), (44, 3, 260.0)])
    view = yield_of(log, crop.id, at(60))
    assert reason(view.forecast_fruit).startswith("All picks so far fell on one day")
    assert view.facts.sessions == 1
    assert view.facts.fruit_count == 6


def test_a_gap_of_three_weeks_is_told_as_a_chance_that_the_crop_stopped(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    told = yield_of(log, crop.id, at(97)).forecast_fruit
    assert isinstance(told, YieldForecast)
    assert any("No pick for 21 days" in sentence for sentence in told.sentences)
    assert told.low == 0


def test_a_lost_plant_promises_nothing(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    with log.unit() as unit:
        (plant,) = unit.plants.all(crop_id=crop.id)
        unit.change("group", replace(plant, lost_on=at(78)))
        unit.commit()
    view = yield_of(log, crop.id, at(80))
    assert reason(view.forecast_fruit) == "The last plant was lost on 1 February 2026: nothing more is to come."
    assert "was lost" in reason(view.coming)
    assert isinstance(yield_of(log, crop.id, at(77)).forecast_fruit, YieldForecast)


def test_a_cleared_crop_promises_nothing(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    clear_crop(log, crop.id, at(78))
    assert reason(yield_of(log, crop.id, at(80)).forecast_grams).startswith("It was cleared on 1 February 2026")
    assert isinstance(yield_of(log, crop.id, at(77)).forecast_grams, YieldForecast)


def test_counts_without_weights_are_forecast_by_count_alone(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop, [(age, fruit, None) for age, fruit, _ in SEASON])
    view = yield_of(log, crop.id, at(77))
    assert isinstance(view.forecast_fruit, YieldForecast)
    assert reason(view.forecast_grams).startswith("No fruit was weighed")
    assert "No fruit was weighed yet, so there is no yield by weight." in view.notes


def test_a_weight_without_a_count_is_refused_with_a_sentence(log: OpenLogbook, crop: Crop) -> None:
    with pytest.raises(RecordRefused, match="how many"):
        add_entry(log, entry_on(crop, at(44), Pick(fruit_count=0, total_weight_g=120.0)))


def test_two_flushes_promise_no_more_than_a_flush_that_never_ends(log: OpenLogbook, crop: Crop) -> None:
    flushes = [(44, 2, 160.0), (47, 4, 330.0), (50, 4, 340.0), (54, 2, 150.0), (68, 2, 170.0), (71, 4, 320.0),
               (74, 4, 310.0), (78, 2, 165.0)]  # fmt: skip
    picked(log, crop, flushes)
    told = yield_of(log, crop.id, at(80)).forecast_fruit
    assert isinstance(told, YieldForecast)
    assert 0 < told.middle < told.high <= 28 * 12 / 10  # a flush brought 12 fruit in 10 days


def test_picks_before_any_pollination_are_reported_and_the_recent_rate_is_used(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    pollinated(log, crop, {74: 2, 76: 3})
    view = yield_of(log, crop.id, at(77))
    assert "without a flower written down" in reason(view.fruit_set)
    assert isinstance(view.coming, ComingPicks)
    assert view.coming.basis is Basis.RECENT_RATE
    assert view.coming.why_rate == reason(view.fruit_set)


def test_a_pick_of_culls_alone_is_a_session_without_yield(log: OpenLogbook, crop: Crop) -> None:
    write_all(log, crop, [(44, Pick(0, None, culls=(Cull(1, CullCause.MISSHAPEN),))), (50, pick(1, 80.0))])
    facts = yield_of(log, crop.id, at(60)).facts
    assert (facts.sessions, facts.fruit_count, facts.culled_count) == (2, 1, 1)


def test_where_all_was_culled_no_sentence_says_that_nothing_was_picked(log: OpenLogbook, crop: Crop) -> None:
    write_all(log, crop, [(age, Pick(0, None, culls=(Cull(2, CullCause.MISSHAPEN),))) for age in (44, 48, 52, 56)])
    view = yield_of(log, crop.id, at(60))
    for part in (view.forecast_fruit, view.coming, view.maturity.packet):
        assert reason(part).startswith("All fruit picked so far was culled")


def test_days_without_a_pick_longer_than_ever_tell_that_nothing_was_ripe(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop, [(age, 2, 160.0) for age in range(44, 75, 3)])
    pollinated(log, crop, dict.fromkeys(range(38, 88, 2), 3))
    usual, silent = (yield_of(log, crop.id, at(age)).fruit_set for age in (77, 88))
    assert isinstance(usual, FruitSet)
    assert isinstance(silent, FruitSet)
    assert (usual.last_session_age, silent.last_session_age) == (74, 85)
    assert silent.rate.value < usual.rate.value - 0.1


def test_the_boards_outlook_says_why_there_is_nothing_to_draw(log: OpenLogbook, crop: Crop) -> None:
    nothing = outlook_of(log, crop.id, at(60))
    assert not nothing.has_band
    assert nothing.last_age is None
    assert "Nothing was picked yet" in nothing.sentence
    picked(log, crop)
    told = outlook_of(log, crop.id, at(77))
    assert told.has_band
    assert told.last_age == 105
    assert told.reason == ""


def test_flowers_before_any_pick_are_open_not_failed(log: OpenLogbook, crop: Crop) -> None:
    pollinated(log, crop, {57: 3, 58: 4, 59: 3})
    told = yield_of(log, crop.id, at(60)).fruit_set
    assert not isinstance(told, FruitSet)
    assert "old enough" in reason(told) or "were picked so far" in reason(told)
