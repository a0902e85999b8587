"""Tables of files that were read in: logger files with their samples, the days made of these, old notes' columns."""

from datetime import date, datetime

from sqlalchemy import CheckConstraint, ForeignKey, Index, Integer, String
from sqlalchemy.orm import Mapped, mapped_column

from growlog.storage.tables.base import Base, Identified, Utc, link, within_limits


class LoggerFileRow(Identified, Base):
    """A logger file of a room."""

    __tablename__ = "logger_file"
    room_id: Mapped[str] = link("room")
    name: Mapped[str]
    sha256: Mapped[str] = mapped_column(String(64), index=True)
    sample_count: Mapped[int]
    first_at: Mapped[datetime] = mapped_column(Utc)
    last_at: Mapped[datetime] = mapped_column(Utc)
    added_at: Mapped[datetime] = mapped_column(Utc)
    __table_args__ = (CheckConstraint("last_at >= first_at", name="last_after_first"),)


class LoggerSampleRow(Base):
    """One line of a logger file. Many rows: the key itself is the table's order."""

    __tablename__ = "logger_sample"
    file_id: Mapped[str] = mapped_column(String(36), ForeignKey("logger_file.id"), primary_key=True)
    at_utc: Mapped[datetime] = mapped_column(Utc, primary_key=True)
    room_id: Mapped[str] = mapped_column(String(36), ForeignKey("room.id"))
    air_temperature_c: Mapped[float | None]
    relative_humidity_percent: Mapped[float | None]
    __table_args__ = (
        *within_limits("air_temperature_c", "relative_humidity_percent"),
        Index("ix_logger_sample_room_id_at_utc", "room_id", "at_utc"),
        {"sqlite_with_rowid": False},
    )


class ClimateDayRow(Base):
    """A room's climate on a civil day, made of the samples; it can be made again at any time."""

    __tablename__ = "derived_climate_day"
    room_id: Mapped[str] = mapped_column(String(36), ForeignKey("room.id"), primary_key=True)
    day: Mapped[date] = mapped_column(primary_key=True)
    sample_count: Mapped[int]
    temperature_min_c: Mapped[float | None]
    temperature_mean_c: Mapped[float | None]
    temperature_max_c: Mapped[float | None]
    humidity_min_percent: Mapped[float | None]
    humidity_mean_percent: Mapped[float | None]
    humidity_max_percent: Mapped[float | None]
    night_humidity_mean_percent: Mapped[float | None]
    vpd_mean_kpa: Mapped[float | None]
    vpd_max_kpa: Mapped[float | None]
    dew_point_max_c: Mapped[float | None]
    hours_above_humidity: Mapped[float | None]
    longest_gap_minutes: Mapped[float | None]


class ColumnMapRow(Identified, Base):
    """How the columns of a shape of old notes are read."""

    __tablename__ = "column_map"
    heading: Mapped[str]
    date_order: Mapped[str] = mapped_column(String(3))
    decimal: Mapped[str] = mapped_column(String(1))


class MappedColumnRow(Base):
    """One column of such a file and what it becomes."""

    __tablename__ = "mapped_column"
    map_id: Mapped[str] = mapped_column(String(36), ForeignKey("column_map.id"), primary_key=True)
    position: Mapped[int] = mapped_column(Integer, primary_key=True)
    column: Mapped[str]
    field: Mapped[str] = mapped_column(String(64))
    unit: Mapped[str] = mapped_column(String(32))
    cumulative: Mapped[bool]
