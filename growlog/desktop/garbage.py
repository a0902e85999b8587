"""Collects garbage on the window's thread only.

Python's collector runs on whichever thread happens to allocate. A widget that it found on a thread of the
background would be destroyed from there, which crashes the interpreter. So it rests while tasks may run, and
a timer does its work on the window's thread.
"""

import gc

from PySide6.QtCore import QObject, QTimer

_EVERY_MS = 2000


class GarbageOnWindowThread(QObject):
    """From its making until `stop`, which gives the collector back as it was."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._was_on = gc.isenabled()
        gc.disable()
        self._timer = QTimer(self)
        self._timer.setInterval(_EVERY_MS)
        self._timer.timeout.connect(self.collect)
        self._timer.start()

    def collect(self) -> None:
        """Collects the youngest generations that are over their threshold, as Python itself would."""
        for generation in (2, 1, 0):
            if gc.get_count()[generation] > gc.get_threshold()[generation]:
                gc.collect(generation)
                return

    def stop(self) -> None:
        """The collector as it was before. May be called twice."""
        self._timer.stop()
        if self._was_on:
            gc.enable()
