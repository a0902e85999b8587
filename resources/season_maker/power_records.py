"""What draws power beside the lamps, what a kilowatt-hour costs, and what the meter before the room showed."""

from datetime import date, time, timedelta
from itertools import pairwise

from growlog.records.room import Device, DeviceSort
from growlog.records.tariff import Tariff, TariffBand

from .events import MeterRead
from .growth_curves import organ_chance
from .identity import identity
from .scenario import LIGHT_STEPS, ROOM, light_on

FIRST_DAY = LIGHT_STEPS[0].from_day
HEATED_FROM = date(2025, 11, 1)
FAN_W = 9.0
HEATER_W, HEATER_HOURS, HEATER_DUTY_PERCENT = 250.0, 10.0, 20.0
METER_DAYS = (HEATED_FROM, date(2025, 12, 5), date(2026, 1, 4), date(2026, 2, 5))
METER_READ_AT = time(19, 0)
DAY_FROM, NIGHT_FROM = time(6, 0), time(22, 0)


def devices(room_id: str) -> tuple[Device, ...]:
    """A fan that always runs, and a heater that its thermostat lets run for a part of cold nights."""
    return (
        Device(identity("device", "fan"), room_id, "Fan on the shelf", DeviceSort.FAN, FAN_W, from_day=FIRST_DAY),
        Device(
            identity("device", "heater"),
            room_id,
            "Heater at night",
            DeviceSort.HEATER,
            HEATER_W,
            HEATER_HOURS,
            duty_percent=HEATER_DUTY_PERCENT,
            from_day=HEATED_FROM,
        ),
    )


def tariffs() -> tuple[Tariff, ...]:
    """Day and night; both dearer from the new year on. The daily charge is the household's and not the room's."""
    return (
        _tariff("Day and night", FIRST_DAY.replace(day=1), "0.3180", "0.2490"),
        _tariff("Day and night 2026", date(2026, 1, 1), "0.3340", "0.2580"),
    )


def _tariff(name: str, from_day: date, by_day: str, by_night: str) -> Tariff:
    bands = (TariffBand(DAY_FROM, NIGHT_FROM, by_day), TariffBand(NIGHT_FROM, DAY_FROM, by_night))
    return Tariff(identity("tariff", from_day.isoformat()), name, from_day, bands)


def kwh_of_day(day: date) -> float:
    """What lamps and devices take on a day."""
    lamps, light = ROOM.lamps, light_on(day)
    lamps_kwh = lamps.count * lamps.watts_each * light.dimming_percent / 100 * light.hours_on / 1000
    heater_kwh = HEATER_W * HEATER_HOURS * HEATER_DUTY_PERCENT / 100_000 if day >= HEATED_FROM else 0.0
    return lamps_kwh + FAN_W * 24 / 1000 + heater_kwh


def meter_events() -> list[MeterRead]:
    """Readings of a meter put in with the heater. It counts a little more than the reckoning: losses, a charger."""
    written = [_read(METER_DAYS[0], 0.0, starts_anew=True)]
    shown_kwh = 0.0
    for before, day in pairwise(METER_DAYS):
        days = [before + timedelta(days=n) for n in range((day - before).days)]
        shown_kwh += sum(map(kwh_of_day, days)) * organ_chance("meter", day.isoformat()).uniform(1.01, 1.05)
        written.append(_read(day, round(shown_kwh, 1)))
    return written


def _read(day: date, kwh: float, *, starts_anew: bool = False) -> MeterRead:
    note = "Meter put between wall and room" if starts_anew else ""
    return MeterRead(crop=None, day=day, at=METER_READ_AT, labour_min=1, kwh=kwh, starts_anew=starts_anew, note=note)
