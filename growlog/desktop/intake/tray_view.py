"""The table of the tray: rows of one height, columns that share the width, keys for what is done most."""

from collections.abc import Sequence

from PySide6.QtCore import QItemSelection, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QAbstractItemView, QHeaderView, QTableView

from growlog.desktop.intake.row_paint import ROW_PX, RowPainter
from growlog.desktop.intake.tray_table import TrayTable
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.tokens import blend
from growlog.desktop.look.widgets.table_dress import dress_table
from growlog.desktop.pictures import Pictures
from growlog.records.crop import Crop
from growlog.words import say

_FIGURES = "123456789"
_SHARES = (0.29, 0.26, 0.15, 0.3)


class TrayView(QTableView):
    """One or many rows are chosen with shift, ctrl or Ctrl+A; Delete leaves them out."""

    chosen_changed = Signal()
    leave_out_pressed = Signal()
    figure_pressed = Signal(int)  # 1 to 9

    def __init__(self, table: TrayTable, pictures: Pictures, crops: Sequence[Crop]) -> None:
        super().__init__()
        self.setObjectName("trayTable")
        self.setAccessibleName(say("Photos in the tray"))
        self.setModel(table)
        self.setItemDelegate(RowPainter(pictures, crops, self))
        self.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
        self.setTabKeyNavigation(False)
        triggers = QAbstractItemView.EditTrigger
        self.setEditTriggers(triggers.DoubleClicked | triggers.EditKeyPressed)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
        theme_signal().changed.connect(self._dress)
        self._dress()

    def chosen_places(self) -> list[int]:
        """The places of the chosen rows, in order."""
        ranges = self.selectionModel().selection()  # selectedRows() would ask every cell for its flags
        parts = [ranges.at(number) for number in range(ranges.count())]
        return sorted({place for part in parts for place in range(part.top(), part.bottom() + 1)})

    def picture_arrived(self) -> None:
        """A small picture can now be drawn; which row shows it is not worth looking for."""
        self.viewport().update()

    def selectionChanged(self, selected: QItemSelection, deselected: QItemSelection) -> None:
        """Tells when other rows are chosen."""
        super().selectionChanged(selected, deselected)
        self.chosen_changed.emit()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Delete and Backspace leave the chosen rows out, or take them back in; a figure names their crop."""
        if event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.leave_out_pressed.emit()
            return
        if event.text() in _FIGURES and event.text():
            self.figure_pressed.emit(int(event.text()))
            return
        super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Shares the width among the columns."""
        super().resizeEvent(event)
        width = self.viewport().width()
        for column, share in enumerate(_SHARES):
            self.setColumnWidth(column, int(width * share))

    def _dress(self) -> None:
        dress_table(self)
        look = current()
        self.verticalHeader().setDefaultSectionSize(look.px(ROW_PX))
        self.setMinimumHeight(look.px(ROW_PX) * 3)
        palette = self.palette()
        tint = QColor(blend(look.palette.card, look.palette.accent, 0.12))
        palette.setColor(QPalette.ColorRole.Highlight, tint)
        self.setPalette(palette)
