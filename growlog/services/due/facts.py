"""What the sources of due things read, fetched once: growing crops with the entries that matter, routines, answers."""

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from growlog.calculations.due import PutOff
from growlog.records.crop import Crop, Placement
from growlog.records.cultivar import Cultivar
from growlog.records.entry import KINDS, Entry
from growlog.records.routine import DueAnswer, DueOutcome, Routine, RoutineFor
from growlog.storage.unit_of_work import UnitOfWork

_ALWAYS = {"treatment", "stage", "pollination", "fruit-check"}


@dataclass(frozen=True)
class CropFacts:
    """A growing crop: the entries that were made for it, in order, and the days on which it was photographed."""

    crop: Crop
    cultivar: Cultivar
    entries: tuple[Entry, ...]
    photo_days: frozenset[date]

    @cached_property
    def _by_kind(self) -> dict[str, list[Entry]]:
        found: dict[str, list[Entry]] = defaultdict(list)
        for entry in self.entries:
            found[entry.kind].append(entry)
        return found

    def of_kind(self, kind: str) -> list[Entry]:
        """Its entries of a kind, in the order of the days."""
        return self._by_kind.get(kind, [])

    def days_of(self, kind: str) -> set[date]:
        """The days with an entry of a kind, or with a photo."""
        return set(self.photo_days) if kind == "photo" else {e.day for e in self.of_kind(kind)}


@dataclass(frozen=True)
class DueFacts:
    """The logbook on a day, as far as it matters. room_days: days of entries by kind, for what is the room's."""

    today: date
    crops: tuple[CropFacts, ...]
    routines: tuple[Routine, ...]
    answers: dict[str, tuple[DueAnswer, ...]]
    room_days: dict[str, frozenset[date]]

    def answered_days(self, key: str) -> set[date]:
        """The days on which it was ticked as done, or left out."""
        return {a.due_day for a in self.answers.get(key, ()) if a.outcome is not DueOutcome.PUT_OFF}

    def put_off(self, key: str) -> list[PutOff]:
        """How far it was put off, and when that was said."""
        answers = self.answers.get(key, ())
        return [PutOff(a.due_day, a.until_day) for a in answers if a.outcome is DueOutcome.PUT_OFF and a.until_day]


def due_facts(unit: UnitOfWork, today: date) -> DueFacts:
    """Reads what is needed; entries of kinds that no rule asks for stay where they are."""
    crops = sorted((c for c in unit.crops.all() if c.growing), key=lambda c: (c.day_zero, c.name))
    routines = tuple(sorted(unit.routines.all(), key=lambda r: (r.name.casefold(), r.id)))
    kinds = _ALWAYS | {r.entry_kind for r in routines if r.entry_kind in KINDS}
    return DueFacts(today, tuple(_crop_facts(unit, crops, kinds)), routines, _answers(unit), _room_days(unit, routines))


def _crop_facts(unit: UnitOfWork, crops: list[Crop], kinds: set[str]) -> Iterable[CropFacts]:
    if not crops:
        return
    ids = [c.id for c in crops]
    cultivars = {c.id: c for c in unit.cultivars.all(removed=True, id=[c.cultivar_id for c in crops])}
    photos: dict[str, set[date]] = defaultdict(set)
    for use in unit.photo_uses.all(crop_id=ids):
        photos[use.crop_id].add(use.day)
    entries = _entries(unit, ids, sorted(kinds))
    for crop in crops:
        yield CropFacts(crop, cultivars[crop.cultivar_id], tuple(entries[crop.id]), frozenset(photos[crop.id]))


def _entries(unit: UnitOfWork, crop_ids: list[str], kinds: list[str]) -> dict[str, list[Entry]]:
    """The entries of each crop, its plants', and those of tank and room on the days it stood there."""
    found: dict[str, list[Entry]] = defaultdict(list)
    for entry in unit.entries.all(crop_id=crop_ids, kind=kinds):
        found[entry.owner.id].append(entry)
    crop_of = {p.id: p.crop_id for p in unit.plants.all(crop_id=crop_ids)}
    for entry in unit.entries.all(plant_id=list(crop_of), kind=kinds) if crop_of else []:
        found[crop_of[entry.owner.id]].append(entry)
    placements = unit.placements.all(crop_id=crop_ids)
    for entry in _shared(unit, placements, kinds):
        for crop_id in {
            p.crop_id for p in placements if entry.owner.id in (p.room_id, p.tank_id) and p.covers(entry.day)
        }:
            found[crop_id].append(entry)
    return defaultdict(list, {id_: sorted(made, key=lambda e: e.day) for id_, made in found.items()})


def _shared(unit: UnitOfWork, placements: list[Placement], kinds: list[str]) -> list[Entry]:
    rooms = list({p.room_id for p in placements})
    tanks = list({p.tank_id for p in placements if p.tank_id})
    found = unit.entries.all(room_id=rooms, kind=kinds) if rooms else []
    return found + (unit.entries.all(tank_id=tanks, kind=kinds) if tanks else [])


def _room_days(unit: UnitOfWork, routines: Iterable[Routine]) -> dict[str, frozenset[date]]:
    kinds = {r.entry_kind for r in routines if r.who is RoutineFor.ROOM and r.entry_kind}
    days: dict[str, set[date]] = defaultdict(set)
    for entry in unit.entries.all(kind=sorted(kinds & set(KINDS))) if kinds & set(KINDS) else []:
        days[entry.kind].add(entry.day)
    if "photo" in kinds:
        days["photo"] = {use.day for use in unit.photo_uses.all()}
    return {kind: frozenset(of_kind) for kind, of_kind in days.items()}


def _answers(unit: UnitOfWork) -> dict[str, tuple[DueAnswer, ...]]:
    """The answers by key; one that stands for an entry goes with its entry."""
    answers = unit.due_answers.all()
    stood_for = [a.entry_id for a in answers if a.entry_id]
    kept = {e.id for e in unit.entries.all(id=stood_for)} if stood_for else set()
    found: dict[str, list[DueAnswer]] = defaultdict(list)
    for answer in answers:
        if answer.entry_id is None or answer.entry_id in kept:
            found[answer.due_key].append(answer)
    return {key: tuple(of_key) for key, of_key in found.items()}
