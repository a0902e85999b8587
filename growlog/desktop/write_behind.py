"""A change that may take seconds, written off the window's thread."""

import threading
from collections.abc import Callable, Iterable
from typing import Any

from PySide6.QtCore import QObject

from growlog.desktop.background import Lane
from growlog.desktop.desk import Desk
from growlog.records.change import Change
from growlog.records.problems import Problem, RecordRefused
from growlog.services.open_logbook import LogbookProblem, OpenLogbook

Outcome = Change | RecordRefused | LogbookProblem


class WriteBehind(QObject):
    """One change under way. on_over is told the change once it is on the desk, None if it was refused.

    A refusal goes to on_problems, to be shown beside its field, or is announced where there is none.
    """

    def __init__(
        self,
        desk: Desk,
        service: Callable[..., Change],
        *arguments: Any,
        on_over: Callable[[Change | None], None],
        on_problems: Callable[[Iterable[Problem]], None] | None = None,
    ) -> None:
        super().__init__(desk)
        self._desk, self._service = desk, service
        self._on_over, self._on_problems = on_over, on_problems
        self._written = threading.Event()
        desk.runner.run(
            self._write, desk.log, *arguments, on_done=self._take, on_failed=self._give_up, lane=Lane.DATABASE
        )

    def wait(self, seconds: float) -> None:
        """Until it is written or refused, at most so long; before the logbook is closed."""
        self._written.wait(seconds)

    def _write(self, log: OpenLogbook, *arguments: Any) -> Outcome:
        """On a thread of the background."""
        try:
            return self._service(log, *arguments)
        except (RecordRefused, LogbookProblem) as problem:
            return problem
        finally:
            self._written.set()

    def _take(self, outcome: Outcome) -> None:
        change = outcome if isinstance(outcome, Change) else None
        if change is not None:
            self._desk.take(change)
        elif isinstance(outcome, RecordRefused) and self._on_problems is not None:
            self._on_problems(outcome.problems)
        else:
            self._desk.refused.emit(str(outcome))
        self._on_over(change)
        self.deleteLater()

    def _give_up(self, error: Exception) -> None:
        self._on_over(None)
        self.deleteLater()
        raise error
