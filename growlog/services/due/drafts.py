"""The entry that would do what is due, filled in as far as nobody has to measure or count anew."""

from dataclasses import replace
from datetime import date

from growlog.records.entry import KINDS, Calibration, Detail, Entry, Feed, Owner, OwnerKind, Pollination
from growlog.services.due.item import DueItem
from growlog.services.due.routine_source import repeatable_feed
from growlog.services.entries import entries_of_crop
from growlog.services.feed_plan import PlannedFeed, planned_in
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork

_IN_THE_ROOM = ("calibration", "light", "meter")
_METERS = ("EC", "pH")


def drafted_entry(log: OpenLogbook, item: DueItem, crop_id: str) -> Entry:
    """The entry for a due thing of a kind of entry, not yet written. crop_id: on whose day it is written.

    A feed repeats what was given last time, mix, strength and volume, but nothing that was measured; the crop's feed
    plan, where there is one, says mix and strength. ValueError where no entry does it.
    """
    if item.entry_kind not in KINDS:
        raise ValueError(f"entry_kind {item.entry_kind!r} has no entry")
    today = log.today()
    with log.unit() as unit:
        before = [
            e for e in entries_of_crop(unit, unit.crops.get(crop_id)) if e.kind == item.entry_kind and e.day <= today
        ]
        if item.entry_kind == "calibration":
            before = sorted(unit.entries.all(kind="calibration"), key=lambda e: e.day)
        owner = _owner(unit, item.entry_kind, crop_id, today, before)
        detail = _as_planned(_repeated(item.entry_kind, before), planned_in(unit, crop_id, today))
    note = item.title if item.entry_kind == "note" else ""
    return Entry(new_id(), owner, today, detail, note=note)


def _owner(unit: UnitOfWork, kind: str, crop_id: str, today: date, before: list[Entry]) -> Owner:
    here = next((p for p in unit.placements.all(crop_id=crop_id) if p.covers(today)), None)
    if here is not None and kind in _IN_THE_ROOM:
        return Owner(OwnerKind.ROOM, here.room_id)
    fed_to_tank = kind == "feed" and bool(before) and before[-1].owner.kind is OwnerKind.TANK
    if here is not None and here.tank_id and (kind == "tank-care" or fed_to_tank):
        return Owner(OwnerKind.TANK, here.tank_id)
    return Owner(OwnerKind.CROP, crop_id)


def _as_planned(detail: Detail, planned: PlannedFeed | None) -> Detail:
    if planned is None or not isinstance(detail, Feed) or detail.water_only:
        return detail
    volume_l = planned.volume_l if detail.volume_l is None else detail.volume_l
    return replace(detail, mix_id=planned.mix.id, strength_percent=planned.strength_percent, volume_l=volume_l)


def _repeated(kind: str, before: list[Entry]) -> Detail:
    last = before[-1].detail if before else None
    if kind == "feed":
        again = repeatable_feed(before)
        if again is not None and isinstance(again.detail, Feed):
            given = again.detail
            return Feed(given.mix_id, given.strength_percent, given.volume_l, water_only=given.water_only)
    if isinstance(last, Pollination):
        return Pollination(way=last.way)
    if kind == "calibration":
        return _meter_of_turn(before)
    return KINDS[kind]()


def _meter_of_turn(before: list[Entry]) -> Calibration:
    """The meter that waits longest, with the reference that it was last set against."""
    last = {m: next((e for e in reversed(before) if _meter(e) == m.casefold()), None) for m in _METERS}
    meter = min(_METERS, key=lambda m: date.min if (e := last[m]) is None else e.day)
    entry = last[meter]
    reference = entry.detail.reference_value if entry and isinstance(entry.detail, Calibration) else None
    return Calibration(meter, reference)


def _meter(entry: Entry) -> str:
    return entry.detail.meter.strip().casefold() if isinstance(entry.detail, Calibration) else ""
