"""An undo or redo that may take seconds, written off the window's thread: days of the climate are made again."""

import threading

from PySide6.QtCore import QObject, Signal

from growlog.desktop.background import Lane, TaskRunner
from growlog.desktop.undo import UndoStack
from growlog.records.change import Change
from growlog.records.problems import RecordRefused
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.undo import undo
from growlog.words import say

Outcome = Change | RecordRefused | LogbookProblem


class SlowUndo(QObject):
    """One at a time; the stack is moved once it is written. told: how it goes. refused: it was not written, and why."""

    told = Signal(str)
    refused = Signal(str)

    def __init__(self, log: OpenLogbook, runner: TaskRunner, stack: UndoStack, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._log, self._runner, self._stack = log, runner, stack
        self._change: Change | None = None
        self._what = ""
        self._written = threading.Event()
        self._put_away = False

    @property
    def is_under_way(self) -> bool:
        """Whether one is being written."""
        return self._change is not None

    def start(self, change: Change, what: str) -> None:
        """Writes the inverse of a change that lies on the stack; what: how it is called, such as Undo: Feed."""
        self._change, self._what = change, what
        self.say_under_way()
        self._written.clear()
        self._runner.run(self._write, change, on_done=self._take, on_failed=self._give_up, lane=Lane.DATABASE)

    def say_under_way(self) -> None:
        """Says that it is being written, so that nothing else can be taken back yet."""
        self.told.emit(say("{what}. This takes some seconds.", what=self._what))

    def wait(self, seconds: float) -> None:
        """Until it is written or refused, at most so long; before the logbook is closed."""
        self._put_away = True
        if self._change is not None:
            self._written.wait(seconds)

    def _write(self, change: Change) -> Outcome:
        """On a thread of the background."""
        try:
            return undo(self._log, change)
        except (RecordRefused, LogbookProblem) as problem:
            return problem
        finally:
            self._written.set()

    def _take(self, outcome: Outcome) -> None:
        change, self._change = self._change, None
        if self._put_away or change is None:
            return
        if isinstance(outcome, Change):
            self._stack.settle(change, outcome)
            self.told.emit(say("{what}. Done.", what=self._what))
        else:
            self.refused.emit(str(outcome))

    def _give_up(self, error: Exception) -> None:
        self._change = None
        raise error
