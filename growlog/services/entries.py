"""Entries: add, correct, remove, and what is worth a question before."""

from dataclasses import dataclass, replace
from datetime import date, timedelta

from growlog.records.change import Change
from growlog.records.crop import Crop, Plant
from growlog.records.entry import KINDS, Entry, Owner, OwnerKind, Treatment
from growlog.records.problems import Problem, refuse
from growlog.services.climate.days import remake_days
from growlog.services.light.checks import photon_questions
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.shelf.draws import draws_of, follow_entry
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day


@dataclass(frozen=True)
class Belongs:
    """An owner that an entry of a crop may have, with its name for the form."""

    owner: Owner
    name: str


def new_entry(owner: Owner, day: date, kind: str) -> Entry:
    """An empty entry of a kind, not yet written."""
    return Entry(new_id(), owner, day, KINDS[kind]())


def check_entry(log: OpenLogbook, entry: Entry) -> list[Problem]:
    """All problems and questions of an entry, its crop's dates and treatments among them. Writes nothing."""
    with log.unit() as unit:
        beside = standing_entry_problems(unit, entry, log.today()) + photon_questions(unit, entry)
        return entry.problems() + beside


def add_entries(log: OpenLogbook, entries: list[Entry], title: str = "") -> Change:
    """Writes entries made together as one undoable change; RecordRefused with all that is wrong."""
    group = new_id()
    with log.unit() as unit:
        refuse([p for e in entries for p in e.problems() + standing_entry_problems(unit, e, log.today())])
        grouped = [replace(e, group_id=group) if len(entries) > 1 else e for e in entries]
        unit.add(group, *grouped)
        unit.add(group, *(move for e in entries for move in draws_of(unit, e)))
        remake_days(unit, *grouped)
        crops = crops_concerned(unit, entries)
        unit.commit()
    named = title or say("{kind} on {day}", kind=say(entries[0].detail.label), day=show_day(entries[0].day))
    return Change(group, named, tuple(e.id for e in entries), crops)


def add_entry(log: OpenLogbook, entry: Entry) -> Change:
    """Writes one entry; RecordRefused with all that is wrong."""
    return add_entries(log, [entry])


def correct_entry(log: OpenLogbook, entry: Entry) -> Change:
    """Writes a corrected entry over the version it was read as; RecordRefused, or RecordMoved if it changed since.

    What it drew from bottles follows it.
    """
    group = new_id()
    with log.unit() as unit:
        refuse(entry.problems() + standing_entry_problems(unit, entry, log.today()))
        before = unit.entries.get(entry.id)
        unit.change(group, entry)
        follow_entry(unit, group, before, entry)
        remake_days(unit, before, entry)
        crops = crops_concerned(unit, [before, entry])
        unit.commit()
    return Change(group, say("Correct {kind}", kind=say(entry.detail.label)), (entry.id,), crops)


def remove_entry(log: OpenLogbook, entry_id: str) -> Change:
    """Puts an entry into the bin; what it drew from bottles goes back into them."""
    group = new_id()
    with log.unit() as unit:
        entry = unit.entries.get(entry_id)
        crops = crops_concerned(unit, [entry])
        for move in unit.stock_moves.all(entry_id=entry_id):
            unit.remove(group, move)
        unit.remove(group, entry)
        remake_days(unit, entry)
        unit.commit()
    return Change(group, say("Remove {kind}", kind=say(entry.detail.label)), (entry.id,), crops)


