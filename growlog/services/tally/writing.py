"""Writes a tally: all of it as one change, or nothing."""

from growlog.records.change import Change
from growlog.records.entry import Entry
from growlog.records.problems import Problem, RecordRefused
from growlog.services.entries import add_entries, standing_entry_problems
from growlog.services.open_logbook import OpenLogbook
from growlog.services.tally.checks import TallyProblem
from growlog.services.tally.crops import crop_problems
from growlog.services.tally.entries import entries_of
from growlog.services.tally.tally import Tally
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day


def write_tally(log: OpenLogbook, tally: Tally) -> Change:
    """Writes all entries of a tally as one undoable change.

    RecordRefused with TallyProblems, each naming its crop, where anything stands against it; then nothing was
    written. Questions are for the form to ask before.
    """
    entries = entries_of(tally)
    if not entries:
        raise RecordRefused([Problem("fruit", say("Nothing is tallied yet, so there is nothing to write."))])
    with log.unit() as unit:
        firm = [p for entry in entries for p in _problems(log, unit, entry) if not p.asks]
    if firm:
        raise RecordRefused(dict.fromkeys(firm))
    return add_entries(log, entries, say("Session tally of {day}", day=show_day(tally.day)))


def is_written(log: OpenLogbook, tally: Tally) -> bool:
    """Whether this very tally is in the log already, because the program ended between writing it and saying so."""
    with log.unit() as unit:
        return any(_is_there(unit, entry) for entry in entries_of(tally))


def _problems(log: OpenLogbook, unit: UnitOfWork, entry: Entry) -> list[TallyProblem]:
    crop_id = entry.owner.id
    crop = unit.crops.find(crop_id)
    if crop is None:
        return [TallyProblem("day", say("A crop of this tally is no longer in the logbook."), False, crop_id)]
    found = crop_problems(crop) + entry.problems() + standing_entry_problems(unit, entry, log.today())
    if _is_there(unit, entry):
        found.append(Problem("day", say("This tally is in the log already.")))
    return [TallyProblem(p.field, p.sentence, p.asks, crop_id) for p in found]


def _is_there(unit: UnitOfWork, entry: Entry) -> bool:
    return unit.entries.find(entry.id) is not None
