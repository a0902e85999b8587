"""Labour by kind of work, and per fruit: which work a crop asks for, beside others."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from growlog.calculations.explained_figure import Figure
from growlog.calculations.per_figures import minutes_per_fruit
from growlog.calculations.yield_curve import yield_so_far
from growlog.records.crop import Crop
from growlog.records.entry import Entry, Training
from growlog.services.entries import entries_of_crop
from growlog.services.money.whose import Placed
from growlog.services.open_logbook import OpenLogbook
from growlog.services.picks import pick_points
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import mark


class Work(StrEnum):
    """Kinds of work."""

    FEEDING = "feeding"
    TANK = "tank"
    POLLINATION = "pollination"
    TRAINING = "training"
    CLEAN_UP = "clean-up"
    PICKING = "picking"
    LOOKING = "looking"
    PLANT_CARE = "plant-care"
    ROOM = "room"
    OTHER = "other"

    @property
    def label(self) -> str:
        """The work in words, to be translated where shown."""
        return _LABELS[self]


_LABELS = {
    Work.FEEDING: mark("feeding"),
    Work.TANK: mark("care of the tank"),
    Work.POLLINATION: mark("hand pollination"),
    Work.TRAINING: mark("training"),
    Work.CLEAN_UP: mark("clean-up of old leaves"),
    Work.PICKING: mark("picking"),
    Work.LOOKING: mark("looking, reading and measuring"),
    Work.PLANT_CARE: mark("plant care and potting-on"),
    Work.ROOM: mark("light and room"),
    Work.OTHER: mark("other"),
}
_OF_KIND = {
    "feed": Work.FEEDING, "tank-care": Work.TANK, "calibration": Work.TANK, "pollination": Work.POLLINATION,
    "training": Work.TRAINING, "pick": Work.PICKING, "reading": Work.LOOKING, "fruit-check": Work.LOOKING,
    "stage": Work.LOOKING, "problem": Work.PLANT_CARE, "treatment": Work.PLANT_CARE, "potting-on": Work.PLANT_CARE,
    "light": Work.ROOM, "meter": Work.ROOM,
}  # fmt: skip


@dataclass(frozen=True)
class WorkMinutes:
    """A kind of work. minutes: of a room's or a tank's entries the crop's part. share_percent: of all its labour."""

    work: Work
    minutes: float
    entry_count: int
    share_percent: float
    per_fruit: float | None


@dataclass(frozen=True)
class LabourOfCrop:
    """A crop's labour so far, the kind that takes most first. by_age: (plant age, minutes) of days with labour."""

    crop_id: str
    name: str
    minutes: float
    fruit_count: int
    work: tuple[WorkMinutes, ...]
    per_fruit: Figure
    by_age: tuple[tuple[int, float], ...]


def labour_of_crop(log: OpenLogbook, crop_id: str, as_of: date | None = None) -> LabourOfCrop:
    """The labour of a crop up to a day, today if none is said; LogbookProblem if the crop is not there."""
    with log.unit() as unit:
        return crop_labour(unit, unit.crops.get(crop_id), as_of or log.today())


def labour_beside(log: OpenLogbook, crop_ids: Sequence[str], as_of: date | None = None) -> list[LabourOfCrop]:
    """The labour of several crops, in the order asked for."""
    with log.unit() as unit:
        return [crop_labour(unit, unit.crops.get(crop_id), as_of or log.today()) for crop_id in crop_ids]


def crop_labour(unit: UnitOfWork, crop: Crop, until: date) -> LabourOfCrop:
    """The same within a unit of work."""
    placed = Placed.of(unit)
    entries = [e for e in entries_of_crop(unit, crop) if e.day <= until]
    worked = [(e, e.labour_minutes * placed.share(crop, e)) for e in entries if e.labour_minutes]
    worked = [(e, minutes) for e, minutes in worked if minutes > 0]
    fruit = yield_so_far(pick_points(crop, entries)).fruit_count
    total = sum(minutes for _, minutes in worked)
    by_age: dict[int, float] = {}
    for entry, minutes in worked:
        age = (entry.day - crop.day_zero).days
        by_age[age] = by_age.get(age, 0.0) + minutes
    work = tuple(_by_work(worked, total, fruit))
    per_fruit = minutes_per_fruit(total, fruit, until)
    return LabourOfCrop(crop.id, crop.name, total, fruit, work, per_fruit, tuple(sorted(by_age.items())))


def work_of(entry: Entry) -> Work:
    """The kind of work of an entry: training that only took old leaves is clean-up."""
    detail = entry.detail
    if isinstance(detail, Training) and detail.old_leaves_removed:
        others = (detail.side_shoots_removed, detail.shoots_stopped, detail.stems_tied, detail.plants_staked)
        if not any(others):
            return Work.CLEAN_UP
    return _OF_KIND.get(entry.kind, Work.OTHER)


def _by_work(worked: Iterable[tuple[Entry, float]], total: float, fruit: int) -> list[WorkMinutes]:
    minutes: dict[Work, float] = {}
    counts: dict[Work, int] = {}
    for entry, own in worked:
        work = work_of(entry)
        minutes[work] = minutes.get(work, 0.0) + own
        counts[work] = counts.get(work, 0) + 1
    found = [
        WorkMinutes(work, spent, counts[work], 100 * spent / total, spent / fruit if fruit else None)
        for work, spent in minutes.items()
    ]
    return sorted(found, key=lambda w: -w.minutes)
