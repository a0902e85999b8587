"""A unit of work: one transaction that is rolled back unless it is told to commit, with its history."""

import json
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import datetime
from types import TracebackType
from typing import Any, TypeVar

from sqlalchemy import Engine, insert, select, text
from sqlalchemy.exc import OperationalError
from sqlalchemy.orm import Session

from growlog.records.change import ChangeAction, ChangeRow
from growlog.records.column_map import ColumnMap
from growlog.records.crop import Crop, Placement, Plant
from growlog.records.cultivar import Cultivar
from growlog.records.decision import Decision, ReviewPhoto
from growlog.records.entry import Entry
from growlog.records.feed_plan import FeedStep
from growlog.records.feed_target import FeedTarget
from growlog.records.light_plan import LightStep
from growlog.records.logbook import LogbookFacts
from growlog.records.logger_file import LoggerFile
from growlog.records.photo import Photo, PhotoUse
from growlog.records.plain import from_plain, to_plain
from growlog.records.problems import refuse
from growlog.records.product import ShelfProduct, StockMove
from growlog.records.purchase import Purchase
from growlog.records.recipe import Mix
from growlog.records.room import Device, Lamp, Room, Tank
from growlog.records.routine import DueAnswer, Routine
from growlog.records.source_water import SourceWater
from growlog.records.tariff import Tariff
from growlog.storage.climate_samples import ClimateSamples
from growlog.storage.entry_memory import EntryMemory
from growlog.storage.problems import LogbookNotWritable, RecordMoved
from growlog.storage.row_translation import RECORD_TYPES
from growlog.storage.stores import EntryStore, Store
from growlog.storage.tables.history import ChangeRowRow
from growlog.words import say

R = TypeVar("R")


