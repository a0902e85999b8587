"""The commands joined into one, and what becomes of everything that can go wrong with them."""

import os
import sys
from collections.abc import Sequence

import click

from growlog import __version__
from growlog.command_line.add_entries_command import add_entries_command
from growlog.command_line.add_readings_command import add_readings_command
from growlog.command_line.calendar_command import calendar_command
from growlog.command_line.exchange_commands import export_command, import_command
from growlog.command_line.facts_command import facts_command
from growlog.command_line.logbook_commands import (
    add_crop_command,
    demo_command,
    list_command,
    new_command,
    open_command,
)
from growlog.command_line.mix_command import mix_command
from growlog.command_line.openers import Call, Openers
from growlog.command_line.output import complain, never_stumble
from growlog.command_line.parameters import as_of_option
from growlog.command_line.photo_commands import add_photos_command
from growlog.command_line.picture_command import picture_command
from growlog.command_line.review_commands import review_command, time_lapse_command
from growlog.command_line.room_sheet_command import room_sheet_command
from growlog.command_line.work_out_command import work_out_command
from growlog.records.problems import RecordRefused
from growlog.services.open_logbook import LogbookProblem
from growlog.words import say

PROGRAM = "growing-room"
ALL_WENT_IN, SOME_REFUSED, WRONG_USE = 0, 1, 2


def run(argv: Sequence[str], openers: Openers) -> int:
    """Runs one command. Returns 0 if all went in, 1 if something was refused, 2 for wrong use.

    What the world does wrong becomes one plain sentence on the error stream; our own mistakes are let through.
    """
    never_stumble()
    try:
        code = growing_room.main(list(argv), prog_name=PROGRAM, standalone_mode=False, obj=Call(openers))
        return code if isinstance(code, int) else ALL_WENT_IN
    except click.UsageError as error:
        complain(error.format_message())
        return WRONG_USE
    except (click.Abort, click.ClickException, LogbookProblem, RecordRefused, OSError) as error:
        return _refused(error)
    except SystemExit as ending:  # a reader at the other end of a pipe went away
        return ending.code if isinstance(ending.code, int) else SOME_REFUSED


@click.group(PROGRAM, invoke_without_command=True, help=say("Growing-room Logbook. Without a command: open it."))
@click.version_option(__version__, prog_name=PROGRAM)
@as_of_option
@click.pass_context
def growing_room(context: click.Context) -> int:
    """Without a command, opens the last logbook or a welcome."""
    call = context.ensure_object(Call)
    return call.openers.open_window(None, call.as_of, False) if context.invoked_subcommand is None else ALL_WENT_IN


for _command in (
    open_command,
    demo_command,
    new_command,
    add_crop_command,
    add_photos_command,
    add_entries_command,
    list_command,
    export_command,
    import_command,
    picture_command,
    calendar_command,
    room_sheet_command,
    mix_command,
    work_out_command,
    facts_command,
    add_readings_command,
    review_command,
    time_lapse_command,
):
    growing_room.add_command(_command)


def _refused(error: Exception) -> int:
    if isinstance(error, BrokenPipeError):
        # Nobody reads any more: what is still to be flushed must not fail again at the end of the process.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    elif isinstance(error, click.Abort):
        complain(say("Stopped."))
    elif isinstance(error, click.ClickException):
        complain(error.format_message())
    elif isinstance(error, OSError):
        complain(_os_sentence(error))
    else:
        complain(str(error))
    return SOME_REFUSED


def _os_sentence(error: OSError) -> str:
    reason = error.strerror or str(error)
    return say("{file}: {reason}.", file=error.filename, reason=reason) if error.filename else f"{reason}."
