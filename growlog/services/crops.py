"""Crops: add, change, clear, reopen, and the list of them."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import CurvePoint, YieldSoFar, cumulative_yield, first_pick_age, yield_so_far
from growlog.records.change import Change
from growlog.records.crop import Crop, Placement, Plant, StartedFrom
from growlog.records.cultivar import CountsFrom, Cultivar, FloweringHabit
from growlog.records.entry import Entry
from growlog.records.problems import Problem, refuse
from growlog.services.as_it_stood import known_on
from growlog.services.entries import own_entries
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.picks import pick_points
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day


@dataclass(frozen=True)
class CropSummary:
    """A crop in the list: age today or at clearing (days), yield so far and its curve."""

    crop: Crop  # as it stood that evening: to be shown, never to be written
    cultivar: Cultivar
    age_days: int
    photo_count: int
    entry_count: int
    total: YieldSoFar
    curve: tuple[CurvePoint, ...]
    first_flower_age: int | None
    first_pick_age: int | None


def crops_of(log: OpenLogbook) -> list[CropSummary]:
    """All crops begun by this evening: growing ones, the youngest last; then cleared ones, the latest cleared first."""
    today = log.today()
    with log.unit() as unit:
        crops = [known_on(c, today) for c in unit.crops.all() if c.day_zero <= today]
        cultivars = {c.id: c for c in unit.cultivars.all(removed=True)}
        by_crop = own_entries(unit, [c.id for c in crops])
        photo_counts = _counted(u.crop_id for u in unit.photo_uses.all() if u.day <= today)
    summaries = [
        _summary(
            c,
            cultivars[c.cultivar_id],
            [e for e in by_crop[c.id] if e.day <= today],
            photo_counts.get(c.id, 0),
            today,
        )
        for c in crops
    ]
    growing = sorted((s for s in summaries if s.crop.growing), key=lambda s: (s.crop.day_zero, s.crop.name))
    cleared = [s for s in summaries if not s.crop.growing]
    return growing + sorted(cleared, key=lambda s: (s.crop.cleared_on or date.max, s.crop.name), reverse=True)


def crop_named(log: OpenLogbook, name: str) -> Crop | None:
    """The crop of that name (case does not matter), None if there is none."""
    with log.unit() as unit:
        return next((c for c in unit.crops.all() if c.name.strip().casefold() == name.strip().casefold()), None)


def crop_and_cultivar(log: OpenLogbook, crop_id: str) -> tuple[Crop, Cultivar]:
    """A crop with its cultivar; LogbookProblem if it is not there."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        return crop, unit.cultivars.get(crop.cultivar_id)


def new_crop(
    name: str,
    species: str,
    sown_on: date | None,
    *,
    packet_days: int | None = None,
    habit: FloweringHabit | None = None,
    counts_from: CountsFrom | None = None,
) -> tuple[Crop, Cultivar]:
    """A crop and its cultivar with the usual habit and counting of its species, not yet written."""
    cultivar = Cultivar(
        new_id(),
        species.strip(),
        name.strip(),
        habit or usual_habit(species),
        packet_days,
        counts_from or usual_count(species),
    )
    return Crop(new_id(), name.strip(), cultivar.id, sown_on=sown_on), cultivar


def add_crop(log: OpenLogbook, crop: Crop, cultivar: Cultivar, placement: Placement | None = None) -> Change:
    """Writes a new crop with one plant; RecordRefused with all that is wrong.

    The cultivar is written too unless the logbook has it; a placement, if given, is its first.
    """
    group = new_id()
    with log.unit() as unit:
        refuse(cultivar.problems() + crop.problems() + _name_problems(unit, crop) + _future_problems(crop, log.today()))
        if unit.cultivars.find(cultivar.id) is None:
            unit.add(group, cultivar)
        unit.add(group, crop, Plant(new_id(), crop.id, "1", crop.day_zero))
        if placement is not None:
            unit.add(group, placement)
        unit.commit()
    return Change(group, say("New crop {name}", name=crop.name), (crop.id,), frozenset({crop.id}))


def change_crop(log: OpenLogbook, crop: Crop, cultivar: Cultivar) -> Change:
    """Writes what was changed of a crop and its cultivar; RecordRefused, or RecordMoved if it changed elsewhere."""
    group = new_id()
    with log.unit() as unit:
        refuse(cultivar.problems() + crop.problems() + standing_problems(unit, crop, log.today()))
        if unit.cultivars.get(cultivar.id) != cultivar:
            unit.change(group, cultivar)
        if unit.crops.get(crop.id) != crop:
            unit.change(group, crop)
        unit.commit()
    return Change(group, say("Change {name}", name=crop.name), (crop.id,), frozenset({crop.id}))


def clear_crop(log: OpenLogbook, crop_id: str, day: date) -> Change:
    """Clears a crop on a civil date: RecordRefused before its last entry's day or in the future."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
    return _set_cleared(log, crop, day, say("Clear {name}", name=crop.name))


def reopen_crop(log: OpenLogbook, crop_id: str) -> Change:
    """Makes a cleared crop a growing one again."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
    return _set_cleared(log, crop, None, say("Reopen {name}", name=crop.name))


