"""The tables of the data package, made from the records themselves and the table of limits."""

import types
from dataclasses import MISSING, Field, dataclass, fields, replace
from datetime import date, datetime, time
from enum import StrEnum
from functools import cache
from typing import Any, Union, get_args, get_origin, get_type_hints

from growlog.records.climate_day import ClimateSample
from growlog.records.column_map import ColumnMap, MappedColumn
from growlog.records.crop import Crop, Placement, Plant
from growlog.records.cultivar import Cultivar
from growlog.records.decision import Decision, QuotedFigure, ReviewPhoto
from growlog.records.entry import KINDS, Cull, Entry, OwnerKind, TaggedFruit, TagSeen, TankDose
from growlog.records.feed_plan import FeedStep
from growlog.records.feed_target import FeedTarget, TargetRange
from growlog.records.light_plan import LightStep
from growlog.records.limits import LIMITS, Limit
from growlog.records.logbook import LogbookFacts
from growlog.records.logger_file import LoggerFile
from growlog.records.photo import CaptureTime, Photo, PhotoUse
from growlog.records.product import LabelShare, ShelfProduct, StockMove
from growlog.records.purchase import Purchase
from growlog.records.recipe import Mix, MixPart, WaterShare
from growlog.records.room import Device, Lamp, Room, Tank
from growlog.records.routine import DueAnswer, Routine
from growlog.records.source_water import WATER_ELEMENTS, SourceWater
from growlog.records.tariff import Tariff, TariffBand
from growlog.sharing.cells import Column, Sort
from growlog.sharing.column_words import TABLES, column_words

RECORDS: dict[str, type] = {
    "logbook": LogbookFacts,
    "rooms": Room,
    "lamps": Lamp,
    "tanks": Tank,
    "cultivars": Cultivar,
    "crops": Crop,
    "plants": Plant,
    "placements": Placement,
    "products": ShelfProduct,
    "waters": SourceWater,
    "feed_targets": FeedTarget,
    "mixes": Mix,
    "photos": Photo,
    "photo_uses": PhotoUse,
    "stock_moves": StockMove,
    "routines": Routine,
    "due_answers": DueAnswer,
    "feed_steps": FeedStep,
    "light_steps": LightStep,
    "devices": Device,
    "tariffs": Tariff,
    "purchases": Purchase,
    "decisions": Decision,
    "review_photos": ReviewPhoto,
    "logger_files": LoggerFile,
    "column_maps": ColumnMap,
}
SAMPLES = "climate_samples"  # rows without an id: they belong to a logger file

KIND_TABLES: dict[str, str] = {
    "feed": "feeds",
    "reading": "readings",
    "training": "trainings",
    "pollination": "pollinations",
    "fruit-check": "fruit_checks",
    "pick": "picks",
    "stage": "stages",
    "problem": "problems",
    "treatment": "treatments",
    "light": "light_changes",
    "potting-on": "potting_on",
    "calibration": "calibrations",
    "tank-care": "tank_care",
    "meter": "meter_readings",
    "note": "notes",
}

_LEFT_OUT = {"version", "removed_at"}  # of this program's database, not of the grower's knowledge
_POINTERS = {
    "room_id": "rooms",
    "tank_id": "tanks",
    "crop_id": "crops",
    "plant_id": "plants",
    "cultivar_id": "cultivars",
    "mix_id": "mixes",
    "photo_id": "photos",
    "entry_id": "entries",
    "product_id": "products",
    "water_id": "waters",
    "feed_target_id": "feed_targets",
    "lamp_id": "lamps",
    "light_step_id": "light_steps",
    "tariff_id": "tariffs",
    "decision_id": "decisions",
    "photo_use_id": "photo_uses",
    "file_id": "logger_files",
    "column_map_id": "column_maps",
}
_LOWEST = {"position": 1.0, "edition": 1.0, "byte_count": 0.0, "width_px": 1.0, "height_px": 1.0, "sample_count": 0.0,
           "place": 0.0}  # fmt: skip
