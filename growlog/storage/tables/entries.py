"""Tables of what happened: the entry, and one narrow table per kind."""

from datetime import date, time

from sqlalchemy import CheckConstraint, ForeignKey, Index, Integer, String
from sqlalchemy.orm import Mapped, mapped_column

from growlog.records.entry import CullCause, FlowerFate, PollinationWay, ProblemSort, TankWork
from growlog.storage.tables.base import Base, Identified, Word, column_within, is_word, link, within_limits


class EntryRow(Identified, Base):
    """An entry: whose, which day, and which kind."""

    __tablename__ = "entry"
    kind: Mapped[str] = mapped_column(String(32))
    crop_id: Mapped[str | None] = link("crop", nullable=True)
    plant_id: Mapped[str | None] = link("plant", nullable=True)
    tank_id: Mapped[str | None] = link("tank", nullable=True)
    room_id: Mapped[str | None] = link("room", nullable=True)
    day: Mapped[date]
    at: Mapped[time | None]
    labour_minutes: Mapped[int | None]
    note: Mapped[str]
    group_id: Mapped[str | None] = mapped_column(String(36))
    __table_args__ = (
        *within_limits("labour_minutes"),
        CheckConstraint(
            "(crop_id IS NOT NULL) + (plant_id IS NOT NULL) + (tank_id IS NOT NULL) + (room_id IS NOT NULL) = 1",
            name="one_owner",
        ),
        Index("ix_entry_day", "day"),
    )


class _OfEntry:
    """The key of a kind's table: the entry's own."""

    entry_id: Mapped[str] = mapped_column(String(36), ForeignKey("entry.id"), primary_key=True)


class _ListedInEntry(_OfEntry):
    """The key of a kind's rows: the entry's and a position."""

    position: Mapped[int] = mapped_column(Integer, primary_key=True)


class FeedRow(_OfEntry, Base):
    """A feed."""

    __tablename__ = "entry_feed"
    mix_id: Mapped[str | None] = link("mix", nullable=True)
    strength_percent: Mapped[float | None]
    volume_l: Mapped[float | None]
    ec_ms_per_cm: Mapped[float | None]
    ph: Mapped[float | None]
    drain_l: Mapped[float | None]
    drain_ec_ms_per_cm: Mapped[float | None]
    drain_ph: Mapped[float | None]
    water_only: Mapped[bool]
    __table_args__ = (
        *within_limits("strength_percent", "volume_l", "ec_ms_per_cm", "ph"),
        *within_limits("drain_l", "drain_ec_ms_per_cm", "drain_ph"),
    )


class ReadingRow(_OfEntry, Base):
    """A reading."""

    __tablename__ = "entry_reading"
    air_temperature_c: Mapped[float | None]
    relative_humidity_percent: Mapped[float | None]
    solution_temperature_c: Mapped[float | None]
    plant_height_cm: Mapped[float | None]
    container_weight_g: Mapped[float | None]
    canopy_ppfd_umol: Mapped[float | None]
    canopy_lux: Mapped[float | None]
    lamp_kind: Mapped[str] = mapped_column(String(64), server_default="")
    __table_args__ = (
        *within_limits(
            "air_temperature_c",
            "relative_humidity_percent",
            "solution_temperature_c",
            "plant_height_cm",
            "container_weight_g",
            "canopy_ppfd_umol",
            "canopy_lux",
        ),
    )


class TrainingRow(_OfEntry, Base):
    """Training."""

    __tablename__ = "entry_training"
    old_leaves_removed: Mapped[int | None]
    side_shoots_removed: Mapped[int | None]
    shoots_stopped: Mapped[int | None]
    stems_tied: Mapped[int | None]
    plants_staked: Mapped[int | None]
    __table_args__ = (
        *within_limits("old_leaves_removed", "side_shoots_removed", "shoots_stopped", "stems_tied", "plants_staked"),
    )


class PollinationRow(_OfEntry, Base):
    """A pollination."""

    __tablename__ = "entry_pollination"
    females_pollinated: Mapped[int | None]
    males_open: Mapped[int | None]
    trusses_vibrated: Mapped[int | None]
    way: Mapped[PollinationWay | None] = mapped_column(Word(PollinationWay))
    __table_args__ = (
        *within_limits("females_pollinated", "males_open", "trusses_vibrated"),
        is_word("way", PollinationWay),
    )


class PollinationTagRow(_ListedInEntry, Base):
    """The tag of one pollinated flower."""

    __tablename__ = "pollination_tag"
    tag: Mapped[str] = mapped_column(String(32))


class FruitCheckRow(_OfEntry, Base):
    """A fruit check."""

    __tablename__ = "entry_fruit_check"
    females_open: Mapped[int | None]
    fruit_set: Mapped[int | None]
    dropped: Mapped[int | None]
    thinned: Mapped[int | None]
    hanging: Mapped[int | None]
    __table_args__ = (*within_limits("females_open", "fruit_set", "dropped", "thinned", "hanging"),)


class TagSeenRow(_ListedInEntry, Base):
    """A tagged flower and what it had come to."""

    __tablename__ = "tag_seen"
    tag: Mapped[str] = mapped_column(String(32))
    fate: Mapped[FlowerFate] = mapped_column(Word(FlowerFate))
    __table_args__ = (is_word("fate", FlowerFate),)


