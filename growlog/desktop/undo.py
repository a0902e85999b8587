"""Undo and redo of changes: each is written first, then remembered here; an undo is a change of its own."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from growlog.records.change import Change


class UndoStack(QObject):
    """What can be taken back and done again in this window. `undo_change` is the service that writes the inverse."""

    changed = Signal()
    written = Signal(object)  # the Change that an undo or a redo wrote

    def __init__(self, undo_change: Callable[[Change], Change], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._undo_change = undo_change
        self._done: list[Change] = []
        self._undone: list[Change] = []

    def push(self, change: Change) -> None:
        """A change that was just written; what had been undone can no longer be redone."""
        self._done.append(change)
        self._undone.clear()
        self.changed.emit()

    @property
    def undo_title(self) -> str:
        """What undo would take back, "" if nothing."""
        return self._done[-1].title if self._done else ""

    @property
    def redo_title(self) -> str:
        """What redo would do again, "" if nothing."""
        return self._undone[-1].title if self._undone else ""

    def undo(self) -> None:
        """Takes the last change back; what the service refuses stays where it is, and the refusal goes up."""
        self._move(self._done, self._undone)

    def redo(self) -> None:
        """Does the last undone change again."""
        self._move(self._undone, self._done)

    def _move(self, source: list[Change], target: list[Change]) -> None:
        if not source:
            return
        inverse = self._undo_change(source[-1])
        source.pop()
        target.append(inverse)
        self.written.emit(inverse)
        self.changed.emit()
