"""Reading and writing records: one store per record type, all alike but for what a record nests."""

from collections import defaultdict
from collections.abc import Iterable, Sequence
from datetime import date, time
from typing import Any, Generic, TypeVar, cast

from sqlalchemy import ColumnElement, Table, bindparam, delete, insert, select, update
from sqlalchemy.orm import Session

from growlog.records.entry import Entry
from growlog.storage.entry_memory import EntryMemory
from growlog.storage.problems import RecordMissing
from growlog.storage.row_translation import (
    DETAIL_MODELS,
    MODELS,
    ListedField,
    detail_from_row,
    detail_row,
    entry_from_row,
    from_row,
    item_from_row,
    item_rows,
    listed_fields,
    to_row,
)
from growlog.words import say

R = TypeVar("R")
_BATCH = 500  # SQLite takes some thousand variables a statement; stay well below


class Store(Generic[R]):
    """Records of one type. Nothing here commits."""

    def __init__(self, session: Session, record_type: type[R]) -> None:
        self._session = session
        self._type = record_type
        self._table = cast(Table, MODELS[record_type].__table__)

    def find(self, record_id: str) -> R | None:
        """The record, in the bin or not; None if there never was one."""
        found = self._read([self._table.c.id == record_id])
        return found[0] if found else None

    def get(self, record_id: str) -> R:
        """The record; RecordMissing if there is none."""
        record = self.find(record_id)
        if record is None:
            raise RecordMissing(say("That is no longer in the logbook."))
        return record

    def all(self, *, removed: bool = False, **equal: Any) -> list[R]:
        """Records whose columns equal what is given (a list of values: any of them); the bin left out."""
        where = [self._condition(name, value) for name, value in equal.items()]
        if not removed:
            where.append(self._table.c.removed_at.is_(None))
        return self._read(where)

    def insert(self, records: Iterable[R]) -> None:
        """Writes new records."""
        listed = list(records)
        if not listed:
            return
        self._session.execute(insert(self._table), [to_row(r) for r in listed])
        self._insert_nested(listed)

    def overwrite(self, record: Any) -> None:
        """Writes a record over the one with its id."""
        self._session.execute(update(self._table).where(self._table.c.id == record.id).values(to_row(record)))
        self._delete_nested(record)
        self._insert_nested([record])

    def overwrite_stamps(self, records: Iterable[Any]) -> None:
        """Writes version and removed-at alone, of very many records at once."""
        stamps = [{"of_id": r.id, "new_version": r.version, "new_removed_at": r.removed_at} for r in records]
        table = self._table
        if stamps:
            statement = update(table).where(table.c.id == bindparam("of_id"))
            stamped = statement.values(version=bindparam("new_version"), removed_at=bindparam("new_removed_at"))
            self._session.connection().execute(stamped, stamps)

    def _condition(self, name: str, value: Any) -> ColumnElement[bool]:
        column = self._table.c[name]
        return column.in_(list(value)) if isinstance(value, (list, set, tuple, frozenset)) else column == value

    def _read(self, where: Sequence[ColumnElement[bool]]) -> list[R]:
        rows = self._session.execute(select(self._table).where(*where)).mappings().all()
        lists = {f.name: self._items(f, [r["id"] for r in rows]) for f in listed_fields(self._type)}
        return [
            from_row(self._type, dict(row), {name: items.get(row["id"], ()) for name, items in lists.items()})
            for row in rows
        ]

    def _items(self, field: ListedField, ids: list[str]) -> dict[str, tuple[Any, ...]]:
        found: dict[str, list[Any]] = defaultdict(list)
        table = field.table.__table__
        for start in range(0, len(ids), _BATCH):
            some = select(table).where(table.c[field.key].in_(ids[start : start + _BATCH]))
            for row in self._session.execute(some.order_by(table.c.position)).mappings():
                found[row[field.key]].append(item_from_row(field, dict(row)))
        return {key: tuple(items) for key, items in found.items()}

    def _insert_nested(self, records: list[Any]) -> None:
        for field in listed_fields(self._type):
            self._insert_items(field, ((r.id, getattr(r, field.name)) for r in records))

    def _insert_items(self, field: ListedField, owned: Iterable[tuple[str, tuple[Any, ...]]]) -> None:
        rows = [row for record_id, items in owned for row in item_rows(field, record_id, items)]
        if rows:
            self._session.execute(insert(field.table), rows)

    def _delete_nested(self, record: Any) -> None:
        for field in listed_fields(self._type):
            self._delete_items(field, record.id)

    def _delete_items(self, field: ListedField, record_id: str) -> None:
        self._session.execute(delete(field.table).where(field.table.__table__.c[field.key] == record_id))


