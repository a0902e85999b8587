"""What commands print: plain lines, exact JSON, and progress on a terminal only."""

import json
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

import click

Progress = Callable[[int, int], None]


def never_stumble() -> None:
    """Letters that the terminal cannot show are replaced instead of ending the program."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")


def tell(line: str) -> None:
    """One line for the reader."""
    click.echo(line)


def tell_json(value: Any) -> None:
    """One JSON document; in ASCII, so that every letter comes through every terminal and pipe."""
    click.echo(json.dumps(value, indent=2, ensure_ascii=True))


def complain(sentence: str) -> None:
    """One sentence on the error stream."""
    click.echo(" ".join(sentence.split()), err=True)


@contextmanager
def progress(label: str, *, quiet: bool = False) -> Iterator[Progress | None]:
    """A bar on the error stream while work goes on, where that is a terminal."""
    if quiet or not sys.stderr.isatty():
        yield None
        return
    with click.progressbar(length=1, label=label, file=sys.stderr) as bar:

        def show(done: int, total: int) -> None:
            bar.length = max(total, 1)
            bar.update(done - bar.pos)

        yield show
