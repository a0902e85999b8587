"""Dated copies of the database inside the logbook, made by SQLite's own backup so that they are whole."""

import os
import sqlite3
from contextlib import closing, suppress
from datetime import datetime
from pathlib import Path

from growlog.storage.problems import LogbookNotWritable
from growlog.words import say

KEPT = 20


def back_up(database: Path, folder: Path, now: datetime, why: str = "") -> Path:
    """Copies the database to folder/<stamp>[_why].sqlite3 and returns the copy; the oldest beyond KEPT go.

    LogbookNotWritable where SQLite cannot write the copy, OSError where the folder cannot be used.
    """
    folder.mkdir(exist_ok=True)
    name = now.strftime("%Y-%m-%d_%H%M%S") + (f"_{why}" if why else "")
    target = folder / f"{name}.sqlite3"
    unfinished = target.with_suffix(".part")
    _copy(database, unfinished)
    os.replace(unfinished, target)
    for old in sorted(folder.glob("*.sqlite3"))[:-KEPT]:
        old.unlink(missing_ok=True)
    return target


def last_backup(folder: Path) -> Path | None:
    """The newest copy, if there is one."""
    return max(folder.glob("*.sqlite3"), default=None)


def _copy(database: Path, target: Path) -> None:
    try:
        with (
            closing(sqlite3.connect(f"{database.resolve().as_uri()}?mode=ro", uri=True)) as source,
            closing(sqlite3.connect(target)) as copy,
        ):
            source.backup(copy)
    except sqlite3.Error as error:
        with suppress(OSError):
            target.unlink(missing_ok=True)
        raise LogbookNotWritable(say("No copy could be kept: {reason}.", reason=error)) from error
