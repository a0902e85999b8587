"""Keep or clear on a real logbook: which value, which costs, what would stand there instead."""

from dataclasses import replace
from datetime import timedelta
from decimal import Decimal

import pytest

from growlog.calculations.keep_or_clear import KeepOrClear, Successor
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.records.crop import Crop
from growlog.records.entry import Feed
from growlog.services.crops import change_crop, clear_crop, crop_and_cultivar
from growlog.services.money.prices import prices_of, save_prices
from growlog.services.open_logbook import OpenLogbook
from growlog.services.yield_view.keep import Guess, KeepAsk, keep_or_clear_of, weigh_up
from growlog.services.yield_view.keep_grounds import keep_grounds_of
from tests.logbooks import furnish, plant_crop, write
from tests.services.yield_view.seasons import SEASON, at, picked

pytestmark = pytest.mark.slow

GUESS = Guess(Decimal(12), 80)


@pytest.fixture
def season(log: OpenLogbook, crop: Crop) -> Crop:
    """A crop with its picks, a shop price of 4.00 a kg and a planned clearing."""
    changed = replace(crop, shop_price_minor_per_kg=400, planned_clearing_on=at(110))
    change_crop(log, changed, crop_and_cultivar(log, crop.id)[1])
    picked(log, crop)
    return crop


def finished(log: OpenLogbook, species: str = "squash") -> Crop:
    """A crop that was cleared before: 2415 g in 85 days."""
    crop = plant_crop(log, "Attic Gold", at(0) - timedelta(days=90), species=species)
    picked(log, crop)
    clear_crop(log, crop.id, crop.day_zero + timedelta(days=84))
    return crop


def test_the_shop_price_of_a_kg_is_taken_where_none_is_typed(log: OpenLogbook, season: Crop) -> None:
    view = keep_or_clear_of(log, season.id, KeepAsk(guess=GUESS), at(77))
    assert (view.measure, view.value_of_one) == (Measure.GRAMS, Decimal("4.00"))
    assert isinstance(view.result, KeepOrClear)
    assert len(view.result.sentences) == 3
    assert view.result.figure.source.startswith("Charnov")
    assert "replacement rule" in view.result.figure.method


def test_a_typed_value_of_a_fruit_takes_the_place_of_the_price(log: OpenLogbook, season: Crop) -> None:
    ask = KeepAsk(measure=Measure.FRUIT, value_of_one=Decimal("0.50"), guess=GUESS)
    view = keep_or_clear_of(log, season.id, ask, at(77))
    assert (view.measure, view.value_of_one) == (Measure.FRUIT, Decimal("0.50"))


def test_a_successor_that_brings_nothing_keeps_the_crop_and_a_rich_one_clears_it(
    log: OpenLogbook, season: Crop
) -> None:
    grounds = keep_grounds_of(log, season.id, at(77))
    poor = weigh_up(grounds, KeepAsk(guess=Guess(Decimal(-100), 80))).result
    rich = weigh_up(grounds, KeepAsk(guess=Guess(Decimal(500), 80))).result
    assert isinstance(poor, KeepOrClear)
    assert poor.crossing_age is None
    assert "Keeping it pays more all the way" in poor.sentences[2]
    assert isinstance(rich, KeepOrClear)
    assert (rich.low_age, rich.crossing_age, rich.high_age) == (77, 77, 77)


def test_running_costs_are_those_of_the_last_two_weeks(log: OpenLogbook, season: Crop) -> None:
    furnish(log, season)
    save_prices(log, replace(prices_of(log), currency="EUR", water_price_minor_per_m3=7000))
    for age, litres in ((50, 20.0), (70, 2.0), (76, 5.0)):
        write(log, season, at(age), Feed(volume_l=litres))
    view = keep_or_clear_of(log, season.id, KeepAsk(guess=GUESS), at(77))
    assert view.running_per_day == Decimal("0.49") / 14  # 7 litres at 70 EUR a m³
    assert view.currency == "EUR"
    typed = keep_or_clear_of(log, season.id, KeepAsk(guess=GUESS, running_per_day=Decimal("0.20")), at(77))
    assert typed.running_per_day == Decimal("0.20")


def test_labour_counts_only_where_it_is_wanted(log: OpenLogbook, season: Crop) -> None:
    write(log, season, at(70), Feed(volume_l=1), labour_minutes=42)
    without = keep_or_clear_of(log, season.id, KeepAsk(guess=GUESS, labour_rate_per_h=Decimal(10)), at(77))
    wanted = KeepAsk(guess=GUESS, with_labour=True, labour_rate_per_h=Decimal(10))
    assert without.labour_per_day == 0
    assert keep_or_clear_of(log, season.id, wanted, at(77)).labour_per_day == Decimal("0.5")
    unstated = keep_or_clear_of(log, season.id, KeepAsk(guess=GUESS, with_labour=True), at(77))
    assert unstated.labour_per_day == 0
    assert "What an hour of labour is worth is not stated, so labour is not counted." in unstated.notes


def test_a_cleared_crop_of_the_kind_stands_for_the_next_at_the_same_value(log: OpenLogbook, season: Crop) -> None:
    finished(log)
    view = keep_or_clear_of(log, season.id, KeepAsk(turn_round_days=10), at(77))
    assert isinstance(view.successor, Successor)
    assert view.successor.source == "your cleared crops (1)"
    assert float(view.successor.value_per_day) == pytest.approx(4 * 2.415 / 95)


def test_a_cleared_crop_of_another_kind_needs_a_price_of_its_own(log: OpenLogbook, season: Crop) -> None:
    other = finished(log, "okra")
    view = keep_or_clear_of(log, season.id, KeepAsk(), at(77))
    assert isinstance(view.successor, NotYet)
    assert "state their shop prices" in view.successor.reason
    with log.unit() as unit:
        crop, cultivar = unit.crops.get(other.id), unit.cultivars.get(other.cultivar_id)
    change_crop(log, replace(crop, shop_price_minor_per_fruit=100), cultivar)
    again = keep_or_clear_of(log, season.id, KeepAsk(turn_round_days=0), at(77))
    assert isinstance(again.successor, Successor)
    assert float(again.successor.value_per_day) == pytest.approx(sum(n for _, n, _ in SEASON) / 85)


def test_without_a_value_or_a_successor_it_says_what_to_state(log: OpenLogbook, crop: Crop) -> None:
    picked(log, crop)
    view = keep_or_clear_of(log, crop.id, KeepAsk(guess=GUESS), at(77))
    assert isinstance(view.result, NotYet)
    assert "worth to you" in view.result.reason
    alone = keep_or_clear_of(log, crop.id, KeepAsk(value_of_one=Decimal(4)), at(77))
    assert isinstance(alone.result, NotYet)
    assert "No crop was cleared yet" in alone.result.reason


def test_with_no_cleared_crop_chosen_it_asks_for_one(log: OpenLogbook, season: Crop) -> None:
    finished(log)
    view = keep_or_clear_of(log, season.id, KeepAsk(finished_ids=()), at(77))
    assert view.result == NotYet("Choose at least one of your cleared crops, or take a guess.")


def test_without_picks_the_forecasts_reason_is_told(log: OpenLogbook, crop: Crop) -> None:
    view = keep_or_clear_of(log, crop.id, KeepAsk(guess=GUESS, value_of_one=Decimal(4)), at(77))
    assert view.result == NotYet("Nothing was picked yet.")
