"""The command that writes what is due into a calendar file."""

from pathlib import Path

import click

from growlog.command_line.logbook_commands import opened
from growlog.command_line.openers import Call
from growlog.command_line.output import tell
from growlog.command_line.parameters import as_of_option, folder_argument
from growlog.services.due.calendar import CALENDAR_DAYS, write_calendar
from growlog.words import say, say_count


@click.command("calendar", help=say("Write what is due in the logbook in FOLDER into a calendar file (iCalendar)."))
@folder_argument
@click.option("--to", "target", required=True, type=click.Path(path_type=Path, dir_okay=False), metavar="FILE.ics")
@click.option(
    "--days",
    type=click.IntRange(1, 366),
    default=CALENDAR_DAYS,
    show_default=True,
    help=say("How many days, beginning today."),
)
@click.option("--replace", is_flag=True, help=say("Replace the file if it is there."))
@as_of_option
@click.pass_obj
def calendar_command(call: Call, folder: Path, target: Path, days: int, replace: bool) -> int:
    """Writes the file and says how much stands in it."""
    with opened(call, folder, read_only=True) as log:
        count = write_calendar(log, target, days, replace=replace)
    tell(say_count("{n} thing to do written to {file}.", "{n} things to do written to {file}.", count, file=target))
    return 0
