"""The table of all facts, a column for each crop; the best is marked by a star and bold figures."""

from collections.abc import Sequence
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, QSortFilterProxyModel, Qt, Signal
from PySide6.QtGui import QFont
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from growlog.calculations.explained_figure import Figure
from growlog.desktop.explanation.figure_words import range_text, value_text
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import dress_table
from growlog.services.side_by_side.facts_table import FactRow, number_of
from growlog.words import say

Index = QModelIndex | QPersistentModelIndex
SORT_ROLE = Qt.ItemDataRole.UserRole
_NO_PARENT = QModelIndex()
_BEST = "★"
_BEFORE = 2  # columns before the crops: group and fact


class FactsModel(QAbstractTableModel):
    """Rows are facts, columns are crops."""

    def __init__(self) -> None:
        super().__init__()
        self.names: list[str] = []
        self.rows: list[FactRow] = []

    def show(self, names: Sequence[str], rows: Sequence[FactRow]) -> None:
        """Other crops."""
        self.beginResetModel()
        self.names, self.rows = list(names), list(rows)
        self.endResetModel()

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """One for each fact."""
        return 0 if parent.isValid() else len(self.rows)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Group, fact, crops, and which way is better."""
        return 0 if parent.isValid() else len(self.names) + _BEFORE + 1

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The titles."""
        if orientation is not Qt.Orientation.Horizontal:
            return None
        if role == Qt.ItemDataRole.TextAlignmentRole and 0 <= section - _BEFORE < len(self.names):
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        if role != Qt.ItemDataRole.DisplayRole:
            return None
        return [say("Group"), say("Fact"), *self.names, say("Better")][section]

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """Words, marks, and what is sorted by."""
        if not index.isValid():
            return None
        row, crop = self.rows[index.row()], index.column() - _BEFORE
        is_crop = 0 <= crop < len(self.names)
        if role == SORT_ROLE:
            return self._sort_value(row, index)
        if is_crop:
            return self._crop_data(row, crop, role)
        shown = (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole)
        return _words(row, index.column()) if role in shown else None

    def _crop_data(self, row: FactRow, crop: int, role: int) -> Any:
        if role == Qt.ItemDataRole.DisplayRole:
            return self._crop_text(row, crop)
        if role == Qt.ItemDataRole.ToolTipRole:
            return range_text(row.figures[crop]) or row.words
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        if role == Qt.ItemDataRole.FontRole and crop in row.best:
            return current().font(weight=QFont.Weight.DemiBold)
        return None

    def _crop_text(self, row: FactRow, crop: int) -> str:
        figure = row.figures[crop]
        text = "–" if figure.value is None else value_text(figure.value, row.unit)
        return f"{_BEST} {text}" if crop in row.best else text

    def _sort_value(self, row: FactRow, index: Index) -> Any:
        crop = index.column() - _BEFORE
        if index.column() == 0:
            return float(index.row())  # the families' own order
        if 0 <= crop < len(self.names):
            number = number_of(row.figures[crop].value)
            return float("-inf") if number is None else number
        return _words(row, index.column()).casefold()


class FactsView(QTableView):
    """Sorted by a click on a title; opening a row explains its figures."""

    explain_wanted = Signal(list, list)  # figures, names of their crops

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("factsTable")
        self.setAccessibleName(say("All facts of the crops; Enter shows how a row is worked out"))
        self.facts = FactsModel()
        self._sorted = QSortFilterProxyModel(self)
        self._sorted.setSourceModel(self.facts)
        self._sorted.setSortRole(SORT_ROLE)
        self.setModel(self._sorted)
        dress_table(self)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setSortingEnabled(True)
        self.sortByColumn(0, Qt.SortOrder.AscendingOrder)
        self.setMinimumHeight(current().px(260))
        self.activated.connect(self._opened)

    def show_rows(self, names: Sequence[str], rows: Sequence[FactRow]) -> None:
        """Other crops or facts."""
        self.facts.show(names, rows)
        header = self.horizontalHeader()
        header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
        header.setMinimumSectionSize(current().px(90))

    def shown(self) -> list[list[str]]:
        """The cells as they stand, row by row."""
        columns = range(self._sorted.columnCount())
        return [[str(self._sorted.index(r, c).data()) for c in columns] for r in range(self._sorted.rowCount())]

    def _opened(self, index: QModelIndex) -> None:
        row = self.facts.rows[self._sorted.mapToSource(index).row()]
        figures: list[Figure] = [f for f in row.figures if f.value is not None]
        names = [n for n, f in zip(self.facts.names, row.figures, strict=True) if f.value is not None]
        self.explain_wanted.emit(figures, names)


def _words(row: FactRow, column: int) -> str:
    if column == 0:
        return row.family
    if column == 1:
        return row.words
    return "" if row.better is None else say(row.better.label)