# Columns that are named otherwise than their line in the table of limits.
_BOUNDS = {
    "from_age": "at_age",
    "amount": "stock_amount",
    "daily_charge_minor": "price_minor",
    "dose_amount": "tank_dose",
    "low_mg_per_l": "water_mg_per_l",
    "high_mg_per_l": "water_mg_per_l",
    **{f"{element}_mg_per_l": "water_mg_per_l" for element in WATER_ELEMENTS},
}
_SORTS: dict[Any, Sort] = {
    str: Sort.STRING,
    int: Sort.INTEGER,
    float: Sort.NUMBER,
    bool: Sort.BOOLEAN,
    date: Sort.DATE,
    time: Sort.TIME,
    datetime: Sort.DATETIME,
}


@dataclass(frozen=True)
class ListedTable:
    """A table of the items that a record or an entry's detail lists in one of its fields.

    item: their dataclass, or the type of plain values, whose one column is then named by `column`.
    """

    name: str
    owner: str
    key: str
    field: str
    item: type
    column: str = ""


LISTED: tuple[ListedTable, ...] = (
    ListedTable("mix_parts", "mixes", "mix_id", "parts", MixPart),
    ListedTable("picked_fruit", "picks", "entry_id", "weights_g", float, "weight_g"),
    ListedTable("culls", "picks", "entry_id", "culls", Cull),
    ListedTable("stage_codes", "stages", "entry_id", "codes", str, "code"),
    ListedTable("mix_waters", "mixes", "mix_id", "waters", WaterShare),
    ListedTable("target_ranges", "feed_targets", "feed_target_id", "ranges", TargetRange),
    ListedTable("label_shares", "products", "product_id", "analysis", LabelShare),
    ListedTable("light_step_lamps", "light_steps", "light_step_id", "lamp_ids", str, "lamp_id"),
    ListedTable("tariff_bands", "tariffs", "tariff_id", "bands", TariffBand),
    ListedTable("quoted_figures", "decisions", "decision_id", "figures", QuotedFigure),
    ListedTable("mapped_columns", "column_maps", "column_map_id", "columns", MappedColumn),
    ListedTable("pollination_tags", "pollinations", "entry_id", "tags", str, "tag"),
    ListedTable("tags_seen", "fruit_checks", "entry_id", "tags_seen", TagSeen),
    ListedTable("tagged_fruit", "picks", "entry_id", "tagged", TaggedFruit),
    ListedTable("tank_doses", "tank_care", "entry_id", "doses", TankDose),
)

# What packages of the first format do not have: a reader takes a missing table for empty and a column for its default.
LATER_TABLES = frozenset({
    "products", "waters", "stock_moves", "routines", "due_answers", "feed_steps", "light_steps", "devices", "tariffs",
    "purchases", "decisions", "review_photos", "logger_files", "column_maps", SAMPLES, "tank_care", "meter_readings",
    "mix_waters", "label_shares", "light_step_lamps", "tariff_bands", "quoted_figures", "mapped_columns",
    "pollination_tags", "tags_seen", "tagged_fruit", "tank_doses", "feed_targets", "target_ranges",
})  # fmt: skip
LATER_COLUMNS: dict[str, frozenset[str]] = {
    "logbook": frozenset({"labour_rate_minor_per_h", "water_price_minor_per_m3"}),
    "rooms": frozenset({"energy_sharing"}),
    "lamps": frozenset({"kind", "ballast_loss_percent", "rated_life_h", "bulb_from_day", "price_minor"}),
    "crops": frozenset({"taste", "fruit_shape", "keeping", "shop_price_minor_per_kg", "shop_price_minor_per_fruit"}),
    "placements": frozenset({"energy_share"}),
    "mix_parts": frozenset({"product_id"}),
    "feeds": frozenset({"strength_percent"}),
    "readings": frozenset({"canopy_lux", "lamp_kind"}),
}


@dataclass(frozen=True)
class Table:
    """A table: its columns in order, and those that name a row."""

    name: str
    description: str
    columns: tuple[Column, ...]
    key: tuple[str, ...]

    @property
    def file(self) -> str:
        """The name of its file."""
        return f"{self.name}.csv"

    @property
    def header(self) -> list[str]:
        """The names of its columns."""
        return [c.name for c in self.columns]


@cache
def tables() -> dict[str, Table]:
    """All tables by name, what others point at first. LookupError names what a new kind or field still lacks."""
    found = [_record_table(name, record) for name, record in RECORDS.items()]
    found.append(_table("entries", _entry_columns(), ("id",)))
    found += [_detail_table(kind) for kind in KINDS]
    found += [_listed_table(listed) for listed in LISTED]
    found.append(_samples_table())
    return {table.name: table for table in found}


