"""The tray's work off the window's thread: reading files, and copying them into the logbook."""

import threading
import time
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Protocol

from growlog.desktop.background import Task
from growlog.records.change import Change
from growlog.services.photo_intake import IntakeItem

Progress = Callable[[int, int], None]
Stopped = Callable[[], bool]
Judge = Callable[[list[IntakeItem]], list[IntakeItem]]
BATCH_S = 0.12  # often enough to look alive, seldom enough not to keep the window busy


class LookAt(Protocol):
    """Reads files and folders; services.photo_intake.look_at with its logbook."""

    def __call__(
        self, paths: Iterable[Path], crop_id: str | None, on_progress: Progress | None, cancelled: Stopped | None
    ) -> Iterator[IntakeItem]: ...


class TakeIn(Protocol):
    """Copies and writes; services.photo_intake.take_in with its logbook."""

    def __call__(
        self, items: list[IntakeItem], on_progress: Progress | None, cancelled: Stopped | None
    ) -> tuple[list[IntakeItem], Change | None]: ...


@dataclass(frozen=True)
class Read:
    """What was read since the last report, and how far the reading is."""

    items: tuple[IntakeItem, ...]
    done: int
    total: int


@dataclass(frozen=True)
class TakenIn:
    """What take_in returned."""

    items: list[IntakeItem]
    change: Change | None
    stopped: bool


class Reader:
    """Gathers items into batches and reports them."""

    def __init__(self, task: Task, stop: threading.Event) -> None:
        self._task = task
        self._stop = stop
        self._items: list[IntakeItem] = []
        self._done = self._total = 0
        self._reported_at = 0.0

    def read(self, look_at: LookAt, paths: list[Path], crop_id: str | None) -> None:
        """Reads to the end, or until stopped."""
        for item in look_at(paths, crop_id, self._progressed, self._is_stopped):
            self._items.append(item)
            if time.monotonic() - self._reported_at >= BATCH_S:
                self._report()
        self._report()

    def _progressed(self, done: int, total: int) -> None:
        self._done, self._total = done, total

    def _is_stopped(self) -> bool:
        return self._stop.is_set() or self._task.is_cancelled

    def _report(self) -> None:
        self._task.report(Read(tuple(self._items), self._done, self._total))
        self._items.clear()
        self._reported_at = time.monotonic()


def read_files(look_at: LookAt, paths: list[Path], crop_id: str | None, stop: threading.Event, task: Task) -> None:
    """Reads files, reporting a Read now and then; nothing is written but previews."""
    Reader(task, stop).read(look_at, paths, crop_id)


def copy_files(take_in: TakeIn, items: list[IntakeItem], stop: threading.Event, task: Task) -> TakenIn:
    """Copies files. A stop is the event's, not the task's: what was copied until then is written and told."""
    results, change = take_in(items, partial(_report_progress, task), stop.is_set)
    return TakenIn(results, change, stop.is_set())


def _report_progress(task: Task, done: int, total: int) -> None:
    task.report((done, total))
