"""The tray's rows for a table view: four columns, two lines each."""

from collections.abc import Sequence
from datetime import date
from typing import Any

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QPersistentModelIndex, Qt, Signal

from growlog.desktop.intake import wording
from growlog.desktop.intake.tray_model import Tray, TrayRow
from growlog.records.crop import Crop
from growlog.services.photo_intake import IntakeItem
from growlog.words import mark, say

PHOTO, DAY, CROP, FATE = range(4)
_TITLES = (mark("Photo"), mark("Day"), mark("Crop"), mark("What will happen"))
_NO_PARENT = QModelIndex()
Index = QModelIndex | QPersistentModelIndex


class TrayTable(QAbstractTableModel):
    """Shows a Tray. Both lines of a cell are its text, with a line break between, so that they are read out too."""

    changed_by_hand = Signal()
    refused_text = Signal(str)

    def __init__(self, tray: Tray, crops: Sequence[Crop]) -> None:
        super().__init__()
        self.tray = tray
        self.crops = {crop.id: crop for crop in crops}
        self.editable = True

    def rowCount(self, parent: Index = _NO_PARENT) -> int:
        """As many as there are files."""
        return 0 if parent.isValid() else len(self.tray.rows)

    def columnCount(self, parent: Index = _NO_PARENT) -> int:
        """Photo, day, crop, fate."""
        return 0 if parent.isValid() else len(_TITLES)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """The titles of the columns."""
        if orientation is Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return say(_TITLES[section])
        return None

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        """A cell's words; its value while it is edited; the whole sentence as its tool tip."""
        if not index.isValid():
            return None
        row = self.tray.rows[index.row()]
        if role == Qt.ItemDataRole.DisplayRole:
            return "\n".join(self._lines(row, index.column())).rstrip("\n")
        if role == Qt.ItemDataRole.ToolTipRole:
            return self._tool_tip(row, index.column())
        if role == Qt.ItemDataRole.EditRole:
            return {DAY: row.item.day, CROP: row.item.crop_id}.get(index.column())
        return None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Day and crop of a picture can be edited where they stand."""
        flags = super().flags(index)
        in_reach = index.isValid() and self.editable and index.column() in (DAY, CROP)
        if in_reach and self.tray.rows[index.row()].is_picture:
            flags |= Qt.ItemFlag.ItemIsEditable
        return flags

    def setData(self, index: Index, value: Any, role: int = Qt.ItemDataRole.EditRole) -> bool:
        """Takes a day or a crop's id for one row."""
        if role != Qt.ItemDataRole.EditRole or value is None or value == self.data(index, role):
            return False
        if index.column() == DAY and isinstance(value, date):
            self.tray.set_day([index.row()], value)
        elif index.column() == CROP:
            self.tray.set_crop([index.row()], str(value))
        else:
            return False
        self.show_changes()
        self.changed_by_hand.emit()
        return True

    def row_at(self, place: int) -> TrayRow:
        """One row of the tray."""
        return self.tray.rows[place]

    def add(self, items: Sequence[IntakeItem]) -> int:
        """Appends files that are not listed yet; returns how many were listed already."""
        fresh = self.tray.fresh(items)
        if fresh:
            first = len(self.tray.rows)
            self.beginInsertRows(QModelIndex(), first, first + len(fresh) - 1)
            self.tray.add(fresh)
            self.endInsertRows()
        return len(items) - len(fresh)

    def show_changes(self) -> None:
        """The rows are the same, their words may be others."""
        if self.tray.rows:
            self.dataChanged.emit(self.index(0, 0), self.index(len(self.tray.rows) - 1, len(_TITLES) - 1))

    def take_result(self, sent: Sequence[TrayRow], results: Sequence[IntakeItem], written: int) -> int:
        """Takes out what was written; returns how many files were refused on the way."""
        self.beginResetModel()
        refused = self.tray.take_result(sent, results, written)
        self.endResetModel()
        return refused

    def _lines(self, row: TrayRow, column: int) -> tuple[str, str]:
        crop = self.crops.get(row.item.crop_id or "")
        if column == PHOTO:
            return row.item.path.name, row.item.path.parent.name
        if column == DAY:
            return wording.day_words(row.item), wording.day_and_source(row.item, crop)
        if column == CROP:
            return self._crop_words(row, crop), ""
        return wording.fate_words(row), wording.reason_words(row)

    def _crop_words(self, row: TrayRow, crop: Crop | None) -> str:
        if not row.is_picture:
            return ""
        return say("choose a crop") if crop is None else crop.name

    def _tool_tip(self, row: TrayRow, column: int) -> str:
        if column == PHOTO:
            return str(row.item.path)
        return wording.reason_words(row) if column == FATE else ""
