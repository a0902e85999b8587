"""Work that a dialog waits for: started in the background, stopped by its button, told in the dialog."""

from collections.abc import Callable
from typing import Any, Protocol

from PySide6.QtCore import QObject
from shiboken6 import isValid

from growlog.desktop.background import Task, TaskRunner
from growlog.services.open_logbook import LogbookProblem
from growlog.words import say


class WaitingDialog(Protocol):
    """What a dialog shows of the work."""

    def start(self) -> None:
        """It has begun."""

    def show_progress(self, progress: tuple[int, int]) -> None:
        """How far it is."""

    def end(self, problem: str = "") -> None:
        """It is over."""


class SharedWork(QObject):
    """One piece of work at a time. A service is given on_progress and cancelled, and gives None where it stopped."""

    def __init__(self, runner: TaskRunner, parent: QObject) -> None:
        super().__init__(parent)
        self._runner = runner
        self._task: Task | None = None
        self._dialog: Any = None
        self._on_done: Callable[[Any], None] | None = None

    @property
    def is_running(self) -> bool:
        """Whether work is under way."""
        return self._task is not None

    def run(self, dialog: Any, service: Callable[..., Any], *arguments: Any, on_done: Callable[[Any], None]) -> None:
        """Starts a service; its result goes to on_done, a failure into the dialog."""
        self.stop()
        self._dialog, self._on_done = dialog, on_done
        dialog.start()
        self._task = self._runner.run(
            _served, service, arguments, on_done=self._done, on_failed=self._failed, on_progress=self._tell
        )

    def stop(self) -> None:
        """Stops what is under way; the service leaves nothing half-written behind."""
        if self._task is not None:
            self._task.cancel()
            self._end()

    def _end(self, problem: str = "") -> None:
        self._task = None
        if self._dialog is not None and isValid(self._dialog):
            self._dialog.end(problem)

    def _tell(self, progress: tuple[int, int]) -> None:
        if self._dialog is not None and isValid(self._dialog):
            self._dialog.show_progress(progress)

    def _done(self, result: Any) -> None:
        self._end()
        if result is not None and self._on_done is not None:
            self._on_done(result)

    def _failed(self, error: Exception) -> None:
        if isinstance(error, LogbookProblem):
            self._end(str(error))
        elif isinstance(error, OSError):
            self._end(say("It could not be written: {reason}.", reason=error.strerror or str(error)))
        else:
            self._end(say("It could not be written. What went wrong is in the log of the program."))
            raise error


def _served(service: Callable[..., Any], arguments: tuple[Any, ...], *, task: Task) -> Any:
    def tell(done: int, total: int) -> None:
        task.report((done, total))

    def stopped() -> bool:
        return task.is_cancelled

    return service(*arguments, on_progress=tell, cancelled=stopped)
