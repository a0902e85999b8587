"""A table of words and numbers to read, search and choose from."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QSize, Qt, Signal
from PySide6.QtGui import QBrush, QColor, QFont, QPainter, QPixmap, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import dress_table

Index = QModelIndex | QPersistentModelIndex
_NO_PARENT = QModelIndex()
_LEAST_PX, _NUMBER_PX = 130, 104  # of a column that shares what is left


@dataclass(frozen=True)
class Column:
    """A column. numbers: right-aligned. width_px: at 100 % text; 0: it shares what is left."""

    title: str
    numbers: bool = False
    width_px: int = 0
    tip: str = ""


@dataclass(frozen=True)
class Row:
    """A row: its key, a text for each column, a swatch before the first, and how it stands out."""

    key: str
    cells: tuple[str, ...]
    swatch: QBrush | None = None
    bold: bool = False
    mute: bool = False
    tip: str = ""


class _Model(QAbstractTableModel):
    def __init__(self, columns: Sequence[Column]) -> None:
        super().__init__()
        self.columns = tuple(columns)
        self.rows: tuple[Row, ...] = ()

    def show(self, rows: Sequence[Row]) -> None:
        self.beginResetModel()
        self.rows = tuple(rows)
        self.endResetModel()

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        return 0 if parent.isValid() else len(self.columns)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        if orientation is not Qt.Orientation.Horizontal:
            return None
        column = self.columns[section]
        if role == Qt.ItemDataRole.DisplayRole:
            return column.title
        if role == Qt.ItemDataRole.ToolTipRole:
            return column.tip or column.title
        return _side(column) if role == Qt.ItemDataRole.TextAlignmentRole else None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        if not index.isValid():
            return None
        row, column = self.rows[index.row()], index.column()
        if role == Qt.ItemDataRole.DisplayRole:
            return row.cells[column]
        if role == Qt.ItemDataRole.ToolTipRole:
            return row.tip or row.cells[column]
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _side(self.columns[column])
        return _dress(row, column, role)


class PlainTable(QTableView):
    """Rows to read; the chosen row's key is told, and told again when it is opened (Enter or double click)."""

    row_chosen = Signal(str)
    row_opened = Signal(str)

    def __init__(self, columns: Sequence[Column], words: str, name: str, most_rows: int = 0) -> None:
        """words: what a screen reader calls it. most_rows: as high as its rows up to so many; 0: takes what is left."""
        super().__init__()
        self.setObjectName(name)
        self.setAccessibleName(words)
        self._most_rows = most_rows
        self._model = _Model(columns)
        self.setModel(self._model)
        dress_table(self)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setTabKeyNavigation(False)
        header = self.horizontalHeader()
        for place, column in enumerate(columns):
            header.setSectionResizeMode(place, QHeaderView.ResizeMode.Interactive)
            if column.width_px:
                self.setColumnWidth(place, current().px(column.width_px))
        header.setMinimumSectionSize(current().px(48))
        self.selectionModel().currentRowChanged.connect(self._row_changed)
        self.activated.connect(self._opened)

    def show_rows(self, rows: Sequence[Row]) -> None:
        """Other rows; the chosen one stays chosen where it is still there."""
        chosen = self.chosen_key()
        self._model.show(rows)
        keys = [row.key for row in rows]
        if chosen in keys:
            self.choose(chosen)
        self.updateGeometry()

    def rows(self) -> tuple[Row, ...]:
        """What is shown."""
        return self._model.rows

    def chosen_key(self) -> str:
        """The key of the chosen row, "" for none."""
        index = self.currentIndex()
        return self._model.rows[index.row()].key if index.isValid() and index.row() < len(self._model.rows) else ""

    def choose(self, key: str) -> None:
        """Chooses a row by its key."""
        for number, row in enumerate(self._model.rows):
            if row.key == key:
                self.selectRow(number)
                return

    def resizeEvent(self, event: QResizeEvent) -> None:
        """What is left over goes to the columns without a width, but no less than they need to be read."""
        super().resizeEvent(event)
        free = [i for i, c in enumerate(self._model.columns) if not c.width_px and not self.isColumnHidden(i)]
        taken = sum(self.columnWidth(i) for i, c in enumerate(self._model.columns) if c.width_px)
        for place in free:
            least = current().px(_NUMBER_PX if self._model.columns[place].numbers else _LEAST_PX)
            self.setColumnWidth(place, max(least, (self.viewport().width() - taken) // len(free)))

    def sizeHint(self) -> QSize:
        """As high as its rows, where it is to be."""
        hint = super().sizeHint()
        if not self._most_rows:
            return hint
        return QSize(hint.width(), self._height(min(max(len(self._model.rows), 1), self._most_rows)))

    def minimumSizeHint(self) -> QSize:
        """A few rows at least."""
        hint = super().minimumSizeHint()
        least = min(max(len(self._model.rows), 1), self._most_rows or 4)
        return QSize(current().px(200), max(hint.height(), self._height(least)))

    def _height(self, rows: int) -> int:
        bars = self.horizontalHeader().sizeHint().height() + 2 * self.frameWidth() + 2
        return bars + rows * self.verticalHeader().defaultSectionSize()

    def _row_changed(self, now: QModelIndex, _before: QModelIndex) -> None:
        if now.isValid():
            self.row_chosen.emit(self._model.rows[now.row()].key)

    def _opened(self, index: QModelIndex) -> None:
        self.row_opened.emit(self._model.rows[index.row()].key)


def _dress(row: Row, column: int, role: int) -> Any:
    """How a row stands out."""
    if role == Qt.ItemDataRole.FontRole and row.bold:
        return current().font(weight=QFont.Weight.DemiBold)
    if role == Qt.ItemDataRole.ForegroundRole and row.mute:
        return QColor(current().colour("mute"))
    if role == Qt.ItemDataRole.DecorationRole and column == 0 and row.swatch is not None:
        return swatch(row.swatch)
    return None


def swatch(brush: QBrush) -> QPixmap:
    """A small field of a brush, with a hairline round it."""
    side = current().px(12)
    picture = QPixmap(side, side)
    picture.fill(current().colour("card"))
    painter = QPainter(picture)
    painter.setPen(current().colour("edge"))
    painter.setBrush(brush)
    painter.drawRect(0, 0, side - 1, side - 1)
    painter.end()
    return picture


def _side(column: Column) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if column.numbers else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter
