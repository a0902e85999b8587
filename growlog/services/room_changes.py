"""All that the room's dialog shows, and all that was changed in it written as one change."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from growlog.records.change import Change
from growlog.records.crop import Crop, Placement
from growlog.records.problems import Problem, RecordRefused, refuse
from growlog.records.room import Device, Lamp, Room, Tank
from growlog.services.climate.days import moved_rooms, remake_days
from growlog.services.light.bulbs import BulbHours, room_bulbs
from growlog.services.light.statements import stands
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.rooms import RoomView, rooms_of
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day

RoomRecord = Room | Lamp | Tank | Device | Placement
Removable = Lamp | Tank | Device | Placement


@dataclass(frozen=True)
class RoomBook:
    """Every room with what is in it and who stands there. bulbs: by the id of their lamp, as of today."""

    rooms: tuple[RoomView, ...]
    placements: tuple[Placement, ...]
    crops: tuple[Crop, ...]
    bulbs: Mapping[str, BulbHours]
    currency: str
    today: date

    def placements_in(self, room_id: str) -> list[Placement]:
        """Who stands or stood in a room, the first to come first; crops in the bin left out."""
        known = {crop.id for crop in self.crops}
        found = [p for p in self.placements if p.room_id == room_id and p.crop_id in known]
        return sorted(found, key=lambda p: (p.from_day, p.id))

    def room_of(self, crop_id: str) -> str:
        """The room in which a crop stood last, "" if in none."""
        own = [p for p in self.placements if p.crop_id == crop_id]
        return max(own, key=lambda p: p.from_day).room_id if own else ""


def room_book(log: OpenLogbook) -> RoomBook:
    """The rooms as the logbook stands."""
    rooms = tuple(rooms_of(log))
    today = log.today()
    with log.unit() as unit:
        crops = sorted(unit.crops.all(), key=lambda c: (c.cleared_on is not None, c.name.casefold()))
        bulbs = {b.lamp.id: b for view in rooms for b in room_bulbs(unit, view.room.id, today)}
        currency = next((f.currency for f in unit.logbook.all()), "")
        return RoomBook(rooms, tuple(unit.placements.all()), tuple(crops), bulbs, currency, today)


def share_problems(placements: Sequence[Placement], crops: Iterable[Crop]) -> dict[str, list[Problem]]:
    """What does not fit among the placements of one room, by the id of the placement.

    Shares of the floor or of the energy that come to more than the whole on some day; a crop that would stand in the
    room twice at once.
    """
    known = {crop.id: crop for crop in crops}
    found: dict[str, list[Problem]] = {}
    for placement in placements:
        problems = _twice(placement, placements, known)
        for field in ("floor_share", "energy_share"):
            problems += _over_the_whole(field, placement, placements, known)
        if problems:
            found[placement.id] = problems
    return found


def save_room(log: OpenLogbook, changed: Sequence[RoomRecord], removed: Sequence[Removable] = ()) -> Change:
    """Writes new and changed records of rooms and puts others into the bin, all or nothing, as one change.

    RecordRefused where a record is not true, shares come to more than the whole, a crop would stand in two places at
    once, or a lamp that is taken off is named in the light programme. ValueError where nothing is handed over.
    """
    if not changed and not removed:
        raise ValueError("there is nothing to save")
    group = new_id()
    with log.unit() as unit:
        refuse(_removal_problems(unit, removed))
        moved = [room for r in changed for room in moved_rooms(unit.store(type(r)).find(r.id), r)]
        for gone in removed:
            unit.remove(group, gone)
        for record in sorted(changed, key=lambda r: not isinstance(r, Room)):
            _write(unit, group, record)
        _check_places(unit, [r for r in changed if isinstance(r, Placement)])
        remake_days(unit, *moved)
        unit.commit()
        title = _title(unit, changed, removed)
    return Change(group, title, tuple(r.id for r in (*changed, *removed)), None)


def _write(unit: UnitOfWork, group: str, record: RoomRecord) -> None:
    store: Any = unit.store(type(record))
    if store.find(record.id) is None:
        unit.add(group, record)
    else:
        unit.change(group, record)


def _removal_problems(unit: UnitOfWork, removed: Sequence[Removable]) -> list[Problem]:
    """A step that names its lamps would switch on none, or all, without the one that is taken off."""
    lamps = {r.id: r for r in removed if isinstance(r, Lamp)}
    named = {lamp_id for step in unit.light_steps.all() for lamp_id in step.lamp_ids} & lamps.keys()
    return [Problem("until_day", _named_in_programme(lamps[i])) for i in sorted(named)]


def _named_in_programme(lamp: Lamp) -> str:
    return say(
        "{lamp} is named in the light programme. Take it out there first, or say here until when it hung.",
        lamp=lamp.name,
    )


def _check_places(unit: UnitOfWork, changed: Sequence[Placement]) -> None:
    crops = {c.id: c for c in unit.crops.all()}
    problems: list[Problem] = []
    for room_id in dict.fromkeys(p.room_id for p in changed):
        standing = [p for p in unit.placements.all(room_id=room_id) if p.crop_id in crops]
        by_id = share_problems(standing, crops.values())
        problems += [problem for p in changed for problem in by_id.get(p.id, []) if p.room_id == room_id]
    for placement in changed:
        elsewhere = unit.placements.all(crop_id=placement.crop_id)
        problems += _twice(placement, elsewhere, crops)
    if problems:
        raise RecordRefused(dict.fromkeys(problems))


def _twice(placement: Placement, others: Sequence[Placement], crops: Mapping[str, Crop]) -> list[Problem]:
    for other in others:
        same = other.crop_id == placement.crop_id and other.id != placement.id
        if same and _first_common_day(placement, other) is not None:
            day = show_day(max(placement.from_day, other.from_day))
            name = crops[placement.crop_id].name
            return [Problem("from_day", say("{crop} stands in two places on {day}.", crop=name, day=day))]
    return []


def _over_the_whole(
    field: str, placement: Placement, others: Sequence[Placement], crops: Mapping[str, Crop]
) -> list[Problem]:
    if not getattr(placement, field):
        return []
    comings = {max(p.from_day, crops[p.crop_id].day_zero) for p in (placement, *others)}
    days = [d for d in comings if stands(crops[placement.crop_id], placement, d)]
    sums = [(sum(getattr(p, field) or 0 for p in others if stands(crops[p.crop_id], p, day)), day) for day in days]
    over, day = max(sums, key=lambda pair: (round(pair[0], 9), -pair[1].toordinal()), default=(0, placement.from_day))
    if over <= 1 + 1e-9:
        return []
    sentence = say("Together {share} % from {day} on, more than the whole.", share=round(over * 100), day=show_day(day))
    return [Problem(field, sentence)]


def _first_common_day(one: Placement, other: Placement) -> date | None:
    day = max(one.from_day, other.from_day)
    return day if one.covers(day) and other.covers(day) else None


def _title(unit: UnitOfWork, changed: Sequence[RoomRecord], removed: Sequence[Removable]) -> str:
    room_ids = {r.id if isinstance(r, Room) else r.room_id for r in (*changed, *removed)}
    names = sorted(room.name for i in room_ids if (room := unit.rooms.find(i)) is not None)
    return say("Save {name}", name=", ".join(names))
