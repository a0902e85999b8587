"""The effective light of each day: of a room, and of a crop wherever it stood."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta

from growlog.calculations.crop_light import UsualLight, usual_light
from growlog.calculations.light_needed import more_than_lamps_give
from growlog.calculations.light_programme import (
    CanopyWay,
    LightDay,
    LightSetting,
    days_between,
    light_day,
    settings_by_day,
)
from growlog.calculations.plant_age import age_on
from growlog.records.crop import Crop, Placement
from growlog.records.display import fixed
from growlog.records.room import Lamp, Room
from growlog.services.light.lamps import burning, ppfd_of_lamps
from growlog.services.light.statements import crop_statements, room_statements
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day


@dataclass(frozen=True)
class LightOfCrop:
    """A crop's light from day 0 to its last day. usual: the range to hold it against, with its source, None if none is
    known. questions: plain sentences where light, watts and floor do not agree."""

    crop_id: str
    day_zero: date
    days: tuple[LightDay, ...]
    usual: UsualLight | None
    questions: tuple[str, ...]

    def on(self, day: date) -> LightDay | None:
        """The light of a day, None where nothing is known of it."""
        return next((d for d in self.days if d.day == day), None)

    def age_of(self, light: LightDay) -> int:
        """The plant age of one of its days."""
        return age_on(self.day_zero, light.day)


def light_of_crop(log: OpenLogbook, crop_id: str, as_of: date | None = None) -> LightOfCrop:
    """The light of a crop up to a day, today if none is said; LogbookProblem if the crop is not there."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        species = unit.cultivars.get(crop.cultivar_id).species
        days, questions = crop_light_days(unit, crop, as_of or log.today())
    return LightOfCrop(crop_id, crop.day_zero, tuple(days), next(iter(usual_light(species)), None), tuple(questions))


def crop_light_days(unit: UnitOfWork, crop: Crop, until: date) -> tuple[list[LightDay], list[str]]:
    """The light of a crop's days up to one of them or its clearing, and what is worth asking about them."""
    last = until if crop.cleared_on is None else min(until, crop.cleared_on)
    settings = settings_by_day((s for s in crop_statements(unit, crop) if s.day <= until), crop.day_zero, last)
    rooms = {r.id: r for r in unit.rooms.all(removed=True)}
    lamps = _by_room(unit)
    placements = sorted(unit.placements.all(crop_id=crop.id), key=lambda p: p.from_day)
    found, asked = [], dict[str, None]()
    for day, setting in settings.items():
        room_id = _room_on(placements, day)
        room, its_lamps = rooms.get(room_id), lamps.get(room_id, [])
        known = with_canopy(setting, room, its_lamps, day)
        if room is not None and (sentence := _question(known, room, burning(its_lamps, setting, day))):
            asked[sentence] = None
        found.append(light_day(day, known))
    return found, list(asked)


def room_settings(unit: UnitOfWork, room_id: str, first: date, last: date) -> dict[date, LightSetting]:
    """The setting of a room's lamps on each day, by its plan, its entries and those of the crops in it."""
    return settings_by_day(room_statements(unit, room_id), first, last)


def dark_times(unit: UnitOfWork, room_id: str, first: date, last: date) -> list[tuple[datetime, datetime]] | None:
    """The times of the wall clock in which a room's lamps were off; None where no programme is known at all."""
    settings = room_settings(unit, room_id, first - timedelta(days=1), last)
    if not any(s.on_at is not None for s in settings.values()):
        return None
    dark: list[tuple[datetime, datetime]] = []
    off_since: datetime | None = None
    for day in days_between(first - timedelta(days=1), last):
        setting = settings.get(day)
        if setting is None or setting.on_at is None:
            off_since = None
            continue
        goes_on = datetime.combine(day, setting.on_at)
        if off_since is not None and goes_on > off_since:
            dark.append((off_since, goes_on))
        off_since = goes_on + timedelta(minutes=setting.on_minutes)
    if off_since is not None and off_since < datetime.combine(last, datetime.max.time()):
        dark.append((off_since, datetime.combine(last + timedelta(days=1), datetime.min.time())))
    return dark


def with_canopy(setting: LightSetting, room: Room | None, lamps: Sequence[Lamp], day: date) -> LightSetting:
    """The setting with an estimate from the lamps where the canopy's light was not read, or was under other lamps."""
    now = burning(lamps, setting, day)
    canopy = setting.canopy
    if canopy is not None and canopy.day is not None:
        then = burning(lamps, setting, canopy.day)
        if {lamp.id for lamp in then} == {lamp.id for lamp in now}:
            return setting
    elif canopy is not None:
        return setting
    estimate = ppfd_of_lamps(now, None if room is None else room.floor_m2, setting.output)
    return setting if estimate is None else replace(setting, canopy=estimate)


def _question(setting: LightSetting, room: Room, lamps: Sequence[Lamp]) -> str:
    canopy = setting.canopy
    most = ppfd_of_lamps(lamps, room.floor_m2, setting.output)
    if canopy is None or most is None or canopy.way is CanopyWay.LAMPS:
        return ""
    if not more_than_lamps_give(canopy.low or canopy.ppfd_umol, most.ppfd_umol):
        return ""
    return say(
        "{light} at the canopy, known since {day}, is more than the lamps of {room} can give on its floor, "
        "{most} at most. Are the light, the watts, the photons per joule and the floor right?",
        light=fixed(canopy.ppfd_umol, 0, "µmol/m²/s"),
        day=show_day(canopy.day) if canopy.day else "?",
        room=room.name,
        most=fixed(most.ppfd_umol, 0, "µmol/m²/s"),
    )


def _by_room(unit: UnitOfWork) -> dict[str, list[Lamp]]:
    found: dict[str, list[Lamp]] = {}
    for lamp in unit.lamps.all():
        found.setdefault(lamp.room_id, []).append(lamp)
    return found


def _room_on(placements: Sequence[Placement], day: date) -> str:
    return next((p.room_id for p in reversed(placements) if p.covers(day)), "")
