"""Tables of a crop's review: decisions with the figures they quote, and the photos chosen for it."""

from datetime import date

from sqlalchemy import ForeignKey, Integer, String
from sqlalchemy.orm import Mapped, mapped_column

from growlog.records.decision import Verdict
from growlog.storage.tables.base import Base, Identified, Word, is_word, link


class DecisionRow(Identified, Base):
    """A verdict on a crop."""

    __tablename__ = "decision"
    crop_id: Mapped[str] = link("crop")
    decided_on: Mapped[date]
    verdict: Mapped[Verdict] = mapped_column(Word(Verdict))
    reasons: Mapped[str]
    changes: Mapped[str]
    __table_args__ = (is_word("verdict", Verdict),)


class QuotedFigureRow(Base):
    """A figure as it stood on the day of a decision."""

    __tablename__ = "quoted_figure"
    decision_id: Mapped[str] = mapped_column(String(36), ForeignKey("decision.id"), primary_key=True)
    position: Mapped[int] = mapped_column(Integer, primary_key=True)
    figure_key: Mapped[str] = mapped_column(String(64))
    label: Mapped[str] = mapped_column(String(200))
    value_text: Mapped[str] = mapped_column(String(200))


class ReviewPhotoRow(Identified, Base):
    """A photo chosen for the review of a crop."""

    __tablename__ = "review_photo"
    crop_id: Mapped[str] = link("crop")
    photo_use_id: Mapped[str] = link("photo_use")
    place: Mapped[int]
