"""What a change did: the append-only row, and the plain value that a service returns."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class ChangeAction(StrEnum):
    """What was done to a record."""

    ADD = "add"
    CHANGE = "change"
    REMOVE = "remove"
    RESTORE = "restore"


@dataclass(frozen=True)
class ChangeRow:
    """One record's change: what, before and after (as JSON text), in the transaction that made it."""

    number: int
    group_id: str
    at: datetime  # UTC
    action: ChangeAction
    record: str  # the record's type name
    record_id: str
    before: str | None
    after: str | None


@dataclass(frozen=True)
class Change:
    """What a service did: one undoable step, and which crops' screens it concerns (None: all)."""

    group_id: str
    title: str
    record_ids: tuple[str, ...]
    crop_ids: frozenset[str] | None = None
