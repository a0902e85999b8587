"""The air logger's file: a sample an hour, between the evening and the night readings of the diary."""

import hashlib
import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta

from growlog.records.climate_day import ClimateSample
from growlog.records.logger_file import LoggerFile

from .climate import AirOfDay, air_of
from .growth_curves import organ_chance
from .identity import identity
from .scenario import LAST_DAY, LIGHT_STEPS, light_on

SETTLES_H = 1.6  # how long the room takes to follow its lamps
LAST_SAMPLE = datetime.combine(LAST_DAY, time(20, 0), UTC)
BATTERY_OUT = (datetime(2025, 10, 12, 6, tzinfo=UTC), datetime(2025, 10, 12, 15, tzinfo=UTC))


@dataclass
class _Air:
    temperature_c: float
    humidity_percent: float


def logger_file(room_id: str, samples: tuple[ClimateSample, ...]) -> LoggerFile:
    """The file that was read in on the season's last evening."""
    text = "".join(
        f"{s.at_utc:%Y-%m-%d %H:%M},{s.air_temperature_c},{s.relative_humidity_percent}\r\n" for s in samples
    )
    return LoggerFile(
        identity("logger file"),
        room_id,
        "box-room-air.csv",
        hashlib.sha256(text.encode()).hexdigest(),
        len(samples),
        samples[0].at_utc,
        samples[-1].at_utc,
        LAST_SAMPLE + timedelta(minutes=25),
    )


def hourly_samples(leaf_area_m2: Mapping[date, float]) -> tuple[ClimateSample, ...]:
    """Every hour from the first day on, but for a morning with an empty battery."""
    return tuple(s for s in _hours(leaf_area_m2) if not BATTERY_OUT[0] <= s.at_utc < BATTERY_OUT[1])


def _hours(leaf_area_m2: Mapping[date, float]) -> Iterator[ClimateSample]:
    at = datetime.combine(LIGHT_STEPS[0].from_day, time(), UTC)
    follows = 1 - math.exp(-1 / SETTLES_H)
    days = {day: air_of(day, area) for day, area in leaf_area_m2.items()}
    now = _Air(days[at.date()].night_c, days[at.date()].night_humidity_percent)
    chance = organ_chance("air logger")
    while at <= LAST_SAMPLE:
        wanted = _wanted(at, days)
        now.temperature_c += (wanted.temperature_c - now.temperature_c) * follows
        now.humidity_percent += (wanted.humidity_percent - now.humidity_percent) * follows
        yield ClimateSample(
            at,
            round(now.temperature_c + chance.gauss(0, 0.12), 1),
            round(min(99.0, now.humidity_percent + chance.gauss(0, 0.7)), 1),
        )
        at += timedelta(hours=1)


def _wanted(at: datetime, days: Mapping[date, AirOfDay]) -> _Air:
    """What the room tends to. The diary's night is the one before its day."""
    today, light = days[at.date()], light_on(at.date())
    hours_lit = (at - datetime.combine(at.date(), light.on_at, UTC)) / timedelta(hours=1)
    if 0 < hours_lit <= light.hours_on:
        return _Air(today.day_c, today.day_humidity_percent)
    night = today if hours_lit <= 0 else days.get(at.date() + timedelta(days=1), today)
    return _Air(night.night_c, night.night_humidity_percent)