def remove_crop(log: OpenLogbook, crop_id: str) -> Change:
    """Puts a crop into the bin; its entries and photos stay with it and come back with it."""
    group = new_id()
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        unit.remove(group, crop)
        unit.commit()
    return Change(group, say("Remove {name}", name=crop.name), (crop_id,), frozenset({crop_id}))


def usual_habit(species: str) -> FloweringHabit:
    """How flowers of a species usually come to fruit: common practice, no source; the grower may choose otherwise."""
    word = species.casefold()
    if any(s in word for s in ("tomato", "chilli", "pepper", "aubergine", "eggplant", "strawberry", "bean", "okra")):
        return FloweringHabit.PERFECT
    return FloweringHabit.SEPARATE


def usual_count(species: str) -> CountsFrom:
    """What packets usually count from: transplanting for tomato, pepper and eggplant, else sowing.

    Source: convention printed with the days-to-maturity tables of university extension services.
    """
    word = species.casefold()
    raised = any(s in word for s in ("tomato", "chilli", "pepper", "aubergine", "eggplant"))
    return CountsFrom.TRANSPLANTING if raised else CountsFrom.SOWING


def _set_cleared(log: OpenLogbook, crop: Crop, day: date | None, title: str) -> Change:
    group = new_id()
    after = replace(crop, cleared_on=day)
    with log.unit() as unit:
        refuse(after.problems() + standing_problems(unit, after, log.today()))
        unit.change(group, after)
        unit.commit()
    return Change(group, title, (crop.id,), frozenset({crop.id}))


def standing_problems(unit: UnitOfWork, crop: Crop, today: date) -> list[Problem]:
    """What is wrong with a crop beside the rest of the logbook: its name, days to come, and its own entries."""
    return _name_problems(unit, crop) + _future_problems(crop, today) + _entry_problems(unit, crop)


def _entry_problems(unit: UnitOfWork, crop: Crop) -> list[Problem]:
    entries = own_entries(unit, [crop.id])[crop.id]
    if not entries or crop.problems():
        return []
    first, last = entries[0].day, entries[-1].day
    found = []
    if first < crop.day_zero:
        field = "sown_on" if crop.started_from is StartedFrom.SEED else "transplanted_on"
        sentence = say("There are entries from {day} on; day 0 is that day or earlier.", day=show_day(first))
        found.append(Problem(field, sentence))
    if crop.cleared_on is not None and crop.cleared_on < last:
        sentence = say("There are entries up to {day}; clear it on that day or later.", day=show_day(last))
        found.append(Problem("cleared_on", sentence))
    return found


def _name_problems(unit: UnitOfWork, crop: Crop) -> list[Problem]:
    taken = {c.name.strip().casefold() for c in unit.crops.all() if c.id != crop.id}
    if crop.name.strip().casefold() in taken:
        return [Problem("name", say("There is a crop of this name already. Choose another.", name=crop.name))]
    return []


def _future_problems(crop: Crop, today: date) -> list[Problem]:
    checked = ("sown_on", "emerged_on", "transplanted_on", "first_flower_on", "first_pick_on", "cleared_on")
    sentence = say("This day has not come yet.")
    return [Problem(key, sentence) for key in checked if (d := getattr(crop, key)) and d > today]


def _summary(crop: Crop, cultivar: Cultivar, entries: list[Entry], photo_count: int, today: date) -> CropSummary:
    points = pick_points(crop, entries)
    flower = crop.first_flower_on or first_flower_day(entries)
    return CropSummary(
        crop=crop,
        cultivar=cultivar,
        age_days=age_on(crop.day_zero, crop.cleared_on or today),
        photo_count=photo_count,
        entry_count=len(entries),
        total=yield_so_far(points),
        curve=tuple(cumulative_yield(points)),
        first_flower_age=None if flower is None else age_on(crop.day_zero, flower),
        first_pick_age=age_on(crop.day_zero, crop.first_pick_on) if crop.first_pick_on else first_pick_age(points),
    )


def first_flower_day(entries: Iterable[Entry]) -> date | None:
    """The first day on which an entry shows an open flower: a stage 6x, a pollination or an open female."""
    days = [e.day for e in entries if _shows_flower(e)]
    return min(days, default=None)


def _shows_flower(entry: Entry) -> bool:
    detail = entry.detail
    if entry.kind == "stage":
        return any(code.startswith("6") for code in getattr(detail, "codes", ()))
    counts = ("females_pollinated", "males_open", "trusses_vibrated", "females_open")
    return any(getattr(detail, name, None) for name in counts)


def _counted(ids: Iterable[str]) -> dict[str, int]:
    counts: dict[str, int] = {}
    for id_ in ids:
        counts[id_] = counts.get(id_, 0) + 1
    return counts
