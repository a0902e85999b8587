"""The append-only history of changes."""

from datetime import datetime

from sqlalchemy import Integer, String
from sqlalchemy.orm import Mapped, mapped_column

from growlog.records.change import ChangeAction
from growlog.storage.tables.base import Base, Utc, Word, is_word


class ChangeRowRow(Base):
    """One record's change, written in the transaction that made it."""

    __tablename__ = "change"
    number: Mapped[int] = mapped_column(Integer, primary_key=True, autoincrement=True)
    group_id: Mapped[str] = mapped_column(String(36), index=True)
    at: Mapped[datetime] = mapped_column(Utc)
    action: Mapped[ChangeAction] = mapped_column(Word(ChangeAction))
    record: Mapped[str] = mapped_column(String(32))
    record_id: Mapped[str] = mapped_column(String(36), index=True)
    before: Mapped[str | None]
    after: Mapped[str | None]
    __table_args__ = (is_word("action", ChangeAction),)
