"""Tables of what is there: the logbook, room, lamps, tanks, cultivars, crops, plants, photos, mixes."""

from datetime import date, datetime, time

from sqlalchemy import CheckConstraint, Float, ForeignKey, Index, Integer, String, text
from sqlalchemy.orm import Mapped, mapped_column

from growlog.records.crop import StartedFrom
from growlog.records.cultivar import CountsFrom, FloweringHabit
from growlog.records.photo import DateSource
from growlog.records.room import EnergySharing
from growlog.storage.tables.base import Base, Identified, Utc, Word, is_word, link, within_limits


class LogbookRow(Identified, Base):
    """The logbook itself: one row."""

    __tablename__ = "logbook"
    name: Mapped[str] = mapped_column(String(200))
    currency: Mapped[str] = mapped_column(String(3), default="")
    labour_rate_minor_per_h: Mapped[int | None]
    water_price_minor_per_m3: Mapped[int | None]
    made_at: Mapped[datetime | None] = mapped_column(Utc)
    __table_args__ = (*within_limits("labour_rate_minor_per_h", "water_price_minor_per_m3"),)


class RoomRow(Identified, Base):
    """A room."""

    __tablename__ = "room"
    name: Mapped[str] = mapped_column(String(200))
    floor_m2: Mapped[float | None]
    zone: Mapped[str] = mapped_column(String(64))
    energy_sharing: Mapped[EnergySharing] = mapped_column(Word(EnergySharing), server_default="by-floor")
    note: Mapped[str]
    __table_args__ = (*within_limits("floor_m2"), is_word("energy_sharing", EnergySharing))


class LampRow(Identified, Base):
    """Lamps of one kind in a room."""

    __tablename__ = "lamp"
    room_id: Mapped[str] = link("room")
    name: Mapped[str] = mapped_column(String(200))
    lamp_count: Mapped[int]
    rated_w: Mapped[float | None]
    wall_w: Mapped[float | None]
    efficacy_umol_per_j: Mapped[float | None]
    from_day: Mapped[date | None]
    until_day: Mapped[date | None]
    kind: Mapped[str] = mapped_column(String(64), server_default="")
    ballast_loss_percent: Mapped[float | None]
    rated_life_h: Mapped[float | None]
    bulb_from_day: Mapped[date | None]
    price_minor: Mapped[int | None]
    __table_args__ = (
        *within_limits("lamp_count", "rated_w", "wall_w", "efficacy_umol_per_j"),
        *within_limits("ballast_loss_percent", "rated_life_h", "price_minor"),
    )


class TankRow(Identified, Base):
    """A tank."""

    __tablename__ = "tank"
    room_id: Mapped[str] = link("room")
    name: Mapped[str] = mapped_column(String(200))
    tank_l: Mapped[float | None]
    recirculates: Mapped[bool]
    note: Mapped[str]
    __table_args__ = (*within_limits("tank_l"),)


class CultivarRow(Identified, Base):
    """A cultivar, as its packet has it."""

    __tablename__ = "cultivar"
    species: Mapped[str] = mapped_column(String(200))
    name: Mapped[str] = mapped_column(String(200))
    habit: Mapped[FloweringHabit] = mapped_column(Word(FloweringHabit))
    packet_days: Mapped[int | None]
    packet_counts_from: Mapped[CountsFrom] = mapped_column(Word(CountsFrom))
    note: Mapped[str]
    __table_args__ = (
        *within_limits("packet_days"),
        is_word("habit", FloweringHabit),
        is_word("packet_counts_from", CountsFrom),
    )


