"""Kinds of parameters that several commands take."""

import re
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any, TypeVar

import click

from growlog.command_line.openers import Call
from growlog.words import say

F = TypeVar("F", bound=Callable[..., Any])

FOLDER_TO_BE = click.Path(path_type=Path)
_DAY = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
_SIZE = re.compile(r"([0-9]{3,4})x([0-9]{3,4})")


def read_day(_context: click.Context, _parameter: click.Parameter, text: str | None) -> date | None:
    """The callback of an option that takes a civil date, as ISO 8601 writes it."""
    if text is None:
        return None
    try:
        if not _DAY.fullmatch(text):
            raise ValueError
        return date.fromisoformat(text)
    except ValueError as error:
        raise click.BadParameter(say("{value} is not a date. Write it as 2026-01-18.", value=text)) from error


def read_size(_context: click.Context, _parameter: click.Parameter, text: str) -> tuple[int, int]:
    """The callback of an option that takes width and height in pixels."""
    found = _SIZE.fullmatch(text)
    if found is None:
        raise click.BadParameter(say("{value} is not a size. Write it as 1440x900.", value=text))
    return int(found[1]), int(found[2])


def folder_argument(command: F) -> F:
    """The logbook's folder."""
    return click.argument("folder", type=FOLDER_TO_BE)(command)


def refuse_existing(target: Path, *, replace: bool) -> None:
    """A file that is there is not written over unasked."""
    if target.exists() and not replace:
        raise click.ClickException(say("{file} is there already. With --replace it is written over.", file=target))


def as_of_option(command: F) -> F:
    """The day that counts as today; taken before and behind the command's name."""
    return click.option(
        "--as-of",
        metavar="DATE",
        expose_value=False,
        callback=_take_as_of,
        help=say("The day that counts as today, such as 2026-01-18."),
    )(command)


def _take_as_of(context: click.Context, parameter: click.Parameter, text: str | None) -> None:
    day = read_day(context, parameter, text)
    if day is not None:
        context.ensure_object(Call).as_of = day
