"""Rooms, lamps, tanks, and which crop stands where."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any

from growlog.records.change import Change
from growlog.records.crop import Placement
from growlog.records.problems import Problem, refuse
from growlog.records.room import Device, Lamp, Room, Tank
from growlog.services.climate.days import moved_rooms, remake_days
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


@dataclass(frozen=True)
class RoomView:
    """A room with what is in it."""

    room: Room
    lamps: tuple[Lamp, ...]
    tanks: tuple[Tank, ...]
    devices: tuple[Device, ...] = ()


def rooms_of(log: OpenLogbook) -> list[RoomView]:
    """All rooms by name, each with its lamps, tanks and devices."""
    with log.unit() as unit:
        rooms = sorted(unit.rooms.all(), key=lambda r: r.name.casefold())
        lamps, tanks, devices = unit.lamps.all(), unit.tanks.all(), unit.devices.all()
    return [
        RoomView(
            r,
            tuple(x for x in lamps if x.room_id == r.id),
            tuple(x for x in tanks if x.room_id == r.id),
            tuple(x for x in devices if x.room_id == r.id),
        )
        for r in rooms
    ]


def save_thing(log: OpenLogbook, record: Room | Lamp | Tank | Device) -> Change:
    """Writes a room, lamp, tank or device, new or changed; RecordRefused with all that is wrong."""
    group = new_id()
    with log.unit() as unit:
        store: Any = unit.store(type(record))
        before = store.find(record.id)
        if before is None:
            unit.add(group, record)
        else:
            unit.change(group, record)
            remake_days(unit, *moved_rooms(before, record))
        unit.commit()
    return Change(group, say("Save {name}", name=record.name), (record.id,), None)


def remove_thing(log: OpenLogbook, record: Lamp | Tank | Device) -> Change:
    """Puts a lamp, a tank or a device into the bin."""
    group = new_id()
    with log.unit() as unit:
        unit.remove(group, record)
        unit.commit()
    return Change(group, say("Remove {name}", name=record.name), (record.id,), None)


def place_crop(
    log: OpenLogbook,
    crop_id: str,
    room_id: str,
    from_day: date,
    *,
    floor_share: float | None = None,
    tank_id: str | None = None,
) -> Change:
    """Puts a crop into a room from a day on, ending where it stood before; RecordRefused over the whole floor."""
    group = new_id()
    placement = Placement(new_id(), crop_id, room_id, from_day, None, tank_id, floor_share)
    with log.unit() as unit:
        refuse(floor_problems(unit, placement))
        for old in unit.placements.all(crop_id=crop_id):
            if old.from_day < from_day and (old.until_day is None or old.until_day >= from_day):
                unit.change(group, replace(old, until_day=from_day - timedelta(days=1)))
            elif old.from_day >= from_day:
                unit.remove(group, old)
        unit.add(group, placement)
        unit.commit()
    return Change(group, say("Place a crop"), (placement.id,), None)


def change_placement(log: OpenLogbook, placement: Placement) -> Change:
    """Writes changed days, tank or shares of a placement; RecordRefused over the whole floor, or where it would
    overlap another place of the same crop."""
    group = new_id()
    with log.unit() as unit:
        refuse(placement.problems() + floor_problems(unit, placement) + _overlaps(unit, placement))
        unit.change(group, placement)
        unit.commit()
    return Change(group, say("Place a crop"), (placement.id,), None)


def _overlaps(unit: UnitOfWork, placement: Placement) -> list[Problem]:
    for other in unit.placements.all(crop_id=placement.crop_id):
        if other.id != placement.id and (other.covers(placement.from_day) or placement.covers(other.from_day)):
            return [Problem("from_day", say("The crop stands elsewhere on some of these days."))]
    return []


def floor_problems(unit: UnitOfWork, placement: Placement) -> list[Problem]:
    """A problem where a placement and those of other crops would at any time take more than the whole floor."""
    if not placement.floor_share:
        return []
    others = _others_in_room(unit, placement)
    days = [placement.from_day, *(p.from_day for p in others if placement.covers(p.from_day))]
    taken = max(sum(p.floor_share or 0 for p in others if p.covers(day)) for day in days)
    if taken + placement.floor_share <= 1 + 1e-9:
        return []
    sentence = say("The other crops take {share} % of the floor already.", share=round(taken * 100))
    return [Problem("floor_share", sentence)]


def _others_in_room(unit: UnitOfWork, placement: Placement) -> list[Placement]:
    """The placements of other crops in the room; a crop that was cleared left its floor the day after."""
    crops = {c.id: c for c in unit.crops.all()}
    found = []
    for other in unit.placements.all(room_id=placement.room_id):
        if other.crop_id == placement.crop_id or other.crop_id not in crops:
            continue
        ends = [d for d in (other.until_day, crops[other.crop_id].cleared_on) if d is not None]
        found.append(replace(other, until_day=min(ends, default=None)))
    return found


def placements_of(log: OpenLogbook, crop_id: str) -> list[Placement]:
    """Where a crop stood, in order."""
    with log.unit() as unit:
        return sorted(unit.placements.all(crop_id=crop_id), key=lambda p: p.from_day)
