"""The dialog's work off the window's thread: reading a file, planning, carrying in. Each can be stopped."""

import threading
import time
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from growlog.desktop.background import Task
from growlog.records.change import Change
from growlog.records.column_map import ColumnMap
from growlog.records.problems import RecordRefused
from growlog.services.old_notes.import_plan import Answers, ImportPlan
from growlog.services.old_notes.old_table import OldTable, Progress, Stopped
from growlog.services.open_logbook import LogbookProblem

_TELL_EVERY_S = 0.1


@dataclass(frozen=True)
class OldNotesServices:
    """What the dialog asks; services.old_notes with their logbook. save: how many rows were saved."""

    read: Callable[[Path, str, Progress], OldTable]
    propose: Callable[[OldTable], tuple[ColumnMap, bool]]
    plan: Callable[[OldTable, ColumnMap, str | None, Answers, Progress], ImportPlan]
    carry_in: Callable[[ImportPlan, Progress], Change]
    save_refused: Callable[[ImportPlan, Path], int]


@dataclass(frozen=True)
class ReadFile:
    """A file as read, how its columns may be used, and whether that is remembered from a file of the same shape."""

    path: Path
    table: OldTable
    column_map: ColumnMap
    is_remembered: bool


@dataclass(frozen=True)
class Outcome:
    """How a piece of work ended: its result, or a sentence that says why it could not be done, or neither: stopped."""

    work: "Work"
    result: Any = None
    problem: str = ""


class Work:
    """One piece of work: asked to stop by the dialog, waited for where the logbook is about to be closed."""

    def __init__(self) -> None:
        self._stop = threading.Event()
        self._over = threading.Event()
        self._told_at = 0.0

    def stop(self) -> None:
        """Asks it to stop at its next step."""
        self._stop.set()

    @property
    def is_over(self) -> bool:
        """Whether it has ended."""
        return self._over.is_set()

    def wait(self, seconds: float) -> None:
        """Until it is over, at most so long."""
        self._over.wait(seconds)

    def run(self, function: Callable[[Progress], Any], task: Task) -> Outcome:
        """On a thread of the background: calls the function with a progress that it tells how far it is."""

        def progress(done: int, total: int) -> None:
            if self._stop.is_set() or task.is_cancelled:
                raise Stopped
            if time.monotonic() - self._told_at > _TELL_EVERY_S:
                self._told_at = time.monotonic()
                task.report((self, done, total))

        try:
            progress(0, 0)
            return Outcome(self, function(progress))
        except Stopped:
            return Outcome(self)
        except (LogbookProblem, RecordRefused) as problem:
            return Outcome(self, None, str(problem))
        finally:
            self._over.set()


def run_work(work: Work, function: Callable[[Progress], Any], task: Task) -> Outcome:
    """What the task runner is given."""
    return work.run(function, task)


def read_file(services: OldNotesServices, path: Path, sheet: str, progress: Progress) -> ReadFile:
    """Reads a file and proposes the use of its columns."""
    table = services.read(path, sheet, progress)
    column_map, is_remembered = services.propose(table)
    return ReadFile(path, table, column_map, is_remembered)
