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

    @property
    def next_undo(self) -> Change | None:
        """The change that undo would take back."""
        return self._done[-1] if self._done else None

    @property
    def next_redo(self) -> Change | None:
        """The change that redo would take back, itself an undo."""
        return self._undone[-1] if self._undone else None

    def settle(self, change: Change, inverse: Change) -> None:
        """A change was taken back elsewhere: its inverse stands on the other side from now on."""
        source, target = (self._done, self._undone) if change in self._done else (self._undone, self._done)
        if change in source:
            source.remove(change)
        target.append(inverse)
        self.written.emit(inverse)
        self.changed.emit()

    def undo(self) -> None:
        """Takes the last change back; what the service refuses stays where it is, and the refusal goes up."""
        self._move(self.next_undo)

    def redo(self) -> None:
        """Does the last undone change again."""
        self._move(self.next_redo)

    def _move(self, change: Change | None) -> None:
        if change is not None:
            self.settle(change, self._undo_change(change))
