"""The command that writes the room sheet, a week on paper."""

from datetime import date
from pathlib import Path

import click

from growlog.command_line.logbook_commands import opened
from growlog.command_line.openers import Call
from growlog.command_line.output import tell
from growlog.command_line.parameters import as_of_option, folder_argument, read_day, refuse_existing
from growlog.services.paper import Paper
from growlog.services.room_sheet import week_of, write_room_sheet
from growlog.words import say, show_day


@click.command("room-sheet", help=say("Write a page for a week in the room, to be filled in by hand, as a PDF."))
@folder_argument
@click.option("--to", "target", required=True, type=click.Path(path_type=Path), metavar="FILE.pdf",
              help=say("The file to write."))  # fmt: skip
@click.option("--week", callback=read_day, metavar="DATE", help=say("A day of the week; this week if not given."))
@click.option("--paper", type=click.Choice([p.value for p in Paper]), default="a4", help=say("Size of the paper."))
@click.option("--replace", is_flag=True, help=say("Write over a file that is there."))
@as_of_option
@click.pass_obj
def room_sheet_command(call: Call, folder: Path, target: Path, week: date | None, paper: str, replace: bool) -> int:
    """Writes the sheet."""
    refuse_existing(target, replace=replace)
    with opened(call, folder, read_only=True) as log:
        sheet = write_room_sheet(log, target, week_of(week or log.today()), Paper(paper))
    day = show_day(sheet.first_day)
    tell(say("The room sheet of the week from {day} is in {file}.", day=day, file=target))
    return 0
