"""Fields side by side in columns; fewer columns where there is less room."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QSizePolicy, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets.field import Field

NARROWEST_PX = 150


class FormGrid(QWidget):
    """Lays fields out in up to `columns` columns, each at least `narrowest_px` wide at 100 % text."""

    def __init__(self, columns: int = 3, narrowest_px: int = NARROWEST_PX) -> None:
        super().__init__()
        self._columns = columns
        self._narrowest_px = narrowest_px
        self._laid = 0
        self._items: list[tuple[QWidget, int]] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(16)
        self._grid.setVerticalSpacing(12)
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)

    def add(self, *widgets: QWidget, span: int = 1) -> None:
        """Appends fields; span is how many columns each takes where there is room."""
        self._items += [(widget, span) for widget in widgets]
        self._lay_out(self._fitting())

    def fields(self) -> list[Field]:
        """The fields in their order."""
        return [widget for widget, _ in self._items if isinstance(widget, Field)]

    def minimumSizeHint(self) -> QSize:
        """As narrow as its widest field, since it can always fall to one column."""
        hint = super().minimumSizeHint()
        widest = max((widget.minimumSizeHint().width() for widget, _ in self._items), default=0)
        return QSize(widest, hint.height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Changes the number of columns where the width asks for it."""
        super().resizeEvent(event)
        if self._fitting() != self._laid:
            self._lay_out(self._fitting())

    def _fitting(self) -> int:
        room = (self.width() + 16) // (current().px(self._narrowest_px) + 16)
        return max(1, min(self._columns, room))

    def _lay_out(self, columns: int) -> None:
        while self._grid.count():
            self._grid.takeAt(0)
        row = column = 0
        for widget, span in self._items:
            span = min(span, columns)
            if column + span > columns:
                row, column = row + 1, 0
            self._grid.addWidget(widget, row, column, 1, span, Qt.AlignmentFlag.AlignTop)
            column += span
        for place in range(self._columns):
            self._grid.setColumnStretch(place, 1 if place < columns else 0)
        self._laid = columns


class FieldRow(QWidget):
    """A few fields in one row, each as wide as it needs, the rest left free."""

    def __init__(self, *widgets: QWidget) -> None:
        super().__init__()
        self.layout_ = QHBoxLayout(self)
        self.layout_.setContentsMargins(0, 0, 0, 0)
        self.layout_.setSpacing(16)
        for widget in widgets:
            self.layout_.addWidget(widget, 0, Qt.AlignmentFlag.AlignTop)
        self.layout_.addStretch(1)


def check_all(fields: list[Field]) -> bool:
    """Lets every field judge itself, goes to the first that is refused, and says whether all are fit."""
    refused = [field for field in fields if not field.check()]
    if refused:
        refused[0].setFocus(Qt.FocusReason.OtherFocusReason)
    return not refused
