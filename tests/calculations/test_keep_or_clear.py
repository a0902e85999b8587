"""Keep or clear: the crossing of another week with what would stand there instead, against cases worked by hand."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

import numpy as np
import pytest

from growlog.calculations.keep_or_clear import (
    ClearedCrop,
    KeepingCosts,
    KeepOrClear,
    Successor,
    keep_or_clear,
    successor_guess,
    successor_like,
)
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.calculations.yield_curve import PickPoint
from growlog.calculations.yield_forecast import ForecastAsk, YieldForecast, forecast_yield

SOWN = date(2026, 1, 1)
COSTS = KeepingCosts(Decimal("0.50"), Decimal("0.10"), currency="EUR")
PICKS = [PickPoint(40 + 3 * i, n, 100.0 * n) for i, n in enumerate([3, 6, 9, 12, 13, 12, 9, 6, 5, 4, 3])]


def forecast(measure: Measure = Measure.FRUIT) -> YieldForecast:
    """Of a crop past its peak."""
    found = forecast_yield(PICKS, ForecastAsk(SOWN, 70, 60, 110, measure=measure), seed=3)
    assert isinstance(found, YieldForecast)
    return found


def falling(start: float, fall_a_day: float) -> YieldForecast:
    """Every future alike: so many fruit a day, falling in a straight line."""
    made = forecast()
    rates = np.maximum(start - fall_a_day * np.arange(40), 0.0)[None, :].repeat(10, axis=0)
    return replace(made, futures=replace(made.futures, rates=rates))


def told(made: YieldForecast, instead: str, costs: KeepingCosts = COSTS) -> KeepOrClear:
    """The advice, which is expected to be there."""
    found = keep_or_clear(made, costs, Successor(Decimal(instead), 10, "your guess"), SOWN)
    assert isinstance(found, KeepOrClear)
    return found


def test_the_crossing_of_a_falling_rate_is_as_worked_out_by_hand() -> None:
    # From day 70 on, day d (from 1) brings 4 - 0.1 (d - 1) fruit, but the first day counts as the second: 3.9. A week
    # after i days brings 7 (3.7 - 0.1 i) fruit for i > 0, at 0.50 less 0.10 a day: 7 (1.75 - 0.05 i). Instead stand 7
    # times 0.87: below that first where 1.75 - 0.05 i < 0.87, that is for i = 18.
    found = told(falling(4.0, 0.1), "0.87")
    assert (found.low_age, found.crossing_age, found.high_age) == (88, 88, 88)
    assert found.weeks[1].middle == pytest.approx(7 * (1.75 - 0.05))
    assert found.weeks[0].instead == pytest.approx(6.09)
    assert found.figure.value == "2026-03-30"


def test_labour_is_taken_off_only_where_it_is_to_count() -> None:
    labour = replace(COSTS, labour_per_day=Decimal("0.30"))
    assert told(falling(4.0, 0.1), "0.87", labour).crossing_age == 82  # 0.30 is worth six days of falling 0.05
    assert "running costs and labour" in told(falling(4.0, 0.1), "0.87", labour).sentences[0]


def test_a_rate_that_never_falls_so_low_has_no_crossing_and_one_that_is_below_has_it_today() -> None:
    above, below = told(falling(4.0, 0.0), "0.50"), told(falling(4.0, 0.0), "5.00")
    assert above.crossing_age is None
    assert "all the way to 21 April 2026" in above.sentences[2]
    assert below.crossing_age == 70
    assert "from today on" in below.sentences[2]


def test_the_band_of_the_crossing_comes_from_the_band_of_the_forecast() -> None:
    found = told(forecast(), "0.20")
    assert found.low_age is not None
    assert found.crossing_age is not None
    assert found.low_age <= found.crossing_age <= (found.high_age or 110)
    for week in found.weeks:
        assert week.low <= week.middle <= week.high
    assert len(found.sentences) == 3


def test_by_weight_the_price_is_that_of_a_kilogram() -> None:
    by_count = told(forecast(), "0.20")
    by_weight = told(forecast(Measure.GRAMS), "0.20", replace(COSTS, value_of_one=Decimal("5.00")))
    assert by_weight.weeks[0].middle == pytest.approx(by_count.weeks[0].middle, rel=0.15)


def test_what_would_stand_there_is_the_mean_of_all_days_with_turn_round() -> None:
    crops = [ClearedCrop(Decimal(40), 90), ClearedCrop(Decimal(20), 90)]
    found = successor_like(crops, 10)
    assert isinstance(found, Successor)
    assert found.value_per_day == Decimal("0.3")  # 60 over 2 times 100 days
    assert "2" in found.source
    assert successor_guess(Decimal(30), 90, 10).value_per_day == Decimal("0.3")


def test_without_a_cleared_crop_it_asks_for_a_guess_and_nonsense_is_refused() -> None:
    assert isinstance(successor_like([ClearedCrop(Decimal(9), 0)], 10), NotYet)
    with pytest.raises(ValueError, match="turn_round_days"):
        successor_guess(Decimal(30), 90, -1)
    with pytest.raises(ValueError, match="days 0"):
        successor_guess(Decimal(30), 0, 10)


def test_without_a_forecast_or_a_week_left_there_is_a_sentence() -> None:
    reason = NotYet("Nothing was picked yet.")
    instead = successor_guess(Decimal(30), 90, 10)
    assert keep_or_clear(reason, COSTS, instead, SOWN) is reason
    short = forecast_yield(PICKS, ForecastAsk(SOWN, 70, 5, 110), seed=3)
    assert isinstance(keep_or_clear(short, COSTS, instead, SOWN), NotYet)


def test_the_theorem_and_the_rule_are_named_with_their_sources() -> None:
    figure = told(forecast(), "0.20").figure
    assert "marginal value theorem" in figure.method
    assert "replacement rule" in figure.method
    assert "Charnov" in figure.source