class PickRow(_OfEntry, Base):
    """A pick."""

    __tablename__ = "entry_pick"
    fruit_count: Mapped[int]
    total_weight_g: Mapped[float | None]
    __table_args__ = (*within_limits("fruit_count", "total_weight_g"),)


class PickedFruitRow(_ListedInEntry, Base):
    """One weighed fruit."""

    __tablename__ = "picked_fruit"
    weight_g: Mapped[float]
    __table_args__ = (*within_limits("weight_g"),)


class CullRow(_ListedInEntry, Base):
    """Culled fruit of one cause."""

    __tablename__ = "cull"
    cull_count: Mapped[int]
    cause: Mapped[CullCause] = mapped_column(Word(CullCause))
    weight_g: Mapped[float | None]
    __table_args__ = (*within_limits("cull_count", "weight_g"), is_word("cause", CullCause))


class TaggedFruitRow(_ListedInEntry, Base):
    """A picked fruit that carried a tag."""

    __tablename__ = "tagged_fruit"
    tag: Mapped[str] = mapped_column(String(32))
    weight_g: Mapped[float | None]
    __table_args__ = (*within_limits("weight_g"),)


class StageRow(_OfEntry, Base):
    """Growth stages seen; the codes are rows of their own."""

    __tablename__ = "entry_stage"


class StageCodeRow(_ListedInEntry, Base):
    """One BBCH code seen."""

    __tablename__ = "stage_code"
    code: Mapped[str] = mapped_column(String(3))
    __table_args__ = (CheckConstraint("length(code) BETWEEN 2 AND 3", name="code_length"),)


class ProblemRow(_OfEntry, Base):
    """A problem."""

    __tablename__ = "entry_problem"
    sort: Mapped[ProblemSort] = mapped_column(Word(ProblemSort))
    name: Mapped[str] = mapped_column(String(200))
    severity: Mapped[int]
    __table_args__ = (*within_limits("severity"), is_word("sort", ProblemSort))


class TreatmentRow(_OfEntry, Base):
    """A treatment."""

    __tablename__ = "entry_treatment"
    product: Mapped[str] = mapped_column(String(200))
    target: Mapped[str] = mapped_column(String(200))
    dose: Mapped[str] = mapped_column(String(200))
    re_entry_h: Mapped[float | None]
    harvest_interval_days: Mapped[int | None]
    __table_args__ = (*within_limits("re_entry_h", "harvest_interval_days"),)


class LightRow(_OfEntry, Base):
    """A change of the light."""

    __tablename__ = "entry_light"
    photoperiod_h: Mapped[float | None]
    on_at: Mapped[time | None]
    dimming_percent: Mapped[float | None]
    canopy_ppfd_umol: Mapped[float | None]
    __table_args__ = (*within_limits("photoperiod_h", "dimming_percent", "canopy_ppfd_umol"),)


class PottingOnRow(_OfEntry, Base):
    """Potting-on."""

    __tablename__ = "entry_potting_on"
    container_l: Mapped[float | None]
    medium: Mapped[str] = mapped_column(String(200))
    __table_args__ = (*within_limits("container_l"),)


class CalibrationRow(_OfEntry, Base):
    """A meter calibration."""

    __tablename__ = "entry_calibration"
    meter: Mapped[str] = mapped_column(String(32))
    reference_value: Mapped[float | None]
    reading_before: Mapped[float | None]
    __table_args__ = (*within_limits("reference_value", "reading_before"),)


class TankCareRow(_OfEntry, Base):
    """Care of a tank; what was added is rows of its own."""

    __tablename__ = "entry_tank_care"
    work: Mapped[TankWork] = mapped_column(Word(TankWork))
    volume_before_l: Mapped[float | None]
    water_added_l: Mapped[float | None]
    drained_l: Mapped[float | None]
    ec_before_ms_per_cm: Mapped[float | None]
    ec_after_ms_per_cm: Mapped[float | None]
    ph_before: Mapped[float | None]
    ph_after: Mapped[float | None]
    mix_id: Mapped[str | None] = link("mix", nullable=True)
    __table_args__ = (
        *within_limits("volume_before_l", "water_added_l", "drained_l"),
        *within_limits("ec_before_ms_per_cm", "ec_after_ms_per_cm", "ph_before", "ph_after"),
        is_word("work", TankWork),
    )


class TankDoseRow(_ListedInEntry, Base):
    """What went into a tank."""

    __tablename__ = "tank_dose"
    product: Mapped[str] = mapped_column(String(200))
    dose_amount: Mapped[float]
    unit: Mapped[str] = mapped_column(String(16))
    product_id: Mapped[str | None] = link("shelf_product", nullable=True)
    __table_args__ = (column_within("dose_amount", "tank_dose"),)


class MeterRow(_OfEntry, Base):
    """What an electricity meter showed."""

    __tablename__ = "entry_meter"
    meter_kwh: Mapped[float]
    starts_anew: Mapped[bool]
    __table_args__ = (*within_limits("meter_kwh"),)


class NoteRow(_OfEntry, Base):
    """A note: its words are the entry's."""

    __tablename__ = "entry_note"
