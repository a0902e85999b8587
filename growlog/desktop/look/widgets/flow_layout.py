"""A row that breaks into further rows where the room ends; a gap pushes what follows to the right."""

from PySide6.QtCore import QPoint, QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QWidget


class FlowLayout(QLayout):
    """Places widgets one after the other. After add_gap() the rest of a row stands at its right end."""

    def __init__(self, parent: QWidget | None = None, spacing_px: int = 8) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self._gap_at: int | None = None
        self.setSpacing(spacing_px)
        self.setContentsMargins(0, 0, 0, 0)

    def add_gap(self) -> None:
        """What is added from now on stands at the right."""
        self._gap_at = len(self._items)

    def addItem(self, item: QLayoutItem) -> None:
        """Qt's way in."""
        self._items.append(item)

    def insert_before_gap(self, widget: QWidget) -> None:
        """Adds a widget at the end of the left part."""
        self.addWidget(widget)
        if self._gap_at is not None:
            self._items.insert(self._gap_at, self._items.pop())
            self._gap_at += 1

    def count(self) -> int:
        """How many items there are."""
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        """One item, or None beyond the end."""
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        """Takes one item out."""
        if not 0 <= index < len(self._items):
            return None
        if self._gap_at is not None and index < self._gap_at:
            self._gap_at -= 1
        return self._items.pop(index)

    def expandingDirections(self) -> Qt.Orientation:
        """It does not ask for more room than it needs."""
        return Qt.Orientation(0)

    def hasHeightForWidth(self) -> bool:
        """Narrower means higher."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of all rows at a width."""
        return self._place(QRect(0, 0, width, 0), move=False)

    def setGeometry(self, rect: QRect) -> None:
        """Places the items."""
        super().setGeometry(rect)
        self._place(rect, move=True)

    def sizeHint(self) -> QSize:
        """All in one row."""
        sizes = [item.sizeHint() for item in self._shown()]
        width = sum(size.width() for size in sizes) + self.spacing() * max(0, len(sizes) - 1)
        return self._with_margins(QSize(width, max((size.height() for size in sizes), default=0)))

    def minimumSize(self) -> QSize:
        """The widest item alone."""
        sizes = [item.minimumSize() for item in self._shown()]
        width = max((size.width() for size in sizes), default=0)
        return self._with_margins(QSize(width, max((size.height() for size in sizes), default=0)))

    def _with_margins(self, size: QSize) -> QSize:
        margins = self.contentsMargins()
        return size + QSize(margins.left() + margins.right(), margins.top() + margins.bottom())

    def _shown(self) -> list[QLayoutItem]:
        return [item for item in self._items if not item.isEmpty()]

    def _place(self, rect: QRect, move: bool) -> int:
        margins = self.contentsMargins()
        area = rect.marginsRemoved(margins)
        top = area.top()
        for row in self._rows(area.width()):
            height = max(_height(item, size) for item, size in row)
            if move:
                self._place_row(row, area, top, height)
            top += height + self.spacing()
        return max(0, top - self.spacing() - rect.top()) + margins.bottom()

    def _rows(self, width: int) -> list[list[tuple[QLayoutItem, QSize]]]:
        rows: list[list[tuple[QLayoutItem, QSize]]] = []
        used = 0
        for item in self._shown():
            size = item.sizeHint().boundedTo(QSize(max(1, width), 100_000))
            if rows and used + self.spacing() + size.width() <= width:
                rows[-1].append((item, size))
                used += self.spacing() + size.width()
            else:
                rows.append([(item, size)])
                used = size.width()
        return rows

    def _place_row(self, row: list[tuple[QLayoutItem, QSize]], area: QRect, top: int, height: int) -> None:
        used = sum(size.width() for _, size in row) + self.spacing() * (len(row) - 1)
        free = max(0, area.width() - used)
        after_gap = self._items[self._gap_at :] if self._gap_at is not None else []
        left, pushed = area.left(), False
        for item, size in row:
            if not pushed and item in after_gap:
                left, pushed = left + free, True
            own = _height(item, size)
            item.setGeometry(QRect(QPoint(left, top + (height - own) // 2), QSize(size.width(), own)))
            left += size.width() + self.spacing()


def _height(item: QLayoutItem, size: QSize) -> int:
    return item.heightForWidth(size.width()) if item.hasHeightForWidth() else size.height()
