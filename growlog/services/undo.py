"""Undo: the inverse of a change, written as a change of its own; it refuses where something has moved since."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from typing import Any, NoReturn

from growlog.records.change import Change, ChangeAction, ChangeRow
from growlog.records.crop import Crop, Placement
from growlog.records.entry import Entry
from growlog.records.light_plan import LightStep
from growlog.records.logger_file import LoggerFile
from growlog.records.photo import Photo, PhotoUse
from growlog.records.plain import to_plain
from growlog.records.problems import Problem
from growlog.records.recipe import Mix
from growlog.records.room import Room
from growlog.services.climate.days import remake_days
from growlog.services.crops import standing_problems
from growlog.services.entries import standing_entry_problems
from growlog.services.entry_batches import StandingChecks
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.photo_uses import one_leads
from growlog.services.rooms import floor_problems
from growlog.services.undo_of_many import are_many, entries_as_left
from growlog.storage.problems import RecordMoved
from growlog.storage.unit_of_work import UnitOfWork, record_of
from growlog.words import say, show_day

_OF_MANY_DAYS = (LoggerFile.__name__, LightStep.__name__, Room.__name__)
_SAMPLES_AT_ONCE = 20_000  # their days are made again in some tenths of a second


def undo(log: OpenLogbook, change: Change) -> Change:
    """Takes a change back and returns the change that did so; undoing that one redoes.

    RecordMoved, saying why, if one of its records was changed again since, or if the logbook would no longer be
    true with it; then nothing was written.
    """
    group = new_id()
    with log.unit() as unit:
        rows = unit.history(change.group_id)
        if are_many(rows):
            _take_back_many(unit, group, rows, log.today())
        else:
            for row in reversed(rows):
                _take_back(unit, group, row, log.today())
        for crop_id, day in sorted(_photo_days(rows)):
            one_leads(unit, group, crop_id, day)
        _check_floors(unit, rows)
        remake_days(unit, *_states(rows))
        unit.commit()
    return Change(group, change.title, change.record_ids, change.crop_ids)


def takes_long(log: OpenLogbook, change: Change) -> bool:
    """Whether taking a change back makes days of the climate again from so many samples that it takes seconds."""
    with log.unit() as unit:
        if sum(file.sample_count for file in unit.logger_files.all(removed=True)) <= _SAMPLES_AT_ONCE:
            return False
        return any(row.record in _OF_MANY_DAYS for row in unit.history(change.group_id))


def _take_back(unit: UnitOfWork, group: str, row: ChangeRow, today: date) -> None:
    after = record_of(row.record, row.after or "")
    store = unit.store(type(after))
    current: Any = store.find(row.record_id)
    if current is None or _content(current) != _content(after):
        _refuse_moved()
    if row.action in (ChangeAction.ADD, ChangeAction.RESTORE):
        if not _serves_elsewhere(unit, current):
            unit.remove(group, current)
    elif row.action is ChangeAction.REMOVE:
        _check_stands(unit, replace(current, removed_at=None), today)
        unit.restore(group, current)
    else:
        before = replace(record_of(row.record, row.before or ""), version=current.version)
        _check_stands(unit, before, today)
        unit.change(group, before)


def _take_back_many(unit: UnitOfWork, group: str, rows: list[ChangeRow], today: date) -> None:
    entries = entries_as_left(unit, rows)
    if entries is None:
        _refuse_moved()
    if rows[0].action is ChangeAction.REMOVE:
        checks = StandingChecks(unit, [e.owner.id for e in entries], today)
        _refuse([p for e in entries for p in checks.problems(e)])
        unit.restore_all(group, entries)
    else:
        unit.remove_all(group, entries)


def _serves_elsewhere(unit: UnitOfWork, record: Any) -> bool:
    """Whether a photo is shown on another crop or day, or a mix used by another feed, which keeps it."""
    if isinstance(record, Mix):
        fed = unit.entries.all(kind=["feed", "tank-care"])
        return any(getattr(e.detail, "mix_id", None) == record.id for e in fed) or bool(
            unit.feed_steps.all(mix_id=record.id)
        )
    return isinstance(record, Photo) and bool(unit.photo_uses.all(photo_id=record.id))


def _check_stands(unit: UnitOfWork, record: Any, today: date) -> None:
    """RecordMoved if a record that comes back no longer fits what the logbook has become."""
    if isinstance(record, Crop):
        _refuse(standing_problems(unit, record, today))
    elif isinstance(record, Entry):
        _refuse(standing_entry_problems(unit, record, today))
    elif isinstance(record, PhotoUse):
        others = [u for u in unit.photo_uses.all(photo_id=record.photo_id, crop_id=record.crop_id) if u.id != record.id]
        if others:
            _refuse_for(say("This photo is already there, on {day}.", day=show_day(others[0].day)))


def _check_floors(unit: UnitOfWork, rows: Iterable[ChangeRow]) -> None:
    for row in rows:
        placement = unit.placements.find(row.record_id) if row.record == Placement.__name__ else None
        if placement is not None and placement.removed_at is None:
            _refuse(floor_problems(unit, placement))


def _states(rows: Iterable[ChangeRow]) -> list[Any]:
    """The records of a change on which days of the climate depend, as they were before and after it."""
    kinds = (LoggerFile.__name__, LightStep.__name__, Entry.__name__, Room.__name__)
    texts = [(r.record, text) for r in rows if r.record in kinds for text in (r.before, r.after) if text]
    return [record_of(name, text) for name, text in texts]


def _photo_days(rows: Iterable[ChangeRow]) -> set[tuple[str, date]]:
    """The days of crops whose photos a change concerned."""
    states = [text for r in rows if r.record == PhotoUse.__name__ for text in (r.before, r.after) if text]
    return {(use.crop_id, use.day) for use in (record_of(PhotoUse.__name__, text) for text in states)}


def _refuse(problems: list[Problem]) -> None:
    firm = [p.sentence for p in problems if not p.asks]
    if firm:
        _refuse_for(" ".join(firm))


def _refuse_for(reason: str) -> NoReturn:
    raise RecordMoved(say("This cannot be taken back as the logbook stands now. {reason}", reason=reason))


def _refuse_moved() -> NoReturn:
    raise RecordMoved(say("This cannot be taken back: it was changed again since. Take the later change back first."))


def _content(record: Any) -> Any:
    plain = dict(to_plain(record))
    plain.pop("version")
    plain["removed_at"] = plain["removed_at"] is not None  # when it went does not matter, only whether
    return plain
