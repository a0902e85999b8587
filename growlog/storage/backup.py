"""Dated copies of the database inside the logbook, made by SQLite's own backup so that they are whole."""

import os
import sqlite3
from datetime import datetime
from pathlib import Path

KEPT = 20


def back_up(database: Path, folder: Path, now: datetime, why: str = "") -> Path:
    """Copies the database to folder/<stamp>[_why].sqlite3 and returns the copy; the oldest beyond KEPT go."""
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
    source = sqlite3.connect(f"{database.resolve().as_uri()}?mode=ro", uri=True)
    copy = sqlite3.connect(target)
    try:
        source.backup(copy)
    finally:
        copy.close()
        source.close()
