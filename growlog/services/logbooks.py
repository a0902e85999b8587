"""Logbooks: make a new one, open one."""

from collections.abc import Callable
from datetime import UTC, date, datetime
from pathlib import Path

from growlog.photos.decode_pool import DecodePool
from growlog.photos.photo_folder import PhotoFolder
from growlog.photos.preview_cache import PreviewCache
from growlog.records.file_names import keepable
from growlog.records.logbook import LogbookFacts
from growlog.services.open_logbook import Clock, LogbookNotWritable, OpenLogbook, new_id
from growlog.storage.database import load_migration_tools
from growlog.storage.logbook_folder import make_logbook, open_logbook
from growlog.words import say


def clock_as_of(day: date | None = None) -> Clock:
    """The computer's clock; with a day given, that civil date counts as today."""
    today: Callable[[], date] = (lambda: day) if day is not None else (lambda: datetime.now().astimezone().date())
    return Clock(now=lambda: datetime.now(UTC), today=today)


def new_logbook(folder: Path, clock: Clock, name: str = "") -> None:
    """Makes an empty logbook in a new or empty folder; LogbookProblem with a sentence if that cannot be."""
    make_logbook(folder)
    disk = open_logbook(folder, clock.now)
    try:
        with disk.unit() as unit:
            unit.add(new_id(), LogbookFacts(new_id(), keepable(name or folder.name), made_at=clock.now()))
            unit.commit()
    finally:
        disk.close()


def open_log(folder: Path, clock: Clock, cache_folder: Path, *, read_only: bool = False) -> OpenLogbook:
    """Opens a logbook; LogbookInUse if another window writes to it (then open it read_only), NotALogbook,
    NewerLogbook, each with a sentence. cache_folder: where previews are kept, outside the logbook."""
    disk = open_logbook(folder, clock.now, read_only=read_only)
    return OpenLogbook(disk, PhotoFolder(folder), PreviewCache(cache_folder), DecodePool(cache_folder), clock)


def load_tools() -> None:
    """Imports what making a logbook needs. A window calls it before it makes one on another thread: Qt's binding
    hooks into imports, and a first import beside a running event loop has crashed the interpreter."""
    load_migration_tools()


def facts_of(log: OpenLogbook) -> LogbookFacts:
    """The logbook's name and currency."""
    with log.unit() as unit:
        return next(iter(unit.logbook.all()), LogbookFacts("", log.folder.name))


def keep_copy(log: OpenLogbook) -> Path:
    """A dated copy of the database inside the logbook; LogbookProblem if it cannot be kept."""
    try:
        return log.disk.back_up()
    except OSError as error:
        sentence = say("No copy could be kept: {reason}.", reason=error.strerror or str(error))
        raise LogbookNotWritable(sentence) from error
