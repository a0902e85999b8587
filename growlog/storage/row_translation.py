"""Records to rows and back. Fields and columns carry the same names; what is nested is spread here."""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any

from growlog.records.column_map import ColumnMap, MappedColumn
from growlog.records.crop import Crop, Placement, Plant
from growlog.records.cultivar import Cultivar
from growlog.records.decision import Decision, QuotedFigure, ReviewPhoto
from growlog.records.entry import KINDS, Cull, Detail, Entry, Owner, OwnerKind, TaggedFruit, TagSeen, TankDose
from growlog.records.feed_plan import FeedStep
from growlog.records.feed_target import FeedTarget, TargetRange
from growlog.records.light_plan import LightStep
from growlog.records.logbook import LogbookFacts
from growlog.records.logger_file import LoggerFile
from growlog.records.photo import CaptureTime, Photo, PhotoUse
from growlog.records.product import LabelShare, ShelfProduct, StockMove
from growlog.records.purchase import Purchase
from growlog.records.recipe import Mix, MixPart, WaterShare
from growlog.records.room import Device, Lamp, Room, Tank
from growlog.records.routine import DueAnswer, Routine
from growlog.records.source_water import SourceWater
from growlog.records.tariff import Tariff, TariffBand
from growlog.storage.tables import Base, entries, money, plans, read_files, review, shelf, things


@dataclass(frozen=True)
class ListedField:
    """A tuple field whose items are rows of a table of their own.

    columns: one name for plain values, the item's field names for dataclasses.
    """

    name: str
    table: type[Base]
    key: str
    item: type | None
    columns: tuple[str, ...]


MODELS: dict[type, type[Base]] = {
    LogbookFacts: things.LogbookRow,
    Room: things.RoomRow,
    Lamp: things.LampRow,
    Tank: things.TankRow,
    Cultivar: things.CultivarRow,
    Crop: things.CropRow,
    Plant: things.PlantRow,
    Placement: things.PlacementRow,
    ShelfProduct: shelf.ShelfProductRow,
    SourceWater: shelf.SourceWaterRow,
    FeedTarget: shelf.FeedTargetRow,
    Mix: things.MixRow,
    Photo: things.PhotoRow,
    PhotoUse: things.PhotoUseRow,
    Entry: entries.EntryRow,
    StockMove: shelf.StockMoveRow,
    Routine: plans.RoutineRow,
    DueAnswer: plans.DueAnswerRow,
    FeedStep: plans.FeedStepRow,
    LightStep: plans.LightStepRow,
    Device: money.DeviceRow,
    Tariff: money.TariffRow,
    Purchase: money.PurchaseRow,
    Decision: review.DecisionRow,
    ReviewPhoto: review.ReviewPhotoRow,
    LoggerFile: read_files.LoggerFileRow,
    ColumnMap: read_files.ColumnMapRow,
}

DETAIL_MODELS: dict[str, type[Base]] = {
    "feed": entries.FeedRow,
    "reading": entries.ReadingRow,
    "training": entries.TrainingRow,
    "pollination": entries.PollinationRow,
    "fruit-check": entries.FruitCheckRow,
    "pick": entries.PickRow,
    "stage": entries.StageRow,
    "problem": entries.ProblemRow,
    "treatment": entries.TreatmentRow,
    "light": entries.LightRow,
    "potting-on": entries.PottingOnRow,
    "calibration": entries.CalibrationRow,
    "tank-care": entries.TankCareRow,
    "meter": entries.MeterRow,
    "note": entries.NoteRow,
}

