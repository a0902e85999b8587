"""A logbook's folder: made, opened (one writer), closed."""

from collections.abc import Callable
from datetime import datetime
from pathlib import Path

from filelock import FileLock, Timeout
from sqlalchemy import Engine

from growlog.storage.backup import back_up
from growlog.storage.database import (
    HEAD_REVISION,
    check_is_logbook,
    check_not_newer,
    engine_of,
    make_database,
    migrate,
    revision_of,
)
from growlog.storage.entry_memory import EntryMemory
from growlog.storage.problems import LogbookInUse, LogbookNotWritable, NotALogbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

DATABASE = "logbook.sqlite3"
PHOTOS = "photos"
BACKUPS = "backups"
LOCK = "logbook.lock"

Clock = Callable[[], datetime]


class LogbookFolder:
    """An open logbook on disk. `unit()` gives a unit of work; `close()` lets the next writer in."""

    def __init__(self, folder: Path, engine: Engine, clock: Clock, lock: FileLock | None) -> None:
        self.folder = folder
        self._engine = engine
        self._clock = clock
        self._lock = lock
        self._memory = EntryMemory()

    @property
    def writable(self) -> bool:
        """Whether this program is the one writer."""
        return self._lock is not None

    def unit(self) -> UnitOfWork:
        """A new unit of work on this logbook."""
        return UnitOfWork(self._engine, self._clock(), writable=self.writable, memory=self._memory)

    def back_up(self, why: str = "") -> Path:
        """A dated copy of the database."""
        return back_up(self.folder / DATABASE, self.folder / BACKUPS, self._clock(), why)

    def close(self) -> None:
        """Lets go of the file and of the lock. May be called twice."""
        self._engine.dispose()
        if self._lock is not None:
            self._lock.release()


def make_logbook(folder: Path) -> None:
    """Makes an empty logbook in a new or empty folder; LogbookNotWritable or NotALogbook otherwise."""
    if (folder / DATABASE).exists():
        raise LogbookNotWritable(say("{folder} already holds a logbook. It was left as it is.", folder=folder))
    if folder.exists() and (not folder.is_dir() or any(not _is_empty_part(part) for part in folder.iterdir())):
        raise NotALogbook(say("{folder} is not empty. Choose a new or an empty folder.", folder=folder))
    try:
        folder.mkdir(parents=True, exist_ok=True)
        (folder / PHOTOS).mkdir(exist_ok=True)
        (folder / BACKUPS).mkdir(exist_ok=True)
    except OSError as error:
        sentence = say("{folder} cannot be written: {reason}.", folder=folder, reason=error.strerror or str(error))
        raise LogbookNotWritable(sentence) from error
    make_database(folder / DATABASE)


def _is_empty_part(path: Path) -> bool:
    """What a try to make a logbook left behind on a full disk."""
    return path.name in (PHOTOS, BACKUPS) and path.is_dir() and not any(path.iterdir())


def open_logbook(folder: Path, clock: Clock, *, read_only: bool = False) -> LogbookFolder:
    """Opens a logbook, after a backup and migration where its schema is older.

    LogbookInUse if another program writes to it (open it read_only then), NotALogbook, NewerLogbook.
    """
    database = folder / DATABASE
    check_is_logbook(database)
    check_not_newer(database)
    lock = None if read_only else _take_lock(folder)
    try:
        if revision_of(database) != HEAD_REVISION:
            _bring_up_to_date(folder, clock, lock)
        return LogbookFolder(folder, engine_of(database, writable=lock is not None), clock, lock)
    except BaseException:
        if lock is not None:
            lock.release()
        raise


def _take_lock(folder: Path) -> FileLock:
    lock = FileLock(folder / LOCK, timeout=0)
    try:
        lock.acquire()
    except Timeout as error:
        raise LogbookInUse(
            say("{folder} is open in another window, so here it can only be read.", folder=folder)
        ) from error
    except OSError as error:
        raise LogbookNotWritable(
            say("{folder} cannot be written: {reason}.", folder=folder, reason=error.strerror or str(error))
        ) from error
    return lock


def _bring_up_to_date(folder: Path, clock: Clock, lock: FileLock | None) -> None:
    if lock is None:
        raise LogbookNotWritable(
            say("{folder} was written by an older version and must first be opened for writing.", folder=folder)
        )
    back_up(folder / DATABASE, folder / BACKUPS, clock(), "before-migration")
    migrate(folder / DATABASE)