def listed_in(owner: str) -> list[ListedTable]:
    """The tables of items that rows of this table list."""
    return [listed for listed in LISTED if listed.owner == owner]


def _table(name: str, columns: list[Column], key: tuple[str, ...]) -> Table:
    if name not in TABLES:
        raise LookupError(f"the table {name} has no description")
    return Table(name, TABLES[name], tuple(columns), key)


def _record_table(name: str, record: type) -> Table:
    return _table(name, _columns(name, record), ("id",))


def _detail_table(kind: str) -> Table:
    if kind not in KIND_TABLES:
        raise LookupError(f"the kind of entry {kind} has no table")
    name = KIND_TABLES[kind]
    return _table(name, [_pointer(name, "entry_id"), *_columns(name, KINDS[kind])], ("entry_id",))


def _listed_table(listed: ListedTable) -> Table:
    key = [_pointer(listed.name, listed.key), _column(listed.name, "position", int, required=True)]
    if listed.column:
        own = [_column(listed.name, listed.column, listed.item, required=True)]
    else:
        own = _columns(listed.name, listed.item)
    return _table(listed.name, [*key, *own], (listed.key, "position"))


def _samples_table() -> Table:
    return _table(SAMPLES, [_pointer(SAMPLES, "file_id"), *_columns(SAMPLES, ClimateSample)], ("file_id", "at_utc"))


def _entry_columns() -> list[Column]:
    columns: list[Column] = []
    for column in _columns("entries", Entry, skip=("owner", "detail")):
        columns.append(column)
        if column.name == "id":
            columns.append(_column("entries", "kind", str, required=True, choices=tuple(KINDS)))
            columns += [_column("entries", f"{kind.value}_id", str | None, required=False) for kind in OwnerKind]
    return columns


def _columns(table: str, record: type, skip: tuple[str, ...] = (), prefix: str = "") -> list[Column]:
    hints = get_type_hints(record)
    listed = {item.field for item in listed_in(table)}
    columns: list[Column] = []
    for field in fields(record):
        if field.name in listed or field.name in _LEFT_OUT or field.name in skip:
            continue
        if hints[field.name] is CaptureTime:
            columns += _columns(table, CaptureTime, prefix="captured_")
        else:
            column = _column(table, prefix + field.name, hints[field.name], required=_is_required(field))
            columns.append(column if field.default is MISSING else replace(column, default=field.default))
    return columns


def _is_required(field: Field[Any]) -> bool:
    stated = field.default is MISSING and field.default_factory is MISSING
    # A text without a default may still be an empty text; a UUID may not.
    return stated and (field.type is not str or field.name == "id" or field.name in _POINTERS)


def _pointer(table: str, name: str) -> Column:
    return _column(table, name, str, required=True)


def _column(table: str, name: str, hint: Any, *, required: bool, choices: tuple[str, ...] = ()) -> Column:
    base, optional = _base_of(hint)
    words = base if isinstance(base, type) and issubclass(base, StrEnum) else None
    sort = Sort.STRING if words else _SORTS.get(base)
    if sort is None:
        raise LookupError(f"{table}.{name}: {hint} has no form in the data package")
    bound = LIMITS.get(_BOUNDS.get(name, name)) if sort in (Sort.INTEGER, Sort.NUMBER) else None
    return Column(
        name=name,
        sort=sort,
        description=_description(table, name, bound),
        required=not optional and (required or sort is not Sort.STRING or words is not None),
        empty_is_none=optional or sort is not Sort.STRING or words is not None,
        words=words,
        choices=tuple(w.value for w in words) if words else choices,
        lowest=bound.lowest if bound else _LOWEST.get(name),
        highest=bound.highest if bound else None,
        bound=bound,
        points_to=_POINTERS.get(name, ""),
    )


def _description(table: str, name: str, bound: Limit | None) -> str:
    words = column_words(table, name)
    if words is None and bound is not None:
        words = f"{bound.label} in {bound.unit}." if bound.unit else f"{bound.label}."
    if words is None:
        raise LookupError(f"the column {table}.{name} has no description")
    return words


def _base_of(hint: Any) -> tuple[Any, bool]:
    if get_origin(hint) in (Union, types.UnionType):
        return next(a for a in get_args(hint) if a is not type(None)), True
    return hint, False
