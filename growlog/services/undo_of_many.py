"""The entries of a change of very many, read and compared in batches: one by one they would take minutes."""

import json
from typing import Any

from growlog.records.change import ChangeAction, ChangeRow
from growlog.records.entry import Entry, OwnerKind
from growlog.records.plain import to_plain
from growlog.storage.unit_of_work import UnitOfWork, record_of

MANY = 100
_BATCH = 500


def are_many(rows: list[ChangeRow]) -> bool:
    """Whether a change added, removed or brought back very many entries of crops and did nothing else."""
    return (
        len(rows) >= MANY
        and all(r.record == Entry.__name__ and r.action is rows[0].action for r in rows)
        and rows[0].action is not ChangeAction.CHANGE
        and all(_is_of_a_crop(r) for r in rows)
    )


def entries_as_left(unit: UnitOfWork, rows: list[ChangeRow]) -> list[Entry] | None:
    """The entries as they stand; None if one of them is no longer what the change left."""
    found: list[Entry] = []
    for start in range(0, len(rows), _BATCH):
        batch = rows[start : start + _BATCH]
        current = {e.id: e for e in unit.entries.all(removed=True, id=[r.record_id for r in batch])}
        for row in batch:
            entry = current.get(row.record_id)
            if entry is None or not _is_as_left(entry, row):
                return None
            found.append(entry)
    return found


def _is_of_a_crop(row: ChangeRow) -> bool:
    return f'"kind": "{OwnerKind.CROP.value}"' in (row.after or "")


def _is_as_left(entry: Entry, row: ChangeRow) -> bool:
    now = _content(to_plain(entry))
    if now == _content(json.loads(row.after or "{}")):
        return True
    return now == _content(to_plain(record_of(row.record, row.after or "")))  # fields may have come since


def _content(plain: dict[str, Any]) -> dict[str, Any]:
    return {**plain, "version": 0, "removed_at": plain["removed_at"] is not None}