class UnitOfWork:
    """Use as a context manager; `commit()` keeps what was done, leaving without it undoes all.

    Each write takes the group that it belongs to and adds its row to the history in the same transaction.
    """

    def __init__(
        self, engine: Engine, now: datetime, *, writable: bool = True, memory: EntryMemory | None = None
    ) -> None:
        self._engine = engine
        self._now = now
        self._writable = writable
        self._memory = memory

    def __enter__(self) -> "UnitOfWork":
        self._session = Session(self._engine)
        self.logbook = Store(self._session, LogbookFacts)
        self.rooms = Store(self._session, Room)
        self.lamps = Store(self._session, Lamp)
        self.tanks = Store(self._session, Tank)
        self.cultivars = Store(self._session, Cultivar)
        self.crops = Store(self._session, Crop)
        self.plants = Store(self._session, Plant)
        self.placements = Store(self._session, Placement)
        self.mixes = Store(self._session, Mix)
        self.photos = Store(self._session, Photo)
        self.photo_uses = Store(self._session, PhotoUse)
        self.entries = EntryStore(self._session, self._memory)
        self.products = Store(self._session, ShelfProduct)
        self.stock_moves = Store(self._session, StockMove)
        self.waters = Store(self._session, SourceWater)
        self.feed_targets = Store(self._session, FeedTarget)
        self.routines = Store(self._session, Routine)
        self.due_answers = Store(self._session, DueAnswer)
        self.feed_steps = Store(self._session, FeedStep)
        self.light_steps = Store(self._session, LightStep)
        self.devices = Store(self._session, Device)
        self.tariffs = Store(self._session, Tariff)
        self.purchases = Store(self._session, Purchase)
        self.decisions = Store(self._session, Decision)
        self.review_photos = Store(self._session, ReviewPhoto)
        self.logger_files = Store(self._session, LoggerFile)
        self.column_maps = Store(self._session, ColumnMap)
        self.climate_samples = ClimateSamples(self._session, self._before_writing)
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self._session.rollback()
        self._session.close()
        if isinstance(error, OperationalError):
            raise LogbookNotWritable(_not_written(error)) from error

    @property
    def now(self) -> datetime:
        """The moment of this unit, UTC."""
        return self._now

    def store(self, record_type: type[R]) -> Store[R]:
        """The store of a record type."""
        if record_type is Entry:
            return self.entries  # type: ignore[return-value]
        return Store(self._session, record_type)

    def add(self, group_id: str, *records: Any) -> None:
        """Writes new records after their own check; RecordRefused with all that is wrong."""
        self._before_writing()
        for record in records:
            _check(record)
        for record_type in {type(r): None for r in records}:
            of_type = [r for r in records if type(r) is record_type]
            self.store(record_type).insert(of_type)
        self._remember(group_id, ((ChangeAction.ADD, None, r) for r in records))

    def change(self, group_id: str, record: Any) -> Any:
        """Writes a record over the version it was made from; RecordMoved if that is no longer there."""
        return self._write_over(group_id, ChangeAction.CHANGE, record)

    def remove(self, group_id: str, record: Any) -> Any:
        """Puts a record into the bin."""
        return self._write_over(group_id, ChangeAction.REMOVE, replace(record, removed_at=self._now))

    def restore(self, group_id: str, record: Any) -> Any:
        """Takes a record out of the bin."""
        return self._write_over(group_id, ChangeAction.RESTORE, replace(record, removed_at=None))

    def hold_until_commit(self) -> None:
        """Keeps very much that is written in memory until the commit: the file would else be locked for readers."""
        self._session.execute(text("PRAGMA cache_spill = OFF"))

    def remove_all(self, group_id: str, records: Sequence[Any]) -> None:
        """Puts very many records of one type, read in this unit, into the bin."""
        self._stamp(group_id, ChangeAction.REMOVE, records, self._now)

    def restore_all(self, group_id: str, records: Sequence[Any]) -> None:
        """Takes very many records of one type, read in this unit, out of the bin."""
        self._stamp(group_id, ChangeAction.RESTORE, records, None)

    def history(self, group_id: str | None = None) -> list[ChangeRow]:
        """The rows of a group in the order written; of all groups if none is named."""
        query = select(ChangeRowRow.__table__).order_by(ChangeRowRow.number)
        if group_id is not None:
            query = query.where(ChangeRowRow.group_id == group_id)
        return [ChangeRow(**row) for row in self._session.execute(query).mappings()]

    def commit(self) -> None:
        """Keeps what was done; LogbookNotWritable if the disk does not take it."""
        try:
            self._session.commit()
        except OperationalError as error:
            raise LogbookNotWritable(_not_written(error)) from error

    def _write_over(self, group_id: str, action: ChangeAction, record: Any) -> Any:
        self._before_writing()
        _check(record)
        store = self.store(type(record))
        before = store.get(record.id)
        if before.version != record.version:
            raise RecordMoved(say("This was changed elsewhere in the meantime. Look at it again, then repeat."))
        after = replace(record, version=record.version + 1)
        store.overwrite(after)
        self._remember(group_id, [(action, before, after)])
        return after

    def _stamp(
        self, group_id: str, action: ChangeAction, records: Sequence[Any], removed_at: datetime | None
    ) -> None:  # fmt: skip
        self._before_writing()
        after = [replace(r, version=r.version + 1, removed_at=removed_at) for r in records]
        self.store(type(after[0])).overwrite_stamps(after)
        self._remember(group_id, ((action, b, a) for b, a in zip(records, after, strict=True)))

    def _remember(self, group_id: str, changes: Iterable[tuple[ChangeAction, Any, Any]]) -> None:
        rows = [
            {
                "group_id": group_id,
                "at": self._now,
                "action": action,
                "record": type(after).__name__,
                "record_id": after.id,
                "before": _as_json(before),
                "after": _as_json(after),
            }
            for action, before, after in changes
        ]
        if rows:
            self._session.execute(insert(ChangeRowRow), rows)

    def _before_writing(self) -> None:
        if not self._writable:
            raise LogbookNotWritable(say("This logbook is open for reading only, so nothing can be written to it."))
        self.entries.forget_memory()


def record_of(row_type: str, text: str) -> Any:
    """The record that a history row holds as JSON."""
    return from_plain(RECORD_TYPES[row_type], json.loads(text))


def _as_json(record: Any) -> str | None:
    return None if record is None else json.dumps(to_plain(record), ensure_ascii=False)


def _check(record: Any) -> None:
    if hasattr(record, "problems"):
        refuse(record.problems())


def _not_written(error: OperationalError) -> str:
    return say("The logbook could not be written: {reason}. Nothing was changed.", reason=str(error.orig))
