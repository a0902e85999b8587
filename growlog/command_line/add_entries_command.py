"""The command that carries old notes in: a table as text or a spreadsheet becomes entries of a crop."""

from collections import Counter
from pathlib import Path
from typing import Any

import click

from growlog.command_line.logbook_commands import opened
from growlog.command_line.openers import Call
from growlog.command_line.output import progress, tell, tell_json
from growlog.command_line.parameters import as_of_option, folder_argument, refuse_existing
from growlog.services.crops import crop_named
from growlog.services.old_notes.carrying import carry_in, save_refused
from growlog.services.old_notes.column_use import proposed_map
from growlog.services.old_notes.dates import ORDERS
from growlog.services.old_notes.import_plan import Answers, ImportPlan, RowOutcome
from growlog.services.old_notes.note_fields import kinds_offered
from growlog.services.old_notes.old_table import OldTable, read_old_notes
from growlog.services.old_notes.planning import plan_entries
from growlog.services.old_notes.told_columns import NotToldRight, Told, told_map
from growlog.services.open_logbook import OpenLogbook
from growlog.words import say, say_count

_FILE = click.Path(path_type=Path, dir_okay=False)
_DECIMALS = {"point": ".", "comma": ","}


def _read_pairs(_context: click.Context, _parameter: click.Parameter, texts: tuple[str, ...]) -> list[tuple[str, str]]:
    pairs = []
    for text in texts:
        column, sign, field = text.rpartition("=")
        if not sign or not column.strip():
            raise click.BadParameter(say("{value} is not of the form column=field.", value=text))
        pairs.append((column.strip(), field.strip()))
    return pairs


@click.command("add-entries", help=say("Carry old notes from FILE (CSV, TSV, xlsx, ods) into the logbook in FOLDER."))
@folder_argument
@click.option("--crop", "crop_name", metavar="NAME", help=say("The crop of rows that name none."))
@click.option("--kind", "kinds", multiple=True, type=click.Choice(kinds_offered()), help=say("Take these kinds only."))
@click.argument("file", type=_FILE)
@click.option(
    "--map",
    "pairs",
    multiple=True,
    callback=_read_pairs,
    metavar="COLUMN=FIELD",
    help=say("What a column is read as, such as Weight=pick.total_weight_g:kg; COLUMN= leaves it out."),
)
@click.option("--cumulative", multiple=True, metavar="FIELD", help=say("This field holds the sum so far."))
@click.option("--not-cumulative", multiple=True, metavar="FIELD", help=say("This field holds no sum so far."))
@click.option("--date-order", type=click.Choice(ORDERS), default=None, help=say("Order of day, month and year."))
@click.option("--decimal", type=click.Choice(tuple(_DECIMALS)), default=None, help=say("The decimal sign."))
@click.option(
    "--year-slips",
    type=click.Choice(("mend", "keep")),
    default=None,
    help=say("What to do with days a year off their neighbours; they stay out if not given."),
)
@click.option("--sheet", default="", metavar="NAME", help=say("Sheet of a spreadsheet; the first if not given."))
@click.option("--heading-line", type=int, default=None, metavar="N", help=say("Line of the heading, 0 for none."))
@click.option("--with-known", is_flag=True, help=say("Carry in again what the logbook has already."))
@click.option("--refused", "refused_file", type=_FILE, metavar="CSV", help=say("Save the rows that stay out here."))
@click.option("--replace", is_flag=True, help=say("Write over a file that is there."))
@click.option("--dry-run", is_flag=True, help=say("Show what would happen; write nothing."))
@click.option("--json", "as_json", is_flag=True, help=say("Print one JSON document."))
@as_of_option
@click.pass_obj
def add_entries_command(call: Call, /, folder: Path, file: Path, **options: Any) -> int:  # fmt: skip
    """Reads, plans, and carries in unless something is open or it is a rehearsal."""
    if options["refused_file"] is not None:
        refuse_existing(options["refused_file"], replace=options["replace"])
    quiet = options["as_json"]
    with opened(call, folder, read_only=options["dry_run"]) as log:
        with progress(say("Reading"), quiet=quiet) as show:
            plan = _planned(log, folder, file, options, show)
        written = plan.is_ready and not options["dry_run"]
        if options["refused_file"] is not None and not plan.questions:
            save_refused(plan, options["refused_file"])
        if written:
            with progress(say("Carrying in"), quiet=quiet) as show:
                carry_in(log, plan, show)
    if quiet:
        tell_json(_as_values(plan, written))
    else:
        _tell_all(plan, options["dry_run"])
    return 1 if plan.questions or plan.refused else 0


