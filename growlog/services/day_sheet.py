"""The day sheet: one civil day of a crop, its photos and entries, those of room and tank among them."""

from dataclasses import dataclass
from datetime import date

from growlog.calculations.climate import vapour_pressure_deficit
from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import YieldSoFar, yield_so_far
from growlog.records.crop import Crop
from growlog.records.display import fixed, weight
from growlog.records.entry import Entry, Feed, Pick, Reading
from growlog.services.as_it_stood import known_on
from growlog.services.entries import entries_of_crop, harvest_closed_until
from growlog.services.open_logbook import OpenLogbook
from growlog.services.photo_uses import DayPhoto, photos_of_crop
from growlog.services.picks import pick_points
from growlog.words import say, show_day


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


@dataclass(frozen=True)
class CropDays:
    """All days of a crop as read at one time, so that moving from day to day asks the database for nothing."""

    crop: Crop
    entries: tuple[Entry, ...]
    photos: tuple[DayPhoto, ...]
    mix_names: dict[str, str]
    owner_names: dict[str, str]  # of rooms, tanks and plants by id

    def sheet(self, day: date) -> DaySheet:
        """The sheet of a civil day."""
        age = age_on(self.crop.day_zero, day)
        shown = tuple(p for p in self.photos if p.use.day == day)
        of_day = [e for e in self.entries if e.day == day]
        so_far = _so_far(self.crop, self.entries, age) if any(e.kind == "pick" for e in of_day) else ""
        entries = tuple(self._shown(e, so_far) for e in of_day)
        return DaySheet(self.crop, day, age, shown, entries, self.photo_ages)

    @property
    def photo_ages(self) -> tuple[int, ...]:
        """All plant ages that have a photo, in order."""
        return tuple(sorted({age_on(self.crop.day_zero, p.use.day) for p in self.photos}))

    def _shown(self, entry: Entry, so_far: str) -> DayEntry:
        detail = entry.detail
        title = detail.summary()
        if isinstance(detail, Feed) and detail.mix_id in self.mix_names:
            title = f"{title}, {self.mix_names[detail.mix_id]}"
        if entry.kind == "note" and entry.note:
            title = entry.note.splitlines()[0]
        parts = [detail.second_line(), so_far if isinstance(detail, Pick) else _worked_out(entry), _minutes(entry)]
        parts.append(entry.note if entry.kind != "note" else "")
        more = "; ".join(p for p in parts if p)
        return DayEntry(entry, title, more, self.owner_names.get(entry.owner.id, ""), _warning(entry, self.entries))


def crop_days_of(log: OpenLogbook, crop_id: str) -> CropDays:
    """All days of a crop up to this evening; LogbookProblem if the crop is not there."""
    today = log.today()
    with log.unit() as unit:
        crop = known_on(unit.crops.get(crop_id), today)
        rooms = {r.id: r.name for r in unit.rooms.all(removed=True)}
        tanks = {t.id: t.name for t in unit.tanks.all(removed=True)}
        plants = {p.id: say("plant {label}", label=p.label) for p in unit.plants.all(removed=True, crop_id=crop_id)}
        return CropDays(
            crop,
            tuple(e for e in entries_of_crop(unit, crop) if e.day <= today),
            tuple(photos_of_crop(unit, crop_id, today)),
            {m.id: m.name for m in unit.mixes.all(removed=True)},
            rooms | tanks | plants,
        )


def day_sheet_of(log: OpenLogbook, crop_id: str, day: date) -> DaySheet:
    """The sheet of a single civil day; LogbookProblem if the crop is not there."""
    return crop_days_of(log, crop_id).sheet(day)


def _so_far(crop: Crop, entries: tuple[Entry, ...], age: int) -> str:
    """The crop's yield up to and with a day, worked out once for all picks of that day."""
    total = yield_so_far(pick_points(crop, entries), age)
    return say("crop so far {count} fruit, {weight}", count=total.fruit_count, weight=_so_far_weight(total))


def _worked_out(entry: Entry) -> str:
    detail = entry.detail
    if isinstance(detail, Reading):
        if detail.air_temperature_c is None or detail.relative_humidity_percent is None:
            return ""
        vpd = vapour_pressure_deficit(detail.air_temperature_c, detail.relative_humidity_percent)
        return say("VPD {value} of the air", value=fixed(vpd, 2, "kPa"))
    return ""


def _so_far_weight(total: YieldSoFar) -> str:
    if total.unknown_count:
        return say("not weighed")
    return say("about {weight}", weight=weight(total.weight_g)) if total.estimated_g else weight(total.weight_g)


def _minutes(entry: Entry) -> str:
    return fixed(entry.labour_minutes, 0, "min") if entry.labour_minutes else ""


def _warning(entry: Entry, entries: tuple[Entry, ...]) -> str:
    if entry.kind != "pick":
        return ""
    closed = harvest_closed_until([e for e in entries if e.kind == "treatment"], entry.day)
    if closed is None:
        return ""
    treatment, free = closed
    return say(
        "Inside the harvest interval of {product}, until {day}: not to be eaten, the label rules.",
        product=treatment.product,
        day=show_day(free),
    )
