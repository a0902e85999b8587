"""Settings followed day by day, and the lamps by the clock."""

from datetime import date, time, timedelta

import pytest

from growlog.calculations.light_programme import (
    CanopyLight,
    CanopyWay,
    LightSetting,
    Statement,
    light_day,
    light_spans,
    mean_canopy,
    settings_by_day,
    watts_by_minute,
)

START = date(2026, 1, 1)


def at(day: int) -> date:
    return START + timedelta(days=day)


def read(ppfd: float, day: int = 0, way: CanopyWay = CanopyWay.SENSOR) -> CanopyLight:
    return CanopyLight(ppfd, way, day=at(day))


def test_an_entry_of_the_same_day_wins_over_a_step_in_what_it_says() -> None:
    step = Statement(at(0), 0, 18, time(6), 50)
    entry = Statement(at(0), 1, 12)
    setting = settings_by_day([entry, step], at(0), at(0))[at(0)]
    assert (setting.photoperiod_h, setting.on_at, setting.dimming_percent) == (12, time(6), 50)


def test_what_is_not_said_stays_as_it_was() -> None:
    found = settings_by_day([Statement(at(0), 1, 18, time(20), 40, canopy=read(200)), Statement(at(3), 1, 12)],
                            at(0), at(4))  # fmt: skip
    assert [s.photoperiod_h for s in found.values()] == [18, 18, 18, 12, 12]
    assert found[at(4)].on_at == time(20)
    assert found[at(4)].canopy == read(200)


def test_light_follows_the_output_as_an_estimate() -> None:
    said = [Statement(at(0), 1, 18, None, 40, canopy=read(200)), Statement(at(1), 1, None, None, 80)]
    canopy = settings_by_day(said, at(0), at(1))[at(1)].canopy
    assert canopy is not None
    assert (canopy.ppfd_umol, canopy.way, canopy.way.is_estimate) == (400, CanopyWay.SCALED, True)


def test_under_other_lamps_the_light_is_no_longer_known() -> None:
    said = [Statement(at(0), 1, 18, canopy=read(200)), Statement(at(1), 0, 18, lamp_ids=("b",))]
    assert settings_by_day(said, at(0), at(1))[at(1)].canopy is None


def test_days_before_any_hours_were_stated_are_left_out() -> None:
    said = [Statement(at(0), 2, canopy=read(200)), Statement(at(2), 1, 16)]
    assert list(settings_by_day(said, at(0), at(3))) == [at(2), at(3)]


def test_the_integral_has_the_range_of_the_reading() -> None:
    # Faust, J., Light management in greenhouses I: PPFD times hours times 0.0036.
    setting = LightSetting(16, canopy=CanopyLight(100, CanopyWay.LUX, 90, 110))
    day = light_day(at(0), setting)
    assert (day.dli_mol, day.dli_low_mol, day.dli_high_mol) == pytest.approx((5.76, 5.184, 6.336))
    assert light_day(at(0), LightSetting(16)).dli_mol is None


def test_lamps_past_midnight_burn_on_the_next_day_by_the_clock() -> None:
    night = LightSetting(18, time(20))
    first = watts_by_minute(None, (night, 100.0))
    second = watts_by_minute((night, 100.0), (night, 100.0))
    assert (first.sum() / 60, second.sum() / 60) == (4 * 100, 18 * 100)
    assert second[13 * 60] == 100
    assert second[15 * 60] == 0


def test_lamps_that_go_on_again_burn_once() -> None:
    # 24 h from 20:00, then 12 h from 6:00: the new setting holds from its hour on.
    watts = watts_by_minute((LightSetting(24, time(20)), 100.0), (LightSetting(12, time(6)), 50.0))
    assert watts.sum() / 60 == 6 * 100 + 12 * 50 + 2 * 100


@pytest.mark.parametrize("hours", [0, 0.01, 16.67, 23.99, 24])
@pytest.mark.parametrize("on_at", [time(0), time(5, 30), time(23, 59)])
def test_no_part_of_a_minute_is_lost(hours: float, on_at: time) -> None:
    # By definition: watts times hours, over the day on which lamps go on and the next.
    lamps = (LightSetting(hours, on_at), 100.0)
    both = watts_by_minute(None, lamps).sum() + watts_by_minute(lamps, None).sum()
    assert both / 60 == pytest.approx(100 * hours, rel=1e-9)
    assert watts_by_minute(lamps, lamps).sum() / 60 == pytest.approx(100 * hours, rel=1e-9)


def test_lamps_of_unknown_hours_are_spread_over_the_day() -> None:
    watts = watts_by_minute(None, (LightSetting(12), 100.0))
    assert set(watts.tolist()) == {50.0}


def test_several_readings_of_a_day_are_their_mean_and_a_sensor_goes_before_lux() -> None:
    found = mean_canopy([read(100), read(200), CanopyLight(900, CanopyWay.LUX, 800, 1000)])
    assert (found.ppfd_umol, found.low, found.high, found.way) == (150, 100, 200, CanopyWay.SENSOR)
    assert mean_canopy([read(100)]) == read(100)


def test_days_with_the_same_light_are_one_span() -> None:
    dim = LightSetting(16, dimming_percent=40, canopy=read(200))
    lamps = LightSetting(16, dimming_percent=40, canopy=read(200, way=CanopyWay.LAMPS))
    days = [light_day(at(d), s) for d, s in ((0, dim), (1, dim), (2, lamps), (4, lamps), (5, LightSetting(12)))]
    spans = light_spans(days, at(0))
    assert [(s.start_age, s.end_age, s.is_estimate) for s in spans] == [
        (0, 1, False), (2, 2, True), (4, 4, True), (5, 5, False),
    ]  # fmt: skip
    assert (spans[0].dli_mol, spans[3].dli_mol) == (pytest.approx(11.52), None)
    assert light_spans([], at(0)) == []