LISTED: dict[type | str, tuple[ListedField, ...]] = {
    Mix: (
        ListedField("parts", things.MixPartRow, "mix_id", MixPart, ("product", "dose_per_l", "unit", "product_id")),
        ListedField("waters", shelf.MixWaterRow, "mix_id", WaterShare, ("water_id", "water_share")),
    ),
    ShelfProduct: (
        ListedField("analysis", shelf.LabelShareRow, "product_id", LabelShare, ("nutrient", "label_percent")),
    ),
    FeedTarget: (
        ListedField(
            "ranges", shelf.TargetRangeRow, "target_id", TargetRange, ("element", "low_mg_per_l", "high_mg_per_l")
        ),
    ),
    LightStep: (ListedField("lamp_ids", plans.LightStepLampRow, "step_id", None, ("lamp_id",)),),
    Tariff: (
        ListedField("bands", money.TariffBandRow, "tariff_id", TariffBand, ("from_at", "until_at", "price_per_kwh")),
    ),
    Decision: (
        ListedField(
            "figures", review.QuotedFigureRow, "decision_id", QuotedFigure, ("figure_key", "label", "value_text")
        ),
    ),
    ColumnMap: (
        ListedField(
            "columns", read_files.MappedColumnRow, "map_id", MappedColumn, ("column", "field", "unit", "cumulative")
        ),
    ),
    "pollination": (ListedField("tags", entries.PollinationTagRow, "entry_id", None, ("tag",)),),
    "fruit-check": (ListedField("tags_seen", entries.TagSeenRow, "entry_id", TagSeen, ("tag", "fate")),),
    "tank-care": (
        ListedField(
            "doses", entries.TankDoseRow, "entry_id", TankDose, ("product", "dose_amount", "unit", "product_id")
        ),
    ),
    "pick": (
        ListedField("weights_g", entries.PickedFruitRow, "entry_id", None, ("weight_g",)),
        ListedField("culls", entries.CullRow, "entry_id", Cull, ("cull_count", "cause", "weight_g")),
        ListedField("tagged", entries.TaggedFruitRow, "entry_id", TaggedFruit, ("tag", "weight_g")),
    ),
    "stage": (ListedField("codes", entries.StageCodeRow, "entry_id", None, ("code",)),),
}

RECORD_TYPES: dict[str, type] = {record.__name__: record for record in MODELS}
_CAPTURE_FIELDS = tuple(f.name for f in fields(CaptureTime))


def listed_fields(owner: type | str) -> tuple[ListedField, ...]:
    """The fields of a record type or entry kind that have tables of their own."""
    return LISTED.get(owner, ())


def to_row(record: Any) -> dict[str, Any]:
    """The columns of a record's own table."""
    if isinstance(record, Entry):
        return _entry_row(record)
    listed = {f.name for f in listed_fields(type(record))}
    row = {f.name: getattr(record, f.name) for f in fields(record) if f.name not in listed}
    if isinstance(record, Photo):
        captured = row.pop("captured")
        row |= {f"captured_{name}": getattr(captured, name) for name in _CAPTURE_FIELDS}
    return row


def from_row(record_type: type, row: Mapping[str, Any], lists: Mapping[str, tuple[Any, ...]]) -> Any:
    """The record of a row; `lists` holds its fields that have tables of their own."""
    values = dict(row)
    if record_type is Photo:
        values["captured"] = CaptureTime(**{name: values.pop(f"captured_{name}") for name in _CAPTURE_FIELDS})
    return record_type(**values, **lists)


def detail_row(detail: Detail) -> dict[str, Any]:
    """The columns of a kind's own table."""
    listed = {f.name for f in listed_fields(detail.kind)}
    return {f.name: getattr(detail, f.name) for f in fields(detail) if f.name not in listed}


def detail_from_row(kind: str, row: Mapping[str, Any], lists: Mapping[str, tuple[Any, ...]]) -> Detail:
    """The detail of a row of its kind's table."""
    return KINDS[kind](**{k: v for k, v in row.items() if k != "entry_id"}, **lists)


def entry_from_row(row: Mapping[str, Any], detail: Detail) -> Entry:
    """The entry of its row and its detail."""
    values = dict(row)
    values.pop("kind")
    owners = {kind: values.pop(f"{kind.value}_id") for kind in OwnerKind}
    owner = next(Owner(kind, id_) for kind, id_ in owners.items() if id_)
    return Entry(owner=owner, detail=detail, **values)


def item_rows(field: ListedField, record_id: str, items: tuple[Any, ...]) -> list[dict[str, Any]]:
    """The rows of a listed field, in order."""
    return [
        {field.key: record_id, "position": position, **_item_columns(field, item)}
        for position, item in enumerate(items)
    ]


def item_from_row(field: ListedField, row: Mapping[str, Any]) -> Any:
    """One item of a listed field."""
    if field.item is None:
        return row[field.columns[0]]
    return field.item(**{name: row[name] for name in field.columns})


def _item_columns(field: ListedField, item: Any) -> dict[str, Any]:
    if field.item is None:
        return {field.columns[0]: item}
    return {name: getattr(item, name) for name in field.columns}


def _entry_row(entry: Entry) -> dict[str, Any]:
    row = {f.name: getattr(entry, f.name) for f in fields(entry) if f.name not in ("owner", "detail")}
    row["kind"] = entry.kind
    for kind in OwnerKind:
        row[f"{kind.value}_id"] = entry.owner.id if entry.owner.kind is kind else None
    return row
