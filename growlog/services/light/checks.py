"""Whether light, watts and floor agree: more photons than the lamps can give are asked about before being written."""

from datetime import date

from growlog.calculations.light_needed import more_than_lamps_give
from growlog.calculations.light_programme import LightSetting
from growlog.records.display import fixed
from growlog.records.entry import Entry, LightChange, OwnerKind, Reading
from growlog.records.light_plan import LightStep
from growlog.records.problems import Problem
from growlog.records.room import Room
from growlog.services.light.lamps import burning, ppfd_of_lamps
from growlog.services.light.programme import room_settings
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


def photon_questions(unit: UnitOfWork, entry: Entry) -> list[Problem]:
    """A question where an entry states more light at the canopy than the lamps of its room can give on its floor."""
    detail = entry.detail
    if not isinstance(detail, (LightChange, Reading)) or not detail.canopy_ppfd_umol:
        return []
    room_id = _room_of(unit, entry)
    if room_id is None:
        return []
    setting = room_settings(unit, room_id, entry.day, entry.day).get(entry.day, LightSetting(24))
    output = setting.output
    if isinstance(detail, LightChange) and detail.dimming_percent is not None:
        output = detail.dimming_percent / 100
    return _question(unit, room_id, setting, entry.day, output, detail.canopy_ppfd_umol)


def step_questions(unit: UnitOfWork, step: LightStep, day: date) -> list[Problem]:
    """The same of a step of the plan that starts on a day."""
    if not step.canopy_ppfd_umol:
        return []
    setting = LightSetting(step.photoperiod_h, step.on_at, step.dimming_percent, step.lamp_ids)
    return _question(unit, step.room_id, setting, day, setting.output, step.canopy_ppfd_umol)


def _question(
    unit: UnitOfWork, room_id: str, setting: LightSetting, day: date, output: float, ppfd_umol: float
) -> list[Problem]:
    room: Room = unit.rooms.get(room_id)
    most = ppfd_of_lamps(burning(unit.lamps.all(room_id=room_id), setting, day), room.floor_m2, output)
    if most is None or not more_than_lamps_give(ppfd_umol, most.ppfd_umol):
        return []
    sentence = say(
        "The lamps of {room} can give {most} at most on its floor. Are the light, the watts, the photons per joule and "
        "the floor right?",
        room=room.name,
        most=fixed(most.ppfd_umol, 0, "µmol/m²/s"),
    )
    return [Problem("canopy_ppfd_umol", sentence, asks=True)]


def _room_of(unit: UnitOfWork, entry: Entry) -> str | None:
    owner = entry.owner
    if owner.kind is OwnerKind.ROOM:
        return owner.id
    if owner.kind is OwnerKind.TANK:
        return None
    crop_id = unit.plants.get(owner.id).crop_id if owner.kind is OwnerKind.PLANT else owner.id
    return next((p.room_id for p in unit.placements.all(crop_id=crop_id) if p.covers(entry.day)), None)
