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
_SIZE = re.compile(r"([0-9]{3,4})x([0-9]{3,4})")


class Day(click.ParamType):
    """A civil date, as ISO 8601 writes it."""

    name = "date"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> date:
        """The date, or wrong use."""
        if isinstance(value, date):
            return value
        if re.fullmatch(r"[0-9]{4}-[0-9]{2}-[0-9]{2}", value):
            try:
                return date.fromisoformat(value)
            except ValueError:
                pass
        self.fail(say("{value} is not a date. Write it as 2026-01-18.", value=value), param, ctx)


class Size(click.ParamType):
    """Width and height in pixels, as 1440x900."""

    name = "size"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> tuple[int, int]:
        """The two numbers, or wrong use."""
        if isinstance(value, tuple):
            return value
        found = _SIZE.fullmatch(value)
        if found is None:
            self.fail(say("{value} is not a size. Write it as 1440x900.", value=value), param, ctx)
        return int(found[1]), int(found[2])


def folder_argument(command: F) -> F:
    """The logbook's folder."""
    return click.argument("folder", type=FOLDER_TO_BE)(command)


def as_of_option(command: F) -> F:
    """The day that counts as today; taken before and behind the command's name."""
    return click.option(
        "--as-of",
        type=Day(),
        metavar="DATE",
        expose_value=False,
        callback=_take_as_of,
        help=say("The day that counts as today, such as 2026-01-18."),
    )(command)


def _take_as_of(context: click.Context, _parameter: click.Parameter, day: date | None) -> None:
    if day is not None:
        context.ensure_object(Call).as_of = day
