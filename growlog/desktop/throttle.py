"""Holds back what comes too often: the first call goes out at once, the last one for sure."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, QTimer


class Throttle(QObject):
    """Calls a function at most once in each interval; of the calls in between only the last one counts."""

    def __init__(self, function: Callable[..., None], interval_ms: int, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._function = function
        self._waiting: tuple[Any, ...] | None = None
        self._timer = QTimer(self)
        self._timer.setInterval(interval_ms)
        self._timer.timeout.connect(self._interval_over)

    def call(self, *arguments: Any) -> None:
        """At once if the interval is over, else when it is."""
        if self._timer.isActive():
            self._waiting = arguments
            return
        self._timer.start()
        self._function(*arguments)

    def flush(self) -> None:
        """Makes the waiting call now, if there is one."""
        waiting, self._waiting = self._waiting, None
        if waiting is not None:
            self._function(*waiting)

    def cancel(self) -> None:
        """Forgets the waiting call."""
        self._waiting = None
        self._timer.stop()

    @property
    def is_waiting(self) -> bool:
        """Whether a call is still to come."""
        return self._waiting is not None

    def _interval_over(self) -> None:
        if self._waiting is None:
            self._timer.stop()
        self.flush()
