"""Tables of what is planned: routines and the answers to them, the feed plan and the light programme."""

from datetime import date, time

from sqlalchemy import CheckConstraint, ForeignKey, Integer, String
from sqlalchemy.orm import Mapped, mapped_column

from growlog.records.routine import DueOutcome, RoutineFor, RoutineWhen
from growlog.storage.tables.base import Base, Identified, Word, column_within, is_word, link, within_limits


class RoutineRow(Identified, Base):
    """A routine of the grower."""

    __tablename__ = "routine"
    name: Mapped[str] = mapped_column(String(200))
    who: Mapped[RoutineFor] = mapped_column(Word(RoutineFor))
    when: Mapped[RoutineWhen] = mapped_column(Word(RoutineWhen))
    crop_id: Mapped[str | None] = link("crop", nullable=True)
    every_days: Mapped[int | None]
    at_age: Mapped[int | None]
    from_day: Mapped[date | None]
    until_day: Mapped[date | None]
    entry_kind: Mapped[str] = mapped_column(String(32))
    in_the_morning: Mapped[bool]
    is_on: Mapped[bool]
    note: Mapped[str]
    __table_args__ = (
        *within_limits("every_days", "at_age"),
        is_word("who", RoutineFor),
        is_word("when", RoutineWhen),
    )


class DueAnswerRow(Identified, Base):
    """What was answered when something was due."""

    __tablename__ = "due_answer"
    due_key: Mapped[str] = mapped_column(String(200), index=True)
    due_day: Mapped[date]
    outcome: Mapped[DueOutcome] = mapped_column(Word(DueOutcome))
    crop_id: Mapped[str | None] = link("crop", nullable=True)
    until_day: Mapped[date | None]
    reason: Mapped[str]
    entry_id: Mapped[str | None] = link("entry", nullable=True)
    __table_args__ = (is_word("outcome", DueOutcome),)


class FeedStepRow(Identified, Base):
    """A step of a crop's feed plan."""

    __tablename__ = "feed_step"
    crop_id: Mapped[str] = link("crop")
    from_age: Mapped[int]
    mix_id: Mapped[str] = link("mix")
    strength_percent: Mapped[float]
    volume_l: Mapped[float | None]
    note: Mapped[str]
    __table_args__ = (column_within("from_age", "at_age"), *within_limits("strength_percent", "volume_l"))


class LightStepRow(Identified, Base):
    """A step of a room's light programme; which lamps are on is rows of its own."""

    __tablename__ = "light_step"
    room_id: Mapped[str] = link("room")
    from_day: Mapped[date | None]
    crop_id: Mapped[str | None] = link("crop", nullable=True)
    from_age: Mapped[int | None]
    photoperiod_h: Mapped[float]
    on_at: Mapped[time | None]
    dimming_percent: Mapped[float | None]
    canopy_ppfd_umol: Mapped[float | None]
    note: Mapped[str]
    __table_args__ = (
        column_within("from_age", "at_age"),
        *within_limits("photoperiod_h", "dimming_percent", "canopy_ppfd_umol"),
        CheckConstraint("(from_day IS NULL) <> (from_age IS NULL)", name="one_start"),
    )


class LightStepLampRow(Base):
    """A lamp that is on in a step."""

    __tablename__ = "light_step_lamp"
    step_id: Mapped[str] = mapped_column(String(36), ForeignKey("light_step.id"), primary_key=True)
    position: Mapped[int] = mapped_column(Integer, primary_key=True)
    lamp_id: Mapped[str] = link("lamp")
