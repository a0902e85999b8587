"""A file of old notes on its way into a logbook, in one call."""

from pathlib import Path

from growlog.records.entry import Entry
from growlog.services.old_notes.column_use import proposed_map
from growlog.services.old_notes.import_plan import Answers, ImportPlan
from growlog.services.old_notes.old_table import read_old_notes
from growlog.services.old_notes.planning import plan_entries
from growlog.services.old_notes.told_columns import Told, told_map
from growlog.services.open_logbook import OpenLogbook


def planned(
    log: OpenLogbook,
    path: Path,
    crop_id: str | None,
    answers: Answers | None = None,
    told: Told | None = None,
    kinds: tuple[str, ...] = (),
) -> ImportPlan:
    """The plan of a file, its columns guessed or as told."""
    table = read_old_notes(path)
    column_map, _ = proposed_map(log, table, kinds)
    return plan_entries(log, table, told_map(column_map, told or Told(), kinds), crop_id, answers)


def reasons(plan: ImportPlan) -> dict[int, str]:
    """Why rows stay out, by line."""
    return {row.line: row.reason for row in plan.refused}


def details(plan: ImportPlan) -> list[object]:
    """What the entries hold."""
    return [entry.detail for entry in plan.entries]


def entries_of(log: OpenLogbook) -> list[Entry]:
    """What the logbook holds."""
    with log.unit() as unit:
        return unit.entries.all()
