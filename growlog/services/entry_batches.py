"""Very many entries at once: the checks of one, with what they look up read once, and one commit at the end."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from datetime import date
from typing import Any

from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.entry import Entry, OwnerKind
from growlog.records.problems import Problem, refuse
from growlog.services.climate.days import remake_days
from growlog.services.entries import day_problems, entries_of_crop, harvest_problems
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork

Progress = Callable[[int, int], None]
BATCH = 500


class StandingChecks:
    """Problems and questions of entries of crops beside the rest of the logbook, as it stood when this was made."""

    def __init__(self, unit: UnitOfWork, crop_ids: Sequence[str], today: date) -> None:
        self.crops = {crop_id: unit.crops.get(crop_id) for crop_id in dict.fromkeys(crop_ids)}
        self._treatments = {
            crop.id: [e for e in entries_of_crop(unit, crop) if e.kind == "treatment"] for crop in self.crops.values()
        }
        self._today = today
        self._by_day: dict[tuple[str, date], list[Problem]] = {}

    def problems(self, entry: Entry) -> list[Problem]:
        """Those of an entry of one of the crops."""
        found = self.of_day(self.crops[entry.owner.id], entry.day)
        if entry.kind == "pick" and self._treatments[entry.owner.id]:
            return found + harvest_problems(self._treatments[entry.owner.id], entry.day)
        return found

    def of_day(self, crop: Crop, day: date) -> list[Problem]:
        """Those of a day, whatever happened."""
        key = crop.id, day
        if key not in self._by_day:
            self._by_day[key] = day_problems(crop, day, self._today)
        return self._by_day[key]


def add_many_entries(
    log: OpenLogbook,
    entries: Sequence[Entry],
    title: str,
    on_progress: Progress | None = None,
    beside: Callable[[UnitOfWork], None] | None = None,
) -> Change:
    """Writes entries of crops as one undoable change in one transaction; RecordRefused with all that is wrong.

    on_progress is told between batches; what it raises ends the work, and nothing was written. beside: writes
    something else in the same transaction.
    """
    if any(e.owner.kind is not OwnerKind.CROP for e in entries):
        raise ValueError("only entries of crops are written in batches")
    group = new_id()
    with log.unit() as unit:
        checks = StandingChecks(unit, [e.owner.id for e in entries], log.today())
        unit.hold_until_commit()
        refuse(p for e in entries for p in checks.problems(e))
        for done, batch in _batches(entries):
            if on_progress is not None:
                on_progress(done, len(entries))
            unit.add(group, *(replace(e, group_id=group) if len(entries) > 1 else e for e in batch))
        remake_days(unit, *entries)
        if beside is not None:
            beside(unit)
        if on_progress is not None:
            on_progress(len(entries), len(entries))
        unit.commit()
    return Change(group, title, tuple(e.id for e in entries), frozenset(checks.crops))


def _batches(entries: Sequence[Entry]) -> Iterator[tuple[int, Sequence[Any]]]:
    for start in range(0, len(entries), BATCH):
        yield start, entries[start : start + BATCH]