class CropRow(Identified, Base):
    """A crop."""

    __tablename__ = "crop"
    name: Mapped[str] = mapped_column(String(200))
    cultivar_id: Mapped[str] = link("cultivar")
    started_from: Mapped[StartedFrom] = mapped_column(Word(StartedFrom))
    sown_on: Mapped[date | None]
    emerged_on: Mapped[date | None]
    transplanted_on: Mapped[date | None]
    first_flower_on: Mapped[date | None]
    first_pick_on: Mapped[date | None]
    planned_clearing_on: Mapped[date | None]
    cleared_on: Mapped[date | None]
    medium: Mapped[str]
    system: Mapped[str]
    container_l: Mapped[float | None]
    seed_lot: Mapped[str]
    seeds_sown: Mapped[int | None]
    seeds_emerged: Mapped[int | None]
    trying: Mapped[str]
    taste: Mapped[str] = mapped_column(server_default="")
    fruit_shape: Mapped[str] = mapped_column(server_default="")
    keeping: Mapped[str] = mapped_column(server_default="")
    shop_price_minor_per_kg: Mapped[int | None]
    shop_price_minor_per_fruit: Mapped[int | None]
    note: Mapped[str]
    __table_args__ = (
        *within_limits("container_l", "seeds_sown", "seeds_emerged"),
        *within_limits("shop_price_minor_per_kg", "shop_price_minor_per_fruit"),
        is_word("started_from", StartedFrom),
        CheckConstraint(
            "(started_from = 'seed' AND sown_on IS NOT NULL)"
            " OR (started_from = 'bought-plant' AND transplanted_on IS NOT NULL)",
            name="day_zero",
        ),
        # A name is free again once its crop is in the bin.
        Index("uq_crop_name_kept", text("lower(name)"), unique=True, sqlite_where=text("removed_at IS NULL")),
    )


class PlantRow(Identified, Base):
    """A plant of a crop."""

    __tablename__ = "plant"
    crop_id: Mapped[str] = link("crop")
    label: Mapped[str] = mapped_column(String(200))
    from_day: Mapped[date]
    lost_on: Mapped[date | None]
    lost_cause: Mapped[str]
    __table_args__ = (CheckConstraint("lost_on IS NULL OR lost_on >= from_day", name="lost_after_from"),)


class PlacementRow(Identified, Base):
    """Where a crop stood."""

    __tablename__ = "placement"
    crop_id: Mapped[str] = link("crop")
    room_id: Mapped[str] = link("room")
    from_day: Mapped[date]
    until_day: Mapped[date | None]
    tank_id: Mapped[str | None] = link("tank", nullable=True)
    floor_share: Mapped[float | None]
    energy_share: Mapped[float | None]
    __table_args__ = (
        *within_limits("floor_share", "energy_share"),
        CheckConstraint("until_day IS NULL OR until_day >= from_day", name="until_after_from"),
    )


class MixRow(Identified, Base):
    """One edition of a mix."""

    __tablename__ = "mix"
    name: Mapped[str] = mapped_column(String(200))
    edition: Mapped[int]
    note: Mapped[str]
    __table_args__ = (CheckConstraint("edition >= 1", name="edition_counts"),)


class MixPartRow(Base):
    """A product and its dose in a mix."""

    __tablename__ = "mix_part"
    mix_id: Mapped[str] = mapped_column(String(36), ForeignKey("mix.id"), primary_key=True)
    position: Mapped[int] = mapped_column(Integer, primary_key=True)
    product: Mapped[str] = mapped_column(String(200))
    dose_per_l: Mapped[float] = mapped_column(Float)
    unit: Mapped[str] = mapped_column(String(16))
    product_id: Mapped[str | None] = link("shelf_product", nullable=True)
    __table_args__ = (*within_limits("dose_per_l"),)


class PhotoRow(Identified, Base):
    """An original picture."""

    __tablename__ = "photo"
    sha256: Mapped[str] = mapped_column(String(64), unique=True)
    path: Mapped[str] = mapped_column(unique=True)
    byte_count: Mapped[int]
    width_px: Mapped[int]
    height_px: Mapped[int]
    media_type: Mapped[str] = mapped_column(String(64))
    original_name: Mapped[str]
    captured_day: Mapped[date | None]
    captured_at: Mapped[time | None]
    captured_source: Mapped[DateSource] = mapped_column(Word(DateSource))
    captured_subsecond: Mapped[str]
    captured_utc_offset: Mapped[str]
    added_at: Mapped[datetime] = mapped_column(Utc)
    __table_args__ = (is_word("captured_source", DateSource),)


class PhotoUseRow(Identified, Base):
    """A photo on a crop's day."""

    __tablename__ = "photo_use"
    photo_id: Mapped[str] = link("photo")
    crop_id: Mapped[str] = link("crop")
    day: Mapped[date] = mapped_column(index=True)
    at: Mapped[time | None]
    leads: Mapped[bool]
    note: Mapped[str]
