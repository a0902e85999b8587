"""The command that brings an air logger's file into a room."""

from pathlib import Path
from typing import Any

import click

from growlog.command_line.logbook_commands import opened
from growlog.command_line.openers import Call
from growlog.command_line.output import complain, progress, tell, tell_json
from growlog.command_line.parameters import as_of_option, folder_argument
from growlog.records.room import Room
from growlog.services.climate.carry_in import carry_in_logger
from growlog.services.climate.logger_plan import LoggerAnswers, LoggerPlan, plan_logger_file
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.rooms import rooms_of
from growlog.words import say, say_count

_ALL_WENT_IN, _SOME_REFUSED = 0, 1
_SHOWN_ROWS = 10


@click.command("add-readings", help=say("Bring an air logger's FILE (CSV) into the logbook in FOLDER."))
@folder_argument
@click.argument("file", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--room", "name", default="", metavar="NAME", help=say("Which room; needed where there are several."))
@click.option("--humidity", type=click.Choice(["percent", "fraction"]), default=None,
              help=say("What humidities up to 1 are."))  # fmt: skip
@click.option("--repeated-hour", type=click.Choice(["earlier", "later", "in-order"]), default=None,
              help=say("Which hour is meant by stamps in an hour that came twice."))  # fmt: skip
@click.option("--temperature", type=click.Choice(["C", "F"]), default=None,
              help=say("The unit, where the file does not say it."))  # fmt: skip
@click.option("--date-order", type=click.Choice(["dmy", "mdy"]), default=None,
              help=say("Whether the day or the month comes first, where the file leaves it open."))  # fmt: skip
@click.option("--dry-run", is_flag=True, help=say("Say what would go in, and write nothing."))
@click.option("--json", "as_json", is_flag=True, help=say("As JSON."))
@as_of_option
@click.pass_obj
def add_readings_command(
    call: Call, folder: Path, file: Path, name: str, humidity: str | None, repeated_hour: str | None,
    temperature: str | None, date_order: str | None, dry_run: bool, as_json: bool,
) -> int:  # fmt: skip
    """Plans the file, says what it found, and carries it in unless something is open."""
    answers = LoggerAnswers(date_order or "", temperature or "", humidity or "", repeated_hour or "")
    with opened(call, folder, read_only=dry_run) as log:
        room = _room(log, name)
        with progress(say("Reading"), quiet=as_json) as show:
            plan = plan_logger_file(log, file, room.id, answers, show)
        if plan is None:
            return _SOME_REFUSED
        goes_in = plan.ready and not dry_run
        if goes_in:
            with progress(say("Writing"), quiet=as_json) as show:
                carry_in_logger(log, plan, show)
    if as_json:
        tell_json(_values(plan, goes_in))
    else:
        _tell(plan, goes_in)
    return _ALL_WENT_IN if plan.ready and not plan.refused_count else _SOME_REFUSED


def _room(log: OpenLogbook, name: str) -> Room:
    rooms = [view.room for view in rooms_of(log)]
    if not rooms:
        raise LogbookProblem(say("There is no room in this logbook yet. Make one first: readings belong to a room."))
    if not name:
        if len(rooms) > 1:
            known = ", ".join(r.name for r in rooms)
            raise click.UsageError(say("Say which room: --room NAME. There are {names}.", names=known))
        return rooms[0]
    found = next((r for r in rooms if r.name.strip().casefold() == name.strip().casefold()), None)
    if found is None:
        raise LogbookProblem(say("There is no room called {name} in this logbook.", name=name))
    return found


def _tell(plan: LoggerPlan, went_in: bool) -> None:
    if plan.first_at is not None and plan.last_at is not None:
        sentence = say_count("{n} sample for {room}, {first} to {last} (UTC).",
                             "{n} samples for {room}, {first} to {last} (UTC).", plan.sample_count,
                             room=plan.room.name, first=f"{plan.first_at:%Y-%m-%d %H:%M}",
                             last=f"{plan.last_at:%Y-%m-%d %H:%M}")  # fmt: skip
        tell(sentence)
        gap = f"{plan.longest_gap_minutes:.0f}"
        tell(say("Times of more than an hour without a sample: {n}; the longest time between two is {gap} min.",
                 n=plan.gap_count, gap=gap))  # fmt: skip
    for note in plan.notes:
        tell(note)
    if plan.open_questions:  # their answers decide which rows are refused
        _ask(plan)
    else:
        _tell_refused(plan)
    if plan.problem:
        complain(plan.problem)
    tell(say("It is in the logbook now.") if went_in else say("Nothing was written."))


def _ask(plan: LoggerPlan) -> None:
    for question in plan.open_questions:
        choices = ", ".join(f"{c.value} ({c.label})" for c in question.choices)
        complain(say("{question} Say --{option} with one of: {choices}.", question=question.sentence,
                     option=_option(question.asked.value), choices=choices))  # fmt: skip


def _tell_refused(plan: LoggerPlan) -> None:
    for row in plan.refused[:_SHOWN_ROWS]:
        complain(say("Row {row}: {reason} {cells}", row=row.line, reason=row.reason, cells=row.text))
    if plan.refused_count > min(_SHOWN_ROWS, len(plan.refused)):
        complain(say("Refused in all: {n} rows.", n=plan.refused_count))


def _option(asked: str) -> str:
    return "temperature" if asked == "temperature-unit" else asked


def _values(plan: LoggerPlan, went_in: bool) -> dict[str, Any]:
    return {
        "file": plan.path.name,
        "room": plan.room.name,
        "written": went_in,
        "samples": plan.sample_count,
        "first": None if plan.first_at is None else plan.first_at.isoformat(),
        "last": None if plan.last_at is None else plan.last_at.isoformat(),
        "refused": plan.refused_count,
        "refused_rows": [{"row": r.line, "reason": r.reason, "text": r.text} for r in plan.refused],
        "repeated": plan.repeated_count,
        "gaps": plan.gap_count,
        "longest_gap_minutes": plan.longest_gap_minutes,
        "overlapping": plan.overlap_count,
        "questions": [
            {
                "key": q.asked.value,
                "sentence": q.sentence,
                "choices": [c.value for c in q.choices],
                "answer": q.answer or None,
            }
            for q in plan.questions
        ],
        "notes": list(plan.notes),
        "problem": plan.problem or None,
    }
