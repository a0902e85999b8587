"""An entry: whose it is, which day, and what its kind adds."""

from dataclasses import dataclass, fields
from datetime import date, datetime, time
from enum import StrEnum
from typing import ClassVar

from growlog.records.problems import Problem, check_quantity
from growlog.words import say


class OwnerKind(StrEnum):
    """Whose entry it is. Room and tank entries show on every crop that stood there that day."""

    CROP = "crop"
    PLANT = "plant"
    TANK = "tank"
    ROOM = "room"


@dataclass(frozen=True)
class Owner:
    """The record an entry belongs to."""

    kind: OwnerKind
    id: str


@dataclass(frozen=True)
class Detail:
    """What a kind of entry adds. A subclass per kind; fields named as in the limits table are checked by it."""

    kind: ClassVar[str]
    label: ClassVar[str]

    def problems(self) -> list[Problem]:
        """What is wrong with the numbers of this detail."""
        return self.quantity_problems() + self.own_problems()

    def quantity_problems(self) -> list[Problem]:
        """Each number against the limits table."""
        return [p for f in fields(self) for p in self._field_problems(f.name)]

    def own_problems(self) -> list[Problem]:
        """What only this kind can know; overridden where there is something."""
        return []

    def summary(self) -> str:
        """One line that says what happened."""
        raise NotImplementedError

    def second_line(self) -> str:
        """The particulars below it, "" if none."""
        return ""

    def _field_problems(self, name: str) -> list[Problem]:
        value = getattr(self, name)
        if isinstance(value, bool) or not isinstance(value, (int, float)):
            return []
        return check_quantity(name, value)


@dataclass(frozen=True)
class Entry:
    """One thing that happened on a civil day.

    at: local time of the wall clock, or None. group_id: shared by entries made together.
    labour_minutes: whole minutes. detail: what the kind adds.
    """

    id: str
    owner: Owner
    day: date
    detail: Detail
    at: time | None = None
    labour_minutes: int | None = None
    note: str = ""
    group_id: str | None = None
    version: int = 1
    removed_at: datetime | None = None

    @property
    def kind(self) -> str:
        """The kind's name in files and the database."""
        return self.detail.kind

    def problems(self) -> list[Problem]:
        """What is wrong with it by itself; what its crop knows is checked by the service."""
        return check_quantity("labour_minutes", self.labour_minutes) + self.detail.problems()


def nothing_stated(detail: Detail) -> bool:
    """Whether every field of the detail is empty."""
    return all(getattr(detail, f.name) in (None, "", False, (), 0) for f in fields(detail))


def say_something(detail: Detail, field: str) -> list[Problem]:
    """The problem of a detail in which nothing was stated."""
    if nothing_stated(detail):
        return [Problem(field, say("Nothing is stated yet: fill in at least one field."))]
    return []
