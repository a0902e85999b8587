"""The rows of a plan for a table view; only what is seen is put into words."""

from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor

from growlog.desktop.look.theme import current
from growlog.desktop.old_notes import wording
from growlog.services.old_notes.import_plan import ImportPlan, PlannedRow, RowOutcome
from growlog.words import mark, say

LINE, DAY, BECOMES, REMARK = range(4)
_TITLES = (mark("Line"), mark("Day"), mark("Becomes"), mark("Note or reason"))
_NO_PARENT = QModelIndex()
Index = QModelIndex | QPersistentModelIndex
ALL, IN, OUT = "all", "in", "out"


class PreviewModel(QAbstractTableModel):
    """All rows, those that go in, or those that stay out."""

    def __init__(self) -> None:
        super().__init__()
        self._plan: ImportPlan | None = None
        self._rows: tuple[PlannedRow, ...] = ()
        self._which = ALL

    def show_plan(self, plan: ImportPlan | None, which: str = ALL) -> None:
        """Another plan, or other rows of it."""
        self.beginResetModel()
        self._plan, self._which = plan, which
        rows = () if plan is None else plan.rows
        if which == IN:
            rows = tuple(r for r in rows if r.outcome is RowOutcome.GOES_IN)
        elif plan is not None and which == OUT:
            rows = plan.refused
        self._rows = rows
        self.endResetModel()

    def row_at(self, place: int) -> PlannedRow:
        """One of the rows shown."""
        return self._rows[place]

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """As many as are of the chosen sort."""
        return 0 if parent.isValid() else len(self._rows)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Line, day, what it becomes, note or reason."""
        return 0 if parent.isValid() else len(_TITLES)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The titles of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return say(_TITLES[section])
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(section)
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """A cell's words; the row as written in the tool tip."""
        if not index.isValid():
            return None
        row = self._rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return self._words(row, index.column())
        if role == Qt.ItemDataRole.ToolTipRole:
            return self._tool_tip(row, index.column())
        if role == Qt.ItemDataRole.TextAlignmentRole:
            return _alignment(index.column())
        if (
            role == Qt.ItemDataRole.ForegroundRole
            and row.outcome is not RowOutcome.GOES_IN
            and index.column() != REMARK
        ):
            return QColor(current().colour("mute"))
        return None

    def _words(self, row: PlannedRow, column: int) -> str:
        if column == LINE:
            return str(row.line)
        if column == DAY:
            return wording.day_words(row)
        return wording.becomes(row) if column == BECOMES else wording.remark(row)

    def _tool_tip(self, row: PlannedRow, column: int) -> str:
        if column == LINE:
            return say("As written: {cells}", cells=wording.as_written(row))
        return self._words(row, column)


def _alignment(column: int) -> Qt.AlignmentFlag:
    side = Qt.AlignmentFlag.AlignRight if column == LINE else Qt.AlignmentFlag.AlignLeft
    return side | Qt.AlignmentFlag.AlignVCenter
