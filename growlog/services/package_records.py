"""Which records of a logbook go into its data package: all but the bin, and what those still refer to."""

from collections.abc import Iterable
from datetime import date
from typing import Any, TypeVar

from growlog.records.entry import Entry, Feed, OwnerKind
from growlog.records.logbook import LogbookFacts
from growlog.sharing.data_package import Package
from growlog.storage.stores import Store
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

R = TypeVar("R")


def package_of(unit: UnitOfWork, as_of: date) -> Package:
    """The logbook's records. A mix, tank, cultivar or room in the bin is kept where something still refers to it."""
    crops = tuple(unit.crops.all())
    crop_ids = {c.id for c in crops}
    plants = tuple(p for p in unit.plants.all() if p.crop_id in crop_ids)
    placements = tuple(p for p in unit.placements.all() if p.crop_id in crop_ids)
    uses = tuple(u for u in unit.photo_uses.all() if u.crop_id in crop_ids)
    entries = _entries(unit, crop_ids, {p.id for p in plants})
    lamps = tuple(unit.lamps.all())
    tanks = _kept(unit.tanks, {p.tank_id for p in placements} | _owners(entries, OwnerKind.TANK))
    rooms_named = {p.room_id for p in placements} | {x.room_id for x in lamps} | {t.room_id for t in tanks}
    mixes_named = [e.detail.mix_id for e in entries if isinstance(e.detail, Feed)]
    return Package(
        logbook=next(iter(unit.logbook.all()), LogbookFacts("logbook", say("Logbook"))),
        as_of=as_of,
        rooms=_kept(unit.rooms, rooms_named | _owners(entries, OwnerKind.ROOM)),
        lamps=lamps,
        tanks=tanks,
        cultivars=_kept(unit.cultivars, [c.cultivar_id for c in crops]),
        crops=crops,
        plants=plants,
        placements=placements,
        mixes=_kept(unit.mixes, mixes_named),
        photos=_named(unit.photos, {u.photo_id for u in uses}),
        photo_uses=uses,
        entries=entries,
    )


def _entries(unit: UnitOfWork, crops: set[str], plants: set[str]) -> tuple[Entry, ...]:
    there = {OwnerKind.CROP: crops, OwnerKind.PLANT: plants}
    return tuple(e for e in unit.entries.all() if e.owner.kind not in there or e.owner.id in there[e.owner.kind])


def _owners(entries: Iterable[Entry], kind: OwnerKind) -> set[str | None]:
    return {e.owner.id for e in entries if e.owner.kind is kind}


def _kept(store: Store[R], named: Iterable[str | None]) -> tuple[R, ...]:
    ids = set(named)
    everything: list[Any] = store.all(removed=True)
    return tuple(r for r in everything if r.removed_at is None or r.id in ids)


def _named(store: Store[R], ids: set[str]) -> tuple[R, ...]:
    everything: list[Any] = store.all(removed=True)
    return tuple(r for r in everything if r.id in ids)
