"""Which records of a logbook go into its data package: all but the bin, and what those still refer to."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from typing import Any, TypeVar

from growlog.records.entry import Entry, Feed, OwnerKind, TankCare
from growlog.records.light_plan import LightStep
from growlog.records.logbook import LogbookFacts
from growlog.records.recipe import Mix
from growlog.sharing.data_package import Package
from growlog.storage.stores import Store
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

R = TypeVar("R")


def package_of(unit: UnitOfWork, as_of: date) -> Package:
    """The logbook's records. What is in the bin stays behind, unless it is a room, mix or the like still named."""
    crops = tuple(unit.crops.all())
    logbook = next(iter(unit.logbook.all()), LogbookFacts("logbook", say("Logbook")))
    return _with_things(unit, _with_plans(unit, _with_entries(unit, Package(logbook, as_of, crops=crops))))


def _with_entries(unit: UnitOfWork, package: Package) -> Package:
    """What happened to the crops: their plants, places, photos and entries, and what was decided."""
    crop_ids = {c.id for c in package.crops}
    plants = tuple(p for p in unit.plants.all() if p.crop_id in crop_ids)
    uses = _of_crops(unit.photo_uses, crop_ids)
    entries = _entries(unit, crop_ids, {p.id for p in plants})
    use_ids, entry_ids = {u.id for u in uses}, {e.id for e in entries}
    return replace(
        package,
        plants=plants,
        placements=_of_crops(unit.placements, crop_ids),
        photos=_named(unit.photos, {u.photo_id for u in uses}),
        photo_uses=uses,
        entries=entries,
        stock_moves=tuple(_without_lost_entry(unit.stock_moves.all(), entry_ids)),
        due_answers=tuple(_without_lost_entry(_of_crops(unit.due_answers, {None, *crop_ids}), entry_ids)),
        purchases=_of_crops(unit.purchases, {None, *crop_ids}),
        decisions=_of_crops(unit.decisions, crop_ids),
        review_photos=tuple(p for p in unit.review_photos.all() if p.photo_use_id in use_ids),
    )


def _with_plans(unit: UnitOfWork, package: Package) -> Package:
    """What is planned for the crops, and what stands by itself."""
    crop_ids = {c.id for c in package.crops}
    files = tuple(unit.logger_files.all())
    return replace(
        package,
        routines=_of_crops(unit.routines, {None, *crop_ids}),
        feed_steps=_of_crops(unit.feed_steps, crop_ids),
        light_steps=tuple(_for_kept_crops(unit.light_steps.all(), crop_ids)),
        devices=tuple(unit.devices.all()),
        tariffs=tuple(unit.tariffs.all()),
        logger_files=files,
        column_maps=tuple(unit.column_maps.all()),
        feed_targets=tuple(unit.feed_targets.all()),
        climate_samples={f.id: tuple(unit.climate_samples.of_file(f.id)) for f in files},
    )


def _with_things(unit: UnitOfWork, package: Package) -> Package:
    """What all that refers to."""
    entries = package.entries
    mixes = _kept(unit.mixes, _mixes_named(entries) | {s.mix_id for s in package.feed_steps})
    lamps = _kept(unit.lamps, {lamp_id for step in package.light_steps for lamp_id in step.lamp_ids})
    tanks = _kept(unit.tanks, {p.tank_id for p in package.placements} | _owners(entries, OwnerKind.TANK))
    in_rooms: list[Any] = [*lamps, *tanks, *package.placements, *package.light_steps, *package.devices]
    rooms_named = {r.room_id for r in [*in_rooms, *package.logger_files]} | _owners(entries, OwnerKind.ROOM)
    return replace(
        package,
        rooms=_kept(unit.rooms, rooms_named),
        lamps=lamps,
        tanks=tanks,
        cultivars=_kept(unit.cultivars, [c.cultivar_id for c in package.crops]),
        products=_kept(unit.products, _products_named(package, mixes)),
        waters=_kept(unit.waters, {w.water_id for m in mixes for w in m.waters}),
        mixes=mixes,
    )


def _products_named(package: Package, mixes: Iterable[Mix]) -> set[str | None]:
    doses = [d for e in package.entries if isinstance(e.detail, TankCare) for d in e.detail.doses]
    parts = [p for m in mixes for p in m.parts]
    return {d.product_id for d in doses} | {p.product_id for p in parts} | {m.product_id for m in package.stock_moves}


def _entries(unit: UnitOfWork, crops: set[str], plants: set[str]) -> tuple[Entry, ...]:
    there = {OwnerKind.CROP: crops, OwnerKind.PLANT: plants}
    return tuple(e for e in unit.entries.all() if e.owner.kind not in there or e.owner.id in there[e.owner.kind])


def _owners(entries: Iterable[Entry], kind: OwnerKind) -> set[str | None]:
    return {e.owner.id for e in entries if e.owner.kind is kind}


def _mixes_named(entries: Iterable[Entry]) -> set[str | None]:
    return {e.detail.mix_id for e in entries if isinstance(e.detail, (Feed, TankCare))}


def _of_crops(store: Store[R], crop_ids: Iterable[str | None]) -> tuple[R, ...]:
    kept, everything = set(crop_ids), list[Any](store.all())
    return tuple(r for r in everything if r.crop_id in kept)


def _for_kept_crops(steps: Iterable[LightStep], crop_ids: set[str]) -> Iterable[LightStep]:
    """Steps by the age of a crop in the bin go with it; those by a day merely lose its name."""
    for step in steps:
        if step.crop_id is None or step.crop_id in crop_ids:
            yield step
        elif step.from_age is None:
            yield replace(step, crop_id=None)


def _without_lost_entry(records: Iterable[Any], entry_ids: set[str]) -> Iterable[Any]:
    """An entry in the bin is no longer pointed at; what happened beside it stays."""
    for record in records:
        yield record if record.entry_id is None or record.entry_id in entry_ids else replace(record, entry_id=None)


def _kept(store: Store[R], named: Iterable[str | None]) -> tuple[R, ...]:
    ids = set(named)
    everything: list[Any] = store.all(removed=True)
    return tuple(r for r in everything if r.removed_at is None or r.id in ids)


def _named(store: Store[R], ids: set[str]) -> tuple[R, ...]:
    everything: list[Any] = store.all(removed=True)
    return tuple(r for r in everything if r.id in ids)