def _planned(log: OpenLogbook, folder: Path, file: Path, options: dict[str, Any], show: Any) -> ImportPlan:
    crop = crop_named(log, options["crop_name"]) if options["crop_name"] else None
    if options["crop_name"] and crop is None:
        raise click.UsageError(say("There is no crop {name} in {folder}.", name=options["crop_name"], folder=folder))
    table = read_old_notes(file, options["sheet"], heading_line=options["heading_line"])
    column_map, remembered = proposed_map(log, table, options["kinds"])
    told = Told(options["pairs"], options["cumulative"], options["not_cumulative"])
    try:
        column_map = told_map(column_map, told, options["kinds"])
    except NotToldRight as problem:
        raise click.UsageError(str(problem)) from problem
    answers = Answers(
        options["date_order"] or (column_map.date_order if remembered else ""),
        _DECIMALS.get(options["decimal"]) or (column_map.decimal if remembered else ""),
        options["year_slips"] or "",
        options["with_known"],
    )
    return plan_entries(log, table, column_map, None if crop is None else crop.id, answers, show)


def _as_values(plan: ImportPlan, written: bool) -> dict[str, Any]:
    table = plan.table
    return {
        "file": table.name,
        "sheet": table.sheet,
        "written": written,
        "columns": [
            {"column": c.column, "field": c.field, "unit": c.unit, "cumulative": c.cumulative}
            for c in plan.column_map.columns
        ],
        "date_order": plan.column_map.date_order,
        "decimal": plan.column_map.decimal,
        "rows": len(table.rows),
        "rows_in": plan.count(RowOutcome.GOES_IN),
        "rows_without_content": plan.count(RowOutcome.SAYS_NOTHING),
        "entries": len(plan.entries),
        "entries_by_kind": dict(Counter(e.kind for e in plan.entries)),
        "already_known": plan.known_count,
        "refused": [{"line": r.line, "reason": r.reason, "cells": [str(c) for c in r.cells]} for r in plan.refused],
        "unusual": [{"line": r.line, "reason": r.reason} for r in plan.unusual()],
        "questions": [
            {"key": q.key, "question": q.sentence, "answers": [{"value": v, "words": w} for v, w in q.choices]}
            for q in plan.questions
        ],
    }


def _tell_all(plan: ImportPlan, rehearsal: bool) -> None:
    for line in _column_lines(plan.table, plan):
        tell(line)
    for row in (*plan.unusual(), *plan.refused):
        tell(say("line {line}: {reason}", line=row.line, reason=row.reason))
    for question in plan.questions:
        tell(question.sentence)
        tell(say("  Answer with {option}.", option=_option_for(question.key)))
    if plan.questions:
        tell(say("Nothing was carried in."))
        return
    n = len(plan.entries)
    carried = say_count("{n} entry carried in", "{n} entries carried in", n)
    parts = [say_count("{n} entry would go in", "{n} entries would go in", n) if rehearsal else carried]
    if plan.known_count:
        parts.append(say_count("{n} was there already", "{n} were there already", plan.known_count))
    if plan.refused:
        parts.append(say_count("{n} row left out", "{n} rows left out", len(plan.refused)))
    tell(", ".join(parts))


def _column_lines(table: OldTable, plan: ImportPlan) -> list[str]:
    used = {c.column: c for c in plan.column_map.columns}
    lines = []
    for heading in table.headings:
        column = used.get(heading)
        field = (column.field if column else "") or say("left out")
        unit = f" [{column.unit}]" if column and column.unit else ""
        adds_up = f", {say('sum so far')}" if column and column.cumulative else ""
        lines.append(f"{heading}: {field}{unit}{adds_up}")
    return lines


def _option_for(key: str) -> str:
    return {
        "date_order": "--date-order dmy",
        "decimal": "--decimal point",
        "crop": "--crop NAME",
        "weight": "--map COLUMN=pick.weight_g",
        "cull_cause": "--map COLUMN=pick.culled_damaged",
    }.get(key, "--map COLUMN=day")
