"""One thing that is due: a box to tick, what it is, for which crop, and how late."""

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QEnterEvent,
    QFocusEvent,
    QKeyEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QAbstractButton, QHBoxLayout, QSizePolicy, QVBoxLayout

from growlog.desktop.crop_list.wording import due_more, due_spoken, due_title, unbroken
from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import Ground, TextLabel
from growlog.services.due import DueItem
from growlog.words import say

_BOX_PX = 14
_LEFT_PX = 8
_MENU_KEYS = (Qt.Key.Key_Right, Qt.Key.Key_Menu)
_STEPS = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class DueRow(QAbstractButton):
    """Space, Enter or a click does it; the right arrow, the menu key or the three dots offer the other answers."""

    done = Signal(str)
    menu_wanted = Signal(str, object)
    step_wanted = Signal(str, int)
    height_changed = Signal()

    def __init__(self, item: DueItem, writable: bool) -> None:
        super().__init__()
        self.item = item
        self.setObjectName(f"due.{item.key}")
        self.setAccessibleName(due_spoken(item))
        self.setToolTip(f"{due_spoken(item)}\n{item.why}")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setEnabled(writable)
        self.title_label = TextLabel(due_title(item), wraps=True)
        self.more_label = TextLabel(
            unbroken(due_more(item), item.crop_name), "small", "" if item.late_days else "mute", wraps=True
        )
        self.dots = Ground("rail", self)  # lies over the end of the words while the mouse or the keys are here
        self.more_button = IconButton("more", say("Put off, leave out and more"), token="mute")
        self.more_button.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the right arrow opens the same menu
        self.dots.hide()
        self._place()
        self.clicked.connect(self._clicked)
        self.more_button.clicked.connect(self._menu_by_button)
        theme_signal().changed.connect(self._leave_room)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter does it, the arrows go on or open the menu; the rest is as of any button."""
        key = Qt.Key(event.key())
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        elif key in _MENU_KEYS:
            self.menu_wanted.emit(self.item.key, self.mapToGlobal(QPoint(self.width() // 2, self.height())))
        elif key in _STEPS:
            self.step_wanted.emit(self.item.key, _STEPS[key])
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The right button of the mouse."""
        self.menu_wanted.emit(self.item.key, event.globalPos())

    def enterEvent(self, event: QEnterEvent) -> None:
        """The dots come."""
        super().enterEvent(event)
        self._show_dots()

    def leaveEvent(self, event: QEvent) -> None:
        """The dots go."""
        super().leaveEvent(event)
        self._show_dots()

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The dots come with the keys, too."""
        super().focusInEvent(event)
        self._show_dots()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """The dots go."""
        super().focusOutEvent(event)
        self._show_dots()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """As high as its words want at this width; the dots at the right end."""
        super().resizeEvent(event)
        self._fit()

    def paintEvent(self, event: QPaintEvent) -> None:
        """The box, pressed while the mouse or the space bar is down; a frame while the keys go here."""
        look = current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self.hasFocus():
            painter.setPen(QPen(look.colour("accent"), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 6, 6)
        side = look.px(_BOX_PX)
        box = QRectF(_LEFT_PX + 0.5, look.px(6) + 0.5, side, side)
        painter.setPen(QPen(look.colour("edge" if self.isEnabled() else "rule"), 1))
        painter.setBrush(look.colour("soft" if self.isDown() else "card"))
        painter.drawRoundedRect(box, 3, 3)
        if self.isDown():
            _paint_tick(painter, box)
        painter.end()

    def _place(self) -> None:
        self._column = QVBoxLayout(self)
        self._column.setSpacing(0)
        for label in (self.title_label, self.more_label):
            label.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
            self._column.addWidget(label)
        row = QHBoxLayout(self.dots)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self.more_button)
        self._leave_room()

    def _leave_room(self) -> None:
        look = current()
        self._column.setContentsMargins(_LEFT_PX + look.px(_BOX_PX) + 8, look.px(4), 4, look.px(4))
        self._fit()

    def _fit(self) -> None:
        self.dots.adjustSize()
        self.dots.move(self.width() - self.dots.width() - 4, 4)
        wanted = self._column.totalHeightForWidth(max(self.width(), 1))
        if wanted != self.height():
            self.setFixedHeight(wanted)
            self.height_changed.emit()
        self._column.setGeometry(self.rect())  # at once: it would keep the lines it had at the width before

    def _show_dots(self) -> None:
        self.dots.raise_()
        self.dots.setVisible(self.isEnabled() and (self.hasFocus() or self.underMouse()))

    def _clicked(self) -> None:
        self.done.emit(self.item.key)

    def _menu_by_button(self) -> None:
        below = QPoint(0, self.more_button.height())
        self.menu_wanted.emit(self.item.key, self.more_button.mapToGlobal(below))


def _paint_tick(painter: QPainter, box: QRectF) -> None:
    painter.setPen(QPen(current().colour("accent"), 2))
    middle = QPointF(box.left() + box.width() * 0.42, box.bottom() - box.height() * 0.28)
    painter.drawLine(QPointF(box.left() + box.width() * 0.22, box.center().y()), middle)
    painter.drawLine(middle, QPointF(box.right() - box.width() * 0.2, box.top() + box.height() * 0.28))
