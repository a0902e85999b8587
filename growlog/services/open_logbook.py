"""An open logbook as services see it: the folder on disk, its photos, the preview cache, the readers, the clock."""

import uuid
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, datetime
from pathlib import Path

from growlog.photos.decode_pool import DecodePool
from growlog.photos.photo_folder import PhotoFolder
from growlog.photos.preview_cache import PreviewCache
from growlog.storage.logbook_folder import LogbookFolder
from growlog.storage.problems import LogbookInUse, LogbookNotWritable, LogbookProblem, NewerLogbook, NotALogbook
from growlog.storage.unit_of_work import UnitOfWork

__all__ = [
    "Clock",
    "LogbookInUse",
    "LogbookNotWritable",
    "LogbookProblem",
    "NewerLogbook",
    "NotALogbook",
    "OpenLogbook",
    "new_id",
]


@dataclass(frozen=True)
class Clock:
    """The one clock: the moment in UTC, and the civil date that counts as today."""

    now: Callable[[], datetime]
    today: Callable[[], date]


@dataclass
class OpenLogbook:
    """What every service takes first. `close()` stops the readers and lets the next writer in."""

    disk: LogbookFolder
    photo_folder: PhotoFolder
    previews: PreviewCache
    readers: DecodePool
    clock: Clock
    closed: bool = field(default=False, init=False)
    shown_writable: bool = field(default=False, init=False)  # pictures of screens: looks writable, still is not

    @property
    def folder(self) -> Path:
        """The logbook's folder."""
        return self.disk.folder

    @property
    def writable(self) -> bool:
        """Whether changes can be made; if not, another window has it."""
        return self.disk.writable or self.shown_writable

    def unit(self) -> UnitOfWork:
        """A unit of work; use as a context manager and commit."""
        return self.disk.unit()

    def today(self) -> date:
        """The civil date that counts as today."""
        return self.clock.today()

    def close(self) -> None:
        """Ends the readers and lets go of the lock. May be called twice."""
        if not self.closed:
            self.closed = True
            self.readers.close()
            self.disk.close()


def new_id() -> str:
    """A new record's or group's identity."""
    return str(uuid.uuid4())
