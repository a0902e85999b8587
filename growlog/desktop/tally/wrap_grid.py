"""Cells of one width side by side, as many to a row as there is room; hidden ones leave no gap."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QWidget

from growlog.desktop.look.theme import current, theme_signal

_MOST_COLUMNS = 5


class WrapGrid(QWidget):
    """Call relay() after cells were shown or hidden."""

    def __init__(self, narrowest_px: int) -> None:
        super().__init__()
        self._narrowest_px = narrowest_px
        self._cells: list[QWidget] = []
        self._laid: tuple[int, list[QWidget]] = (0, [])
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(16)
        self._grid.setVerticalSpacing(12)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        theme_signal().changed.connect(self.relay)

    def add(self, *cells: QWidget) -> None:
        """Appends cells."""
        self._cells += cells
        for cell in cells:
            cell.setParent(self)
        self.relay()

    def relay(self) -> None:
        """Lays the cells out anew where the width or what is hidden asks for it."""
        shown = [cell for cell in self._cells if not cell.testAttribute(Qt.WidgetAttribute.WA_WState_ExplicitShowHide)
                 or not cell.isHidden()]  # fmt: skip
        narrowest = current().px(self._narrowest_px)
        columns = max(1, min(_MOST_COLUMNS, (self.width() + 16) // (narrowest + 16)))
        if (columns, shown) == self._laid:
            return
        self._laid = (columns, shown)
        while self._grid.count():
            self._grid.takeAt(0)
        for place, cell in enumerate(shown):
            self._grid.addWidget(cell, place // columns, place % columns, Qt.AlignmentFlag.AlignTop)
        for column in range(_MOST_COLUMNS):
            self._grid.setColumnStretch(column, 1 if column < columns else 0)

    def minimumSizeHint(self) -> QSize:
        """As narrow as its widest cell."""
        widest = max((cell.minimumSizeHint().width() for cell in self._laid[1]), default=0)
        return QSize(widest, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width may hold more or fewer to a row."""
        super().resizeEvent(event)
        self.relay()
