"""Days made of a logger's samples: weighted by time, gaps not bridged."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.calculations.climate_day import AirDay, AirSamples, DayBounds, air_days, first_counts

DAY = 86_400
HOUR = 3600
TWO_DAYS = np.array([0, DAY, 2 * DAY])


def samples(*rows: tuple[float, float, float]) -> AirSamples:
    """Samples of (hour, °C, %)."""
    table = np.array(rows, np.float64).reshape(-1, 3)
    return AirSamples((table[:, 0] * HOUR).astype(np.int64), table[:, 1], table[:, 2])


def first_day(*rows: tuple[float, float, float], **more: float) -> AirDay:
    return air_days(samples(*rows), DayBounds(TWO_DAYS), **more)[0]  # type: ignore[arg-type]


def test_the_mean_is_taken_over_time_and_not_over_samples() -> None:
    # By hand: 20 °C for an hour at one sample, then half an hour up to 30 °C at many.
    rows = [(0.0, 20.0, 50.0), (1.0, 20.0, 50.0), *((1 + i / 20, 20 + i, 50.0) for i in range(1, 11))]
    assert first_day(*rows).temperature_mean_c == pytest.approx((20 * 1 + 25 * 0.5) / 1.5)


def test_lowest_and_highest_are_those_of_samples() -> None:
    day = first_day((1, 18, 40), (1.5, 26, 70), (2, 22, 55))
    assert (day.temperature_min_c, day.temperature_max_c) == (18, 26)
    assert (day.humidity_min_percent, day.humidity_max_percent, day.sample_count) == (40, 70, 3)


def test_a_gap_longer_than_is_bridged_counts_for_nothing() -> None:
    day = first_day((0, 20, 50), (0.5, 20, 50), (10, 30, 90), (10.5, 30, 90))
    assert day.temperature_mean_c == pytest.approx(25)
    assert day.covered_minutes == 60
    assert day.longest_gap_minutes == pytest.approx(13.5 * 60)


def test_a_line_over_midnight_is_cut_there() -> None:
    found = air_days(samples((23.5, 20, 50), (24.5, 30, 60)), DayBounds(TWO_DAYS))
    assert [d.temperature_mean_c for d in found] == pytest.approx([22.5, 27.5])
    assert [d.covered_minutes for d in found] == [30, 30]


def test_hours_above_a_humidity_are_read_off_the_lines() -> None:
    # From 70 to 90 % in an hour: half of it is above 80 %.
    assert first_day((1, 20, 70), (2, 20, 90)).hours_above_humidity == pytest.approx(0.5)
    assert first_day((1, 20, 70), (2, 20, 90), humid_above_percent=85).hours_above_humidity == pytest.approx(0.25)


def test_the_night_is_when_the_lamps_are_off() -> None:
    rows = [(h, 20.0, 90.0 if h < 6 else 50.0) for h in np.arange(0, 24, 0.5)]
    day = air_days(samples(*rows), DayBounds(TWO_DAYS, ((0, 5 * HOUR),)))[0]
    assert day.night_humidity_mean_percent == pytest.approx(90)
    assert air_days(samples(*rows), DayBounds(TWO_DAYS))[0].night_humidity_mean_percent is None


def test_a_day_of_one_sample_has_the_mean_of_it() -> None:
    day = first_day((12, 21, 60))
    assert (day.temperature_mean_c, day.covered_minutes, day.hours_above_humidity) == (21, 0, None)


def test_a_day_without_samples_tells_nothing() -> None:
    empty = air_days(samples(), DayBounds(TWO_DAYS))
    assert [(d.sample_count, d.temperature_mean_c, d.longest_gap_minutes) for d in empty] == [(0, None, 1440)] * 2


def test_humidity_alone_gives_no_deficit() -> None:
    day = first_day((1, float("nan"), 60), (2, float("nan"), 60))
    assert (day.humidity_mean_percent, day.vpd_mean_kpa, day.temperature_mean_c) == (60, None, None)


def test_a_day_of_a_clock_change_has_its_own_length() -> None:
    long_day = np.array([0, 25 * HOUR])
    rows = [(h / 2, 20.0, 50.0) for h in range(51)]
    assert air_days(samples(*rows), DayBounds(long_day))[0].covered_minutes == 25 * 60


def test_a_later_file_fills_only_what_the_earlier_one_leaves_open() -> None:
    earlier = np.array([0, 600, 1200, 9000, 9600])
    later = np.array([300, 630, 5000, 9300, 12_000])
    assert first_counts(earlier, later).tolist() == [False, False, True, False, True]
    assert first_counts(earlier[:0], later).all()


@given(st.lists(st.tuples(st.integers(0, 2 * DAY - 1), st.floats(-20, 50), st.floats(1, 100)), min_size=1, max_size=60))
def test_no_mean_lies_outside_its_samples_and_their_neighbours(rows: list[tuple[int, float, float]]) -> None:
    unique = sorted({at: (t, h) for at, t, h in rows}.items())
    found = air_days(samples(*((at / HOUR, t, h) for at, (t, h) in unique)), DayBounds(TWO_DAYS))
    low, high = min(t for _, (t, _) in unique), max(t for _, (t, _) in unique)
    assert sum(d.sample_count for d in found) == len(unique)
    for day in found:
        assert day.temperature_mean_c is None or low - 1e-6 <= day.temperature_mean_c <= high + 1e-6
        assert 0 <= day.longest_gap_minutes <= 1440
