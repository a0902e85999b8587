"""Tables of what things cost: other devices of a room, tariffs and purchases."""

from datetime import date, time

from sqlalchemy import ForeignKey, Integer, String
from sqlalchemy.orm import Mapped, mapped_column

from growlog.records.purchase import PurchaseSort
from growlog.records.room import DeviceSort
from growlog.storage.tables.base import Base, Identified, Word, column_within, is_word, link, within_limits


class DeviceRow(Identified, Base):
    """Something beside the lamps that draws power."""

    __tablename__ = "device"
    room_id: Mapped[str] = link("room")
    name: Mapped[str] = mapped_column(String(200))
    sort: Mapped[DeviceSort] = mapped_column(Word(DeviceSort))
    device_w: Mapped[float | None]
    hours_per_day: Mapped[float | None]
    with_lamps: Mapped[bool]
    duty_percent: Mapped[float | None]
    from_day: Mapped[date | None]
    until_day: Mapped[date | None]
    __table_args__ = (*within_limits("device_w", "hours_per_day", "duty_percent"), is_word("sort", DeviceSort))


class TariffRow(Identified, Base):
    """A tariff; its bands are rows of their own."""

    __tablename__ = "tariff"
    name: Mapped[str] = mapped_column(String(200))
    from_day: Mapped[date]
    daily_charge_minor: Mapped[int | None]
    note: Mapped[str]
    __table_args__ = (column_within("daily_charge_minor", "price_minor"),)


class TariffBandRow(Base):
    """The price of a kWh from a time of day until another, as decimal text."""

    __tablename__ = "tariff_band"
    tariff_id: Mapped[str] = mapped_column(String(36), ForeignKey("tariff.id"), primary_key=True)
    position: Mapped[int] = mapped_column(Integer, primary_key=True)
    from_at: Mapped[time]
    until_at: Mapped[time]
    price_per_kwh: Mapped[str] = mapped_column(String(32))


class PurchaseRow(Identified, Base):
    """Something bought."""

    __tablename__ = "purchase"
    name: Mapped[str] = mapped_column(String(200))
    day: Mapped[date]
    sort: Mapped[PurchaseSort] = mapped_column(Word(PurchaseSort))
    price_minor: Mapped[int]
    crop_id: Mapped[str | None] = link("crop", nullable=True)
    life_days: Mapped[int | None]
    life_crops: Mapped[int | None]
    note: Mapped[str]
    __table_args__ = (*within_limits("price_minor", "life_days", "life_crops"), is_word("sort", PurchaseSort))
