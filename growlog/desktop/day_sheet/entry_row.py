"""One entry of the day: its mark, what happened, the particulars, the time, and whose it is."""

from PySide6.QtCore import QPoint, QRectF, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFont,
    QFontMetrics,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QHBoxLayout, QMenu, QVBoxLayout, QWidget

from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.marks import MarkSign
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets.day_text import time_text
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.services.day_sheet import DayEntry
from growlog.words import say

_NARROW_PX = 210


class EntryRow(QWidget):
    """Enter or a double click corrects, Delete removes; the button with three dots offers both."""

    correct_wanted = Signal(str)
    remove_wanted = Signal(str)
    neighbour_wanted = Signal(int)

    def __init__(self, shown: DayEntry, writable: bool) -> None:
        super().__init__()
        self.shown = shown
        self._writable = writable
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.title_label = TextLabel("", "strong", wraps=True)
        self.more_label = TextLabel("", "small", wraps=True)
        self.warning_label = TextLabel("", "", "problem", wraps=True)
        self.mark_sign = MarkSign(shown.entry.kind)
        self._warning_line = QWidget()
        self.time_label = TextLabel("", "small")
        self.more_button = IconButton("more", say("Correct or remove"), self, token="mute")
        self.menu = QMenu(self)
        self.menu.addAction(say("Correct\u2026")).triggered.connect(self._correct)
        self.menu.addAction(say("Remove")).triggered.connect(self._remove)
        self._place()
        self.show_entry(shown)
        self.more_button.clicked.connect(self._open_menu)
        theme_signal().changed.connect(self.updateGeometry)

    def show_entry(self, shown: DayEntry) -> None:
        """Another entry from now on: rows are used again, since making one takes long while the day line is dragged."""
        self.shown = shown
        self.setObjectName(f"entry.{shown.entry.id}")
        self.mark_sign.set_kind(shown.entry.kind)
        self.title_label.setText(_unbroken(shown.title))
        self.time_label.setText(time_text(shown.entry.at))
        self.warning_label.setText(shown.warning)
        self._warning_line.setVisible(bool(shown.warning))
        self._fit_to_width()
        kind = say(shown.entry.detail.label)
        parts = (kind, shown.title, _second_line(shown), shown.warning, self.time_label.text())
        self.setAccessibleName(", ".join(p for p in parts if p))

    def set_writable(self, writable: bool) -> None:
        """Whether it can be corrected and removed."""
        self._writable = writable
        self.more_button.setVisible(writable)
        self._leave_room()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keeps the button in its corner; where it is narrow the time stands before the particulars."""
        super().resizeEvent(event)
        self.more_button.adjustSize()
        self.more_button.move(self.width() - self.more_button.width(), 2)
        self._fit_to_width()

    def _fit_to_width(self) -> None:
        narrow = self.width() < current().px(_NARROW_PX)
        at = self.time_label.text()
        self.time_label.setVisible(not narrow)
        self.more_label.setText(_second_line(self.shown, at if narrow else ""))
        self.more_label.setVisible(bool(self.more_label.text()))

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter corrects, Delete removes, up and down go to the rows beside."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._correct()
        elif event.key() == Qt.Key.Key_Delete:
            self._remove()
        elif event.key() in (Qt.Key.Key_Down, Qt.Key.Key_Up):
            self.neighbour_wanted.emit(1 if event.key() == Qt.Key.Key_Down else -1)
        else:
            super().keyPressEvent(event)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """Corrects."""
        self._correct()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The same menu as behind the button."""
        if self._writable:
            self.menu.popup(event.globalPos())

    def paintEvent(self, event: QPaintEvent) -> None:
        """A hairline below, an outline while it has the focus."""
        painter = QPainter(self)
        look = current()
        painter.fillRect(0, self.height() - 1, self.width(), 1, look.colour("rule"))
        if self.hasFocus():
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(look.colour("accent"), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -2), 6, 6)
        painter.end()

    def _place(self) -> None:
        row = QHBoxLayout(self)
        self._row = row
        self._leave_room()
        row.setSpacing(10)
        sign = _Raised(self.mark_sign)
        row.addWidget(sign, 0, Qt.AlignmentFlag.AlignTop)
        words = QVBoxLayout()
        words.setSpacing(3)
        words.addLayout(self._head())
        words.addWidget(self.more_label)
        self._lay_warning()
        words.addWidget(self._warning_line)
        row.addLayout(words, 1)
        self.more_button.setVisible(self._writable)

    def _leave_room(self) -> None:
        """Room at the right for the button, which lies over the corner."""
        self._row.setContentsMargins(6, 9, current().px(28) if self._writable else 4, 10)

    def _head(self) -> QHBoxLayout:
        head = QHBoxLayout()
        head.setSpacing(6)
        head.addWidget(self.title_label, 1)
        head.addWidget(self.time_label, 0, Qt.AlignmentFlag.AlignTop)
        return head

    def _lay_warning(self) -> None:
        row = QHBoxLayout(self._warning_line)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        row.addWidget(MarkSign("problem", 12), 0, Qt.AlignmentFlag.AlignTop)
        row.addWidget(self.warning_label, 1)

    def _open_menu(self) -> None:
        self.menu.popup(self.more_button.mapToGlobal(QPoint(0, self.more_button.height())))

    def _correct(self) -> None:
        if self._writable:
            self.correct_wanted.emit(self.shown.entry.id)

    def _remove(self) -> None:
        if self._writable:
            self.remove_wanted.emit(self.shown.entry.id)


class _Raised(QWidget):
    """Holds a mark level with the first line of words."""

    def __init__(self, sign: MarkSign) -> None:
        super().__init__()
        line_px = QFontMetrics(current().font(13, QFont.Weight.DemiBold)).height()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, max(0, (line_px - sign.sizeHint().height()) // 2), 0, 0)
        column.addWidget(sign)


def _second_line(shown: DayEntry, at: str = "") -> str:
    return " \u00b7 ".join(_unbroken(part) for part in (at, shown.belongs, shown.more) if part)


def _unbroken(words: str) -> str:
    """A line may not end inside a unit such as mL/L."""
    return words.replace("/", "/\u2060")
