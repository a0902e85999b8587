"""The menu that shows, hides and moves lanes, for those who do not drag."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

from growlog.desktop.board.lanes import BoardLane
from growlog.words import say


class LanesMenu(QMenu):
    """A tick for each lane that is shown; below, moving one up."""

    toggled = Signal(str, bool)
    moved_up = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("lanes-menu")
        self._up = QMenu(say("Move up"), self)
        self._up.setObjectName("lanes-move-up")
        self.triggered.connect(self._chosen)

    def show_lanes(self, lanes: Sequence[BoardLane], hidden: Sequence[str]) -> None:
        """Fills the menu with the lanes in their order."""
        self.clear()
        self._up.clear()
        for lane in lanes:
            action = self.addAction(lane.name())
            action.setObjectName(lane.key)
            action.setCheckable(True)
            action.setChecked(lane.key not in hidden)
            action.setData(("show", lane.key))
            self._up.addAction(lane.name()).setData(("up", lane.key))
        self.addSeparator()
        self.addMenu(self._up)

    def _chosen(self, action: QAction) -> None:
        what, key = action.data()
        if what == "show":
            self.toggled.emit(key, action.isChecked())
        else:
            self.moved_up.emit(key)
