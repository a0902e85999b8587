"""What is not finished: small files in the logbook's folder, each whole or not there at all."""

import os
from contextlib import suppress
from datetime import datetime
from pathlib import Path

from growlog.storage.problems import LogbookNotWritable
from growlog.words import say

UNFINISHED = "unfinished"
_LARGEST_BYTES = 4 << 20  # no session types as much; what is larger was not written here


def draft_file(folder: Path, name: str) -> Path:
    """Where the draft of that name lies in a logbook's folder."""
    return folder / UNFINISHED / f"{name}.json"


def write_draft(folder: Path, name: str, text: str) -> None:
    """Keeps a draft in place of the last one; LogbookNotWritable if the disk does not take it, then the last stays."""
    target = draft_file(folder, name)
    part = target.with_suffix(".part")
    try:
        target.parent.mkdir(exist_ok=True)
        with part.open("w", encoding="utf-8") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, target)
    except OSError as error:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        raise _not_kept(target, error) from error


def read_draft(folder: Path, name: str) -> str | None:
    """The draft as it was kept, None if there is none. ValueError or OSError where it cannot be read."""
    file = draft_file(folder, name)
    if not file.is_file():
        return None
    if file.stat().st_size > _LARGEST_BYTES:
        raise ValueError(f"{file.name} is larger than a draft can be")
    return file.read_text(encoding="utf-8")


def remove_draft(folder: Path, name: str) -> None:
    """Takes the draft away, and the folder with it if nothing else lies there."""
    file = draft_file(folder, name)
    try:
        file.unlink(missing_ok=True)
        if file.parent.is_dir() and not any(file.parent.iterdir()):
            file.parent.rmdir()
    except OSError as error:
        raise _not_kept(file, error) from error


def set_draft_aside(folder: Path, name: str, now: datetime) -> Path:
    """Renames a draft that cannot be read, so that it stands in nobody's way and is still there."""
    file = draft_file(folder, name)
    aside = file.with_name(f"{name}-unreadable-{now:%Y-%m-%d_%H%M%S}.json")
    try:
        os.replace(file, aside)
    except OSError as error:
        raise _not_kept(file, error) from error
    return aside


def _not_kept(file: Path, error: OSError) -> LogbookNotWritable:
    reason = error.strerror or str(error)
    return LogbookNotWritable(say("{file} cannot be written: {reason}.", file=file, reason=reason))
