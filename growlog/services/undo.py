"""Undo: the inverse of a change, written as a change of its own; it refuses where something has moved since."""

from typing import Any

from growlog.records.change import Change, ChangeAction, ChangeRow
from growlog.records.plain import to_plain
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.problems import RecordMoved
from growlog.storage.unit_of_work import UnitOfWork, record_of
from growlog.words import say


def undo(log: OpenLogbook, change: Change) -> Change:
    """Takes a change back and returns the change that did so; undoing that one redoes.

    RecordMoved, saying why, if one of its records was changed again since; then nothing was written.
    """
    group = new_id()
    with log.unit() as unit:
        rows = unit.history(change.group_id)
        for row in reversed(rows):
            _take_back(unit, group, row)
        unit.commit()
    return Change(group, change.title, change.record_ids, change.crop_ids)


def _take_back(unit: UnitOfWork, group: str, row: ChangeRow) -> None:
    after = record_of(row.record, row.after or "")
    store = unit.store(type(after))
    current: Any = store.find(row.record_id)
    if current is None or _content(current) != _content(after):
        raise RecordMoved(
            say("This cannot be taken back: it was changed again since. Take the later change back first.")
        )
    if row.action is ChangeAction.ADD:
        unit.remove(group, current)
    elif row.action is ChangeAction.REMOVE:
        unit.restore(group, current)
    elif row.action is ChangeAction.RESTORE:
        unit.remove(group, current)
    else:
        _write_before(unit, group, row, current)


def _write_before(unit: UnitOfWork, group: str, row: ChangeRow, current: Any) -> None:
    plain_before = record_of(row.record, row.before or "")
    unit.change(group, type(current)(**{**vars(plain_before), "version": current.version}))


def _content(record: Any) -> Any:
    plain = dict(to_plain(record))
    plain.pop("version")
    plain["removed_at"] = plain["removed_at"] is not None  # when it went does not matter, only whether
    return plain
