"""What all tables share: the declarative base, column types and checks made from the limits table."""

from datetime import UTC, datetime
from enum import StrEnum
from typing import Any

from sqlalchemy import CheckConstraint, DateTime, Dialect, ForeignKey, MetaData, String, TypeDecorator
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

from growlog.records.limits import limit

_NAMES = {
    "ix": "ix_%(table_name)s_%(column_0_name)s",
    "uq": "uq_%(table_name)s_%(column_0_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_name)s",
    "pk": "pk_%(table_name)s",
}
_KEYWORDS = {"when"}  # of SQL: a name that must be quoted where the text of a check is written by hand


class Base(DeclarativeBase):
    """The declarative base of the logbook's tables."""

    metadata = MetaData(naming_convention=_NAMES)


class Utc(TypeDecorator[datetime]):
    """A moment in UTC, kept without zone and handed out with it."""

    impl = DateTime
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Into the database: UTC, naive."""
        return None if value is None else value.astimezone(UTC).replace(tzinfo=None)

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        """Out of the database: aware."""
        return None if value is None else value.replace(tzinfo=UTC)


class Word(TypeDecorator[StrEnum]):
    """One word of a StrEnum, kept as its text."""

    impl = String
    cache_ok = True

    def __init__(self, words: type[StrEnum]) -> None:
        super().__init__(length=32)
        self.words = words

    def process_bind_param(self, value: StrEnum | None, dialect: Dialect) -> str | None:
        """Into the database: its text; a word that is not one of them is our mistake."""
        return None if value is None else self.words(value).value

    def process_result_value(self, value: str | None, dialect: Dialect) -> StrEnum | None:
        """Out of the database."""
        return None if value is None else self.words(value)


class Identified:
    """Identity, row version and the bin."""

    id: Mapped[str] = mapped_column(String(36), primary_key=True)
    version: Mapped[int] = mapped_column(default=1)
    removed_at: Mapped[datetime | None] = mapped_column(Utc)


def link(target: str, *, nullable: bool = False) -> Any:
    """A column that points at another row's id, indexed."""
    return mapped_column(String(36), ForeignKey(f"{target}.id"), nullable=nullable, index=True)


def within_limits(*keys: str) -> list[CheckConstraint]:
    """CHECK constraints for columns that are named as in the limits table."""
    return [column_within(key, key) for key in keys]


def column_within(column: str, key: str) -> CheckConstraint:
    """A CHECK constraint of one column by a key of the limits table."""
    bound = limit(key)
    return CheckConstraint(f"{column} BETWEEN {bound.lowest:g} AND {bound.highest:.10g}", name=f"{column}_range")


def is_word(column: str, words: type[StrEnum]) -> CheckConstraint:
    """A CHECK constraint that a column holds one of the words."""
    listed = ", ".join(f"'{w.value}'" for w in words)
    named = f'"{column}"' if column in _KEYWORDS else column
    return CheckConstraint(f"{named} IN ({listed})", name=f"{column}_word")