class EntryStore(Store[Entry]):
    """Entries with what their kind adds."""

    def __init__(self, session: Session, memory: EntryMemory | None = None) -> None:
        super().__init__(session, Entry)
        self._memory = memory

    def forget_memory(self) -> None:
        """From now on everything is read from the rows: what this unit writes may yet be rolled back."""
        self._memory = None

    def _read(self, where: Sequence[ColumnElement[bool]]) -> list[Entry]:
        if self._memory is None:
            return sorted(self._read_rows(where), key=_when)
        stamps = self._session.execute(select(self._table.c.id, self._table.c.version).where(*where)).all()
        known = {row.id: self._memory.recall(row.id, row.version) for row in stamps}
        found = [entry for entry in known.values() if entry is not None]
        missing = [entry_id for entry_id, entry in known.items() if entry is None]
        for start in range(0, len(missing), _BATCH):
            read = self._read_rows([self._table.c.id.in_(missing[start : start + _BATCH])])
            self._memory.keep(read)
            found += read
        return sorted(found, key=_when)

    def _read_rows(self, where: Sequence[ColumnElement[bool]]) -> list[Entry]:
        found: list[Entry] = []
        # Asking first which kinds there are is one query for the many that would find nothing.
        present = self._session.execute(select(self._table.c.kind).where(*where).distinct()).scalars()
        for kind in sorted(present):
            found += self._read_kind(kind, where)
        return found

    def _read_kind(self, kind: str, where: Sequence[ColumnElement[bool]]) -> list[Entry]:
        detail = DETAIL_MODELS[kind].__table__
        own = [c.label(f"entry_{c.name}") for c in self._table.c]
        query = select(*own, *detail.c).join(detail, detail.c.entry_id == self._table.c.id)
        rows = self._session.execute(query.where(self._table.c.kind == kind, *where)).mappings().all()
        ids = [r["entry_id"] for r in rows]
        lists = {f.name: self._items(f, ids) for f in listed_fields(kind)} if rows else {}
        return [self._entry(kind, row, lists) for row in rows]

    def _entry(self, kind: str, row: Any, lists: dict[str, dict[str, tuple[Any, ...]]]) -> Entry:
        entry_id = row["entry_id"]
        own = {c.name: row[f"entry_{c.name}"] for c in self._table.c}
        detail = {c.name: row[c.name] for c in DETAIL_MODELS[kind].__table__.c}
        items = {name: found.get(entry_id, ()) for name, found in lists.items()}
        return entry_from_row(own, detail_from_row(kind, detail, items))

    def _insert_nested(self, records: list[Entry]) -> None:
        by_kind: dict[str, list[Entry]] = defaultdict(list)
        for record in records:
            by_kind[record.kind].append(record)
        for kind, of_kind in by_kind.items():
            rows = [{"entry_id": e.id, **detail_row(e.detail)} for e in of_kind]
            self._session.execute(insert(DETAIL_MODELS[kind]), rows)
            for field in listed_fields(kind):
                self._insert_items(field, ((e.id, getattr(e.detail, field.name)) for e in of_kind))

    def _delete_nested(self, record: Entry) -> None:
        for field in listed_fields(record.kind):
            self._delete_items(field, record.id)
        table = DETAIL_MODELS[record.kind].__table__
        self._session.execute(delete(DETAIL_MODELS[record.kind]).where(table.c.entry_id == record.id))


def _when(entry: Entry) -> tuple[date, time, str, str]:
    """In the order of the day; what has no time comes last."""
    return entry.day, entry.at or time.max, entry.kind, entry.id
