"""Carries a plan in, as one change; saves the rows that stay out."""

from dataclasses import replace
from pathlib import Path

from growlog.records.change import Change
from growlog.records.column_map import ColumnMap
from growlog.services.entry_batches import add_many_entries
from growlog.services.old_notes.import_plan import ImportPlan
from growlog.services.old_notes.old_table import Progress
from growlog.services.open_logbook import LogbookProblem, OpenLogbook, new_id
from growlog.sharing.old_notes.old_file import REFUSED_HEADINGS, write_refused
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, say_count


def carry_in(log: OpenLogbook, plan: ImportPlan, on_progress: Progress | None = None) -> Change:
    """Writes a plan's entries in one transaction, as one change that one undo takes out. The use of the columns is
    remembered for the next file of the same shape, whether or not the entries are taken out again.

    RecordRefused if the logbook no longer takes them, LogbookProblem while a question is open. What on_progress
    raises ends the work, and nothing was written.
    """
    if plan.questions:
        raise LogbookProblem(plan.questions[0].sentence)
    if not plan.entries:
        raise LogbookProblem(say("There is nothing in {file} to carry in.", file=plan.table.name))
    n, file = len(plan.entries), plan.table.name
    title = say_count("{n} entry from {file}", "{n} entries from {file}", n, file=file)
    return add_many_entries(log, plan.entries, title, on_progress, _Remembering(plan.column_map).write)


def save_refused(plan: ImportPlan, path: Path) -> int:
    """Writes the rows that stay out, with line and reason, as CSV; how many they are. LogbookProblem if it cannot."""
    refused = plan.refused
    own = [p for p, heading in enumerate(plan.table.headings) if heading not in REFUSED_HEADINGS]
    headings = [plan.table.headings[p] for p in own]
    left = len(plan.table.headings) - len(own)  # columns of an earlier such file stand at the left
    try:
        write_refused(path, headings, ((row.line, row.reason, row.cells[left:]) for row in refused))
    except OSError as error:
        reason = error.strerror or str(error)
        raise LogbookProblem(say("{file} could not be written: {reason}.", file=path.name, reason=reason)) from error
    return len(refused)


class _Remembering:
    """Writes the use of the columns over what was remembered for this shape."""

    def __init__(self, used: ColumnMap) -> None:
        own = tuple(c for c in used.columns if c.column not in REFUSED_HEADINGS)
        self._used = replace(used, columns=own)

    def write(self, unit: UnitOfWork) -> None:
        """In the transaction of the entries, but as a change of its own."""
        known = next(iter(unit.store(ColumnMap).all(heading=self._used.heading)), None)
        if known is None:
            unit.add(new_id(), replace(self._used, id=new_id(), version=1))
            return
        after = replace(self._used, id=known.id, version=known.version)
        if after != known:
            unit.change(new_id(), after)
