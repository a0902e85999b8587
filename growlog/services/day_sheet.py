"""The day sheet: one civil day of a crop, its photos and entries, those of room and tank among them."""

from dataclasses import dataclass
from datetime import date

from growlog.calculations.climate import vapour_pressure_deficit
from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import yield_so_far
from growlog.records.crop import Crop
from growlog.records.entry import Entry, Feed, Owner, OwnerKind, Pick, Reading
from growlog.records.entry.wording import fixed, weight
from growlog.records.recipe import Mix
from growlog.services.entries import entries_of_crop, harvest_closed_until
from growlog.services.open_logbook import OpenLogbook
from growlog.services.photo_uses import DayPhoto, photos_of_crop
from growlog.services.picks import pick_points
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


@dataclass(frozen=True)
class DayEntry:
    """An entry as the day shows it: title, second line, whose it is ("" for the crop's own), a warning or ""."""

    entry: Entry
    title: str
    more: str
    belongs: str
    warning: str


@dataclass(frozen=True)
class DaySheet:
    """A day of a crop. photos: the leading one first. photo_ages: all plant ages that have a photo."""

    crop: Crop
    day: date
    age: int
    photos: tuple[DayPhoto, ...]
    entries: tuple[DayEntry, ...]
    photo_ages: tuple[int, ...]


def day_sheet_of(log: OpenLogbook, crop_id: str, day: date) -> DaySheet:
    """The sheet of a civil day; LogbookProblem if the crop is not there."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        entries = entries_of_crop(unit, crop)
        mixes = {m.id: m for m in unit.mixes.all(removed=True)}
        photos = photos_of_crop(unit, crop_id)
        today = [_shown(unit, crop, e, entries, mixes) for e in entries if e.day == day]
    ages = sorted({age_on(crop.day_zero, p.use.day) for p in photos})
    shown = tuple(p for p in photos if p.use.day == day)
    return DaySheet(crop, day, age_on(crop.day_zero, day), shown, tuple(today), tuple(ages))


def _shown(unit: UnitOfWork, crop: Crop, entry: Entry, entries: list[Entry], mixes: dict[str, Mix]) -> DayEntry:
    detail = entry.detail
    title = detail.summary()
    if isinstance(detail, Feed) and detail.mix_id in mixes:
        title = f"{title}, {mixes[detail.mix_id].name}"
    if entry.kind == "note" and entry.note:
        title = entry.note.splitlines()[0]
    parts = [detail.second_line(), _worked_out(crop, entry, entries), _minutes(entry)]
    parts.append(entry.note if entry.kind != "note" else "")
    return DayEntry(
        entry, title, "; ".join(p for p in parts if p), _owner_name(unit, crop, entry.owner), _warning(entry, entries)
    )


def _worked_out(crop: Crop, entry: Entry, entries: list[Entry]) -> str:
    detail = entry.detail
    if isinstance(detail, Pick):
        total = yield_so_far(pick_points(crop, entries), age_on(crop.day_zero, entry.day))
        about = say("about {weight}", weight=weight(total.weight_g)) if total.estimated_g else weight(total.weight_g)
        return say("crop so far {count} fruit, {weight}", count=total.fruit_count, weight=about)
    if isinstance(detail, Reading):
        if detail.air_temperature_c is None or detail.relative_humidity_percent is None:
            return ""
        vpd = vapour_pressure_deficit(detail.air_temperature_c, detail.relative_humidity_percent)
        return say("VPD {value} of the air", value=fixed(vpd, 2, "kPa"))
    return ""


def _minutes(entry: Entry) -> str:
    return fixed(entry.labour_minutes, 0, "min") if entry.labour_minutes else ""


def _owner_name(unit: UnitOfWork, crop: Crop, owner: Owner) -> str:
    if owner.kind is OwnerKind.ROOM:
        return unit.rooms.get(owner.id).name
    if owner.kind is OwnerKind.TANK:
        return unit.tanks.get(owner.id).name
    if owner.kind is OwnerKind.PLANT:
        return say("plant {label}", label=unit.plants.get(owner.id).label)
    return ""


def _warning(entry: Entry, entries: list[Entry]) -> str:
    if entry.kind != "pick":
        return ""
    closed = harvest_closed_until([e for e in entries if e.kind == "treatment"], entry.day)
    if closed is None:
        return ""
    treatment, free = closed
    return say(
        "Inside the harvest interval of {product}, until {day}: not to be eaten, the label rules.",
        product=treatment.product,
        day=free.isoformat(),
    )
