"""Runs long work off the window's thread and brings results back to it.

One lane of a single thread is for the database, so that its work keeps its order; another of a few
threads is for the rest.
"""

import logging
import threading
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor, wait
from enum import Enum
from types import MethodType
from typing import Any

from PySide6.QtCore import QObject, Qt, Signal
from shiboken6 import isValid

_log = logging.getLogger(__name__)
_DROPPED = object()


class Lane(Enum):
    """Where work is done."""

    DATABASE = "database"
    WORK = "work"


class Cancelled(Exception):
    """Raised inside a task that was asked to stop."""


class Task(QObject):
    """Work that was started: it can be asked to stop, and tells how far it is.

    A function that takes a keyword `task` gets this object and may call report() and stop_if_cancelled().
    """

    over = Signal(object)
    _progress = Signal(object)
    _ended = Signal(object)

    def __init__(self, name: str, receivers: "_Receivers", parent: QObject) -> None:
        super().__init__(parent)
        self.name = name
        self._stop = threading.Event()
        self._receivers = receivers
        self._progress.connect(self._deliver_progress, Qt.ConnectionType.QueuedConnection)
        self._ended.connect(self._deliver_end, Qt.ConnectionType.QueuedConnection)

    def cancel(self) -> None:
        """Asks the work to stop; nothing more is delivered."""
        self._stop.set()

    @property
    def is_cancelled(self) -> bool:
        """Whether it was asked to stop."""
        return self._stop.is_set()

    def stop_if_cancelled(self) -> None:
        """Called by the work between its steps."""
        if self._stop.is_set():
            raise Cancelled(self.name)

    def report(self, progress: object) -> None:
        """Called by the work to say how far it is; any value, for example (3, 10)."""
        if not self._stop.is_set():
            self._progress.emit(progress)

    def _deliver_progress(self, progress: object) -> None:
        if not self.is_cancelled:
            self._receivers.progress(progress)

    def _deliver_end(self, end: "_End") -> None:
        try:
            if not self.is_cancelled:
                self._receivers.end(end)
        finally:
            self.over.emit(self)
            self.deleteLater()


class _End:
    """How a task ended."""

    def __init__(self, result: object, error: Exception | None) -> None:
        self.result = result
        self.error = error


class _Receivers:
    """Who wants to know; a receiver whose Qt object is gone is left out."""

    def __init__(
        self,
        on_done: Callable[[Any], None] | None,
        on_failed: Callable[[Exception], None] | None,
        on_progress: Callable[[Any], None] | None,
    ) -> None:
        self._done = on_done
        self._failed = on_failed
        self._progress = on_progress

    def progress(self, progress: object) -> None:
        if self._progress is not None and _is_alive(self._progress):
            self._progress(progress)

    def end(self, end: _End) -> None:
        if end.error is None and self._done is not None and _is_alive(self._done):
            self._done(end.result)
        if end.error is not None and self._failed is not None and _is_alive(self._failed):
            self._failed(end.error)


class TaskRunner(QObject):
    """Starts work on a lane and hands results to bound methods on the window's thread."""

    busy_changed = Signal(bool)

    def __init__(self, parent: QObject | None = None, work_threads: int = 2) -> None:
        super().__init__(parent)
        self._lanes = {
            Lane.DATABASE: ThreadPoolExecutor(1, thread_name_prefix="database"),
            Lane.WORK: ThreadPoolExecutor(work_threads, thread_name_prefix="work"),
        }
        self._running: dict[Task, Future[None]] = {}
        self._lock = threading.Lock()
        self._closed = False

    def run(
        self,
        function: Callable[..., Any],
        *arguments: Any,
        on_done: Callable[[Any], None] | None = None,
        on_failed: Callable[[Exception], None] | None = None,
        on_progress: Callable[[Any], None] | None = None,
        lane: Lane = Lane.WORK,
    ) -> Task:
        """Starts the function on a lane and returns at once.

        With on_progress the function is also given task=Task, to report and to stop when cancelled.
        An error is logged and handed to on_failed.
        """
        if self._closed:
            raise RuntimeError("the task runner is closed")
        name = getattr(function, "__qualname__", repr(function))
        task = Task(name, _Receivers(on_done, on_failed, on_progress), self)
        keywords = {"task": task} if on_progress is not None else {}
        future = self._lanes[lane].submit(_work, task, function, arguments, keywords)
        with self._lock:
            self._running[task] = future
            started_idle = len(self._running) == 1
        task.over.connect(self._task_over)
        if started_idle:
            self.busy_changed.emit(True)
        return task

    @property
    def is_busy(self) -> bool:
        """Whether any work is under way or its result is not yet delivered."""
        return bool(self._running)

    def close(self, timeout_s: float = 5.0) -> bool:
        """Asks all work to stop and waits; false if something was still running at the end of the time."""
        self._closed = True
        with self._lock:
            running = dict(self._running)
        for task, future in running.items():
            task.cancel()
            future.cancel()
        _, late = wait(running.values(), timeout=timeout_s)
        for lane in self._lanes.values():
            lane.shutdown(wait=not late, cancel_futures=True)
        for task, future in running.items():
            if future in late:
                _log.error("%s did not stop within %s s", task.name, timeout_s)
        return not late

    def _task_over(self, task: Task) -> None:
        with self._lock:
            self._running.pop(task, None)
            now_idle = not self._running
        if now_idle and not self._closed:
            self.busy_changed.emit(False)


def _work(task: Task, function: Callable[..., Any], arguments: tuple[Any, ...], keywords: dict[str, Any]) -> None:
    result: object = _DROPPED
    error: Exception | None = None
    try:
        task.stop_if_cancelled()
        result = function(*arguments, **keywords)
    except Cancelled:
        task.cancel()
    except Exception as caught:  # noqa: BLE001 - the edge of a thread: logged here, handed on below
        _log.exception("%s failed", task.name)
        error = caught
    if isValid(task):
        task._ended.emit(_End(result, error))


def _is_alive(receiver: Callable[..., Any]) -> bool:
    owner = receiver.__self__ if isinstance(receiver, MethodType) else None
    return not isinstance(owner, QObject) or isValid(owner)
