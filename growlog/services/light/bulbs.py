"""How long bulbs have burned, and when the next one is due by its rated life."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from growlog.calculations.light_programme import LightSetting, days_between
from growlog.records.room import Lamp
from growlog.services.light.lamps import burning
from growlog.services.light.programme import room_settings
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

_LOOK_AHEAD_DAYS = 3660  # ten years; a bulb that lasts longer is due on no day that can be planned for


@dataclass(frozen=True)
class BulbHours:
    """A lamp's bulb. hours_so_far: up to today with it, since bulb_from_day. due_on: by the programme as planned; None
    without a rated life, or where it is not reached within ten years."""

    lamp: Lamp
    hours_so_far: float
    rated_life_h: float | None
    due_on: date | None


@dataclass(frozen=True)
class BulbDue:
    """A bulb that has its rated life. key: "bulb:" and the lamp's id."""

    key: str
    title: str
    room_id: str
    room_name: str
    lamp_id: str
    day: date


def bulbs_of_room(log: OpenLogbook, room_id: str) -> list[BulbHours]:
    """The bulbs of a room's lamps that still hang there and whose first day is known, in the order of names."""
    with log.unit() as unit:
        return room_bulbs(unit, room_id, log.today())


def bulbs_due(log: OpenLogbook, until: date) -> list[BulbDue]:
    """The bulbs of all rooms that are due up to a day, the earliest first."""
    with log.unit() as unit:
        found = [
            BulbDue(
                f"bulb:{bulb.lamp.id}", say("Change the bulb of {lamp}", lamp=bulb.lamp.name),
                room.id, room.name, bulb.lamp.id, bulb.due_on,
            )
            for room in unit.rooms.all()
            for bulb in room_bulbs(unit, room.id, log.today())
            if bulb.due_on is not None and bulb.due_on <= until
        ]  # fmt: skip
    return sorted(found, key=lambda due: (due.day, due.title))


def room_bulbs(unit: UnitOfWork, room_id: str, today: date) -> list[BulbHours]:
    """The bulbs of a room within a unit of work."""
    lamps = [
        lamp
        for lamp in sorted(unit.lamps.all(room_id=room_id), key=lambda lamp: lamp.name.casefold())
        if lamp.bulb_from_day is not None and (lamp.until_day is None or lamp.until_day >= today)
    ]
    if not lamps:
        return []
    first = min(lamp.bulb_from_day or today for lamp in lamps)
    settings = room_settings(unit, room_id, first, today + timedelta(days=_LOOK_AHEAD_DAYS))
    return [_bulb(lamp, settings, today) for lamp in lamps]


def lamp_hours(lamp: Lamp, settings: Mapping[date, LightSetting], first: date, last: date) -> float:
    """Hours that a lamp burned by the programme from one day to another, counted on the day on which it went on."""
    return sum(_hours(lamp, settings, day) for day in days_between(first, last))


def _bulb(lamp: Lamp, settings: Mapping[date, LightSetting], today: date) -> BulbHours:
    start = lamp.bulb_from_day or today
    so_far = lamp_hours(lamp, settings, start, today)
    if lamp.rated_life_h is None:
        return BulbHours(lamp, so_far, None, None)
    burned = 0.0
    for day in days_between(start, today + timedelta(days=_LOOK_AHEAD_DAYS)):
        burned += _hours(lamp, settings, day)
        if burned >= lamp.rated_life_h:
            return BulbHours(lamp, so_far, lamp.rated_life_h, day)
    return BulbHours(lamp, so_far, lamp.rated_life_h, None)


def _hours(lamp: Lamp, settings: Mapping[date, LightSetting], day: date) -> float:
    setting = settings.get(day)
    return setting.photoperiod_h if setting is not None and burning([lamp], setting, day) else 0.0