def owners_for(log: OpenLogbook, crop_id: str, day: date) -> list[Belongs]:
    """Whose an entry on that day may be: the crop, each plant alive, the tank and the room it stood by."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        found = [Belongs(Owner(OwnerKind.CROP, crop_id), crop.name)]
        plants = [p for p in unit.plants.all(crop_id=crop_id) if _alive(p, day)]
        if len(plants) > 1:
            found += [Belongs(Owner(OwnerKind.PLANT, p.id), say("plant {label}", label=p.label)) for p in plants]
        for placement in unit.placements.all(crop_id=crop_id):
            if not placement.covers(day):
                continue
            if placement.tank_id:
                found.append(Belongs(Owner(OwnerKind.TANK, placement.tank_id), unit.tanks.get(placement.tank_id).name))
            found.append(Belongs(Owner(OwnerKind.ROOM, placement.room_id), unit.rooms.get(placement.room_id).name))
    return found


def own_entries(unit: UnitOfWork, crop_ids: list[str]) -> dict[str, list[Entry]]:
    """The entries of each crop and of its plants, by crop id, in the order of the days."""
    found: dict[str, list[Entry]] = {id_: [] for id_ in crop_ids}
    crop_of = {p.id: p.crop_id for p in unit.plants.all(crop_id=crop_ids)}
    entries = unit.entries.all(crop_id=crop_ids) + (unit.entries.all(plant_id=list(crop_of)) if crop_of else [])
    for entry in sorted(entries, key=_when):
        found[crop_of.get(entry.owner.id, entry.owner.id)].append(entry)
    return found


def entries_of_crop(unit: UnitOfWork, crop: Crop) -> list[Entry]:
    """The crop's entries, its plants', and those of room and tank on the days it stood there."""
    entries = own_entries(unit, [crop.id])[crop.id]
    seen: set[str] = set()
    for placement in unit.placements.all(crop_id=crop.id):
        shared = unit.entries.all(room_id=placement.room_id)
        if placement.tank_id:
            shared += unit.entries.all(tank_id=placement.tank_id)
        stood = [e for e in shared if placement.covers(e.day) and e.id not in seen and _within(crop, e.day)]
        seen |= {e.id for e in stood}
        entries += stood
    return sorted(entries, key=_when)


def harvest_closed_until(entries: list[Entry], day: date) -> tuple[Treatment, date] | None:
    """The treatment whose harvest interval a day falls into, and the first day on which a pick is free again.

    Of several intervals the one that ends last counts.
    """
    closed: tuple[Treatment, date] | None = None
    for entry in entries:
        detail = entry.detail
        if isinstance(detail, Treatment) and detail.harvest_interval_days:
            free = entry.day + timedelta(days=detail.harvest_interval_days)
            if entry.day <= day < free and (closed is None or free > closed[1]):
                closed = detail, free
    return closed


def _when(entry: Entry) -> tuple[date, bool, str, str]:
    return entry.day, entry.at is None, entry.at.isoformat() if entry.at else "", entry.id


def _alive(plant: Plant, day: date) -> bool:
    return plant.from_day <= day and (plant.lost_on is None or plant.lost_on >= day)


def _within(crop: Crop, day: date) -> bool:
    return crop.day_zero <= day and (crop.cleared_on is None or day <= crop.cleared_on)


def standing_entry_problems(unit: UnitOfWork, entry: Entry, today: date) -> list[Problem]:
    """Problems and questions of an entry beside the rest of the logbook: its crop's dates and treatments."""
    crop = _crop_of(unit, entry.owner)
    if crop is None or entry.kind != "pick":
        return day_problems(crop, entry.day, today)
    treatments = [e for e in entries_of_crop(unit, crop) if e.kind == "treatment"]
    return day_problems(crop, entry.day, today) + harvest_problems(treatments, entry.day)


def day_problems(crop: Crop | None, day: date, today: date) -> list[Problem]:
    """What keeps an entry from a day: it has not come, or the crop (None: a tank's or room's entry) did not stand."""
    found = []
    if day > today:
        found.append(Problem("day", say("This day has not come yet.")))
    if crop is not None and day < crop.day_zero:
        sentence = say("This is before day 0 of {crop}, {day}.", crop=crop.name, day=show_day(crop.day_zero))
        found.append(Problem("day", sentence))
    if crop is not None and crop.cleared_on is not None and day > crop.cleared_on:
        sentence = say("{crop} was cleared on {day}.", crop=crop.name, day=show_day(crop.cleared_on))
        found.append(Problem("day", sentence))
    return found


def harvest_problems(treatments: list[Entry], day: date) -> list[Problem]:
    """The question of a pick on a day that falls into the harvest interval of one of the crop's treatments."""
    closed = harvest_closed_until(treatments, day)
    if closed is None:
        return []
    treatment, free = closed
    sentence = say(
        "The label of {product} asks for no pick before {day}. Fruit picked now is not to be eaten; the label rules.",
        product=treatment.product,
        day=show_day(free),
    )
    return [Problem("day", sentence, asks=True)]


def _crop_of(unit: UnitOfWork, owner: Owner) -> Crop | None:
    if owner.kind is OwnerKind.CROP:
        return unit.crops.get(owner.id)
    if owner.kind is OwnerKind.PLANT:
        return unit.crops.get(unit.plants.get(owner.id).crop_id)
    return None


def crops_concerned(unit: UnitOfWork, entries: list[Entry]) -> frozenset[str] | None:
    """The crops whose screens a change of entries concerns; None where one is of a tank or a room."""
    crops = [_crop_of(unit, e.owner) for e in entries]
    return None if None in crops else frozenset(c.id for c in crops if c is not None)
