"""The crops that a session may be about, with their last figures."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import YieldSoFar, yield_so_far
from growlog.records.crop import Crop
from growlog.records.cultivar import Cultivar
from growlog.records.entry import Entry, Owner, OwnerKind, Pick
from growlog.records.problems import Problem
from growlog.services.entries import own_entries, standing_entry_problems
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.picks import pick_points
from growlog.services.tally.fitting import counters_for, flowers_shut_by_noon
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


@dataclass(frozen=True)
class TallyCrop:
    """A row of the tally on one day. age_days: plant age that day. so_far: its yield up to and with that day.

    counters: which counts fit it. harvest_closed: the question before a pick, "" where the day is free.
    cannot: why it can have no entry that day, "" where it can.
    """

    crop_id: str
    name: str
    species: str
    age_days: int
    so_far: YieldSoFar
    counters: tuple[str, ...]
    shuts_by_noon: bool = False
    harvest_closed: str = ""
    cannot: str = ""


def tally_crops(log: OpenLogbook, day: date, also: Iterable[str] = ()) -> list[TallyCrop]:
    """The crops that grew on a day, the oldest first; then those of `also` (ids) that did not, each saying why."""
    wanted = set(also)
    with log.unit() as unit:
        crops = [c for c in unit.crops.all(removed=True) if c.removed_at is None or c.id in wanted]
        cultivars = {c.id: c for c in unit.cultivars.all(removed=True)}
        entries = own_entries(unit, [c.id for c in crops])
        rows = [
            _row(unit, crop, cultivars[crop.cultivar_id], entries[crop.id], day, log.today())
            for crop in sorted(crops, key=lambda c: (c.day_zero, c.name))
            if crop.id in wanted or _grew(crop, day)
        ]
    return sorted(rows, key=lambda r: bool(r.cannot))


def crop_problems(crop: Crop) -> list[Problem]:
    """What the checks of entries do not ask: whether the crop is still in the logbook."""
    if crop.removed_at is None:
        return []
    return [Problem("day", say("{crop} was removed from the logbook.", crop=crop.name))]


def _grew(crop: Crop, day: date) -> bool:
    return crop.day_zero <= day and (crop.cleared_on is None or day <= crop.cleared_on)


def _row(unit: UnitOfWork, crop: Crop, cultivar: Cultivar, entries: list[Entry], day: date, today: date) -> TallyCrop:
    points = pick_points(crop, [e for e in entries if e.day <= day])
    a_pick = Entry(new_id(), Owner(OwnerKind.CROP, crop.id), day, Pick(1))  # only to hear what would be said to it
    said = crop_problems(crop) + standing_entry_problems(unit, a_pick, today)
    return TallyCrop(
        crop.id,
        crop.name,
        cultivar.species,
        age_on(crop.day_zero, day),
        yield_so_far(points),
        counters_for(cultivar.species, cultivar.habit),
        flowers_shut_by_noon(cultivar.species, cultivar.habit),
        " ".join(p.sentence for p in said if p.asks),
        " ".join(p.sentence for p in said if not p.asks),
    )
