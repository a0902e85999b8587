"""What was done before, to be done again: the last entry of a kind, and mixes in the order of their use."""

from dataclasses import replace
from datetime import date
from typing import Any

from growlog.records.entry import Entry, Feed, Owner, OwnerKind
from growlog.records.recipe import Mix
from growlog.services.entries import new_entry, own_entries
from growlog.services.feed_plan import planned_feed
from growlog.services.mixes import mixes_of
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork

REPEATABLE = ("feed", "reading", "training", "pollination", "fruit-check", "light", "calibration")


def last_like(log: OpenLogbook, entry: Entry) -> Entry | None:
    """The latest entry of the same kind and owner on an earlier day; None if there is none, or the kind is no routine.

    Picks, problems and notes are seen anew each time and are never offered again.
    """
    if entry.kind not in REPEATABLE:
        return None
    with log.unit() as unit:
        earlier = [e for e in entries_of_owner(unit, entry.owner) if e.kind == entry.kind and e.day < entry.day]
    return max(earlier, key=lambda e: (e.day, e.at is not None, e.at.isoformat() if e.at else ""), default=None)


def starting_entry(log: OpenLogbook, owner: Owner, day: date, kind: str) -> Entry:
    """An unwritten entry of a kind as it usually begins: a feed as the crop's plan has it for the day, without a plan
    with the newest edition of the mix given last."""
    entry = new_entry(owner, day, kind)
    planned = planned_feed(log, owner.id, day) if kind == "feed" and owner.kind is OwnerKind.CROP else None
    if planned is not None:
        return replace(entry, detail=Feed(planned.mix.id, planned.strength_percent, planned.volume_l))
    last = last_like(log, entry)
    if last is None or not isinstance(last.detail, Feed) or last.detail.mix_id is None:
        return entry
    return replace(entry, detail=Feed(mix_id=newest_edition(log, last.detail.mix_id)))


def newest_edition(log: OpenLogbook, mix_id: str) -> str | None:
    """The newest edition of the mix of which mix_id is one; None where that mix was taken away."""
    with log.unit() as unit:
        used = unit.mixes.find(mix_id)
    newest = {m.name.casefold(): m.id for m in mixes_of(log)}
    return None if used is None else newest.get(used.name.casefold())


def entries_of_owner(unit: UnitOfWork, owner: Owner) -> list[Entry]:
    """The entries of a crop with its plants', of a plant, a tank or a room."""
    if owner.kind is OwnerKind.CROP:
        return own_entries(unit, [owner.id])[owner.id]
    owned: dict[str, Any] = {f"{owner.kind.value}_id": owner.id}
    return unit.entries.all(**owned)


def mixes_by_use(log: OpenLogbook, owner: Owner, day: date) -> list[Mix]:
    """The newest edition of each mix: the one that the owner was given last comes first, the others by name."""
    with log.unit() as unit:
        given = [e for e in entries_of_owner(unit, owner) if isinstance(e.detail, Feed) and e.day <= day]
        names = {m.id: m.name.casefold() for m in unit.mixes.all(removed=True)}
    last_use = {names.get(e.detail.mix_id or "", ""): e.day for e in given if isinstance(e.detail, Feed)}
    return sorted(mixes_of(log), key=lambda m: -last_use.get(m.name.casefold(), date.min).toordinal())
