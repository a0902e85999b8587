"""One crop in the list: name, plant age, yield so far and its small curve."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFocusEvent,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QGridLayout, QWidget

from growlog.desktop.crop_list import wording
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import ElidedLabel, Sparkline
from growlog.services.crops import CropSummary

_LEFT_PX, _RIGHT_PX = 16, 10
_CURVE_PX = 56
_SHORTEST_CURVE_PX = 20
_STEPS = {Qt.Key.Key_Up: -1, Qt.Key.Key_Down: 1}


class CropCard(QWidget):
    """Chosen with the mouse, Enter or the space bar; up and down ask for the card before or after."""

    pressed = Signal(str)
    step_wanted = Signal(str, int)
    menu_wanted = Signal(str, object)

    def __init__(self, summary: CropSummary, chosen: bool) -> None:
        super().__init__()
        self.summary = summary
        self._chosen = chosen
        self.setObjectName(f"crop.{summary.crop.name}")
        self.setAccessibleName(wording.spoken(summary))
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.name_label = ElidedLabel(summary.crop.name, "strong")
        self.age_label = ElidedLabel(wording.age_line(summary), "small")
        self.yield_label = ElidedLabel(wording.yield_line(summary), "strong")
        self.sparkline = Sparkline(_CURVE_PX, 30)
        self._place()
        self._draw_curve()

    @property
    def crop_id(self) -> str:
        """Whose card it is."""
        return self.summary.crop.id

    @property
    def is_chosen(self) -> bool:
        """Whether it is the crop on the board."""
        return self._chosen

    def set_chosen(self, chosen: bool) -> None:
        """Marks it as the crop on the board, or takes the mark away."""
        if chosen != self._chosen:
            self._chosen = chosen
            self._draw_curve()
            self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The left button chooses."""
        if event.button() == Qt.MouseButton.LeftButton:
            self.pressed.emit(self.crop_id)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrow keys go on, Enter and space choose."""
        key = Qt.Key(event.key())
        if key in _STEPS:
            self.step_wanted.emit(self.crop_id, _STEPS[key])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.pressed.emit(self.crop_id)
        else:
            super().keyPressEvent(event)

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """Right button or menu key."""
        self.menu_wanted.emit(self.crop_id, event.globalPos())

    def focusInEvent(self, event: QFocusEvent) -> None:
        """Shows the frame."""
        super().focusInEvent(event)
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Takes the frame away."""
        super().focusOutEvent(event)
        self.update()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The figures come first: the curve takes what room they leave."""
        super().resizeEvent(event)
        words = max(_text_width(self.age_label), _text_width(self.yield_label))
        free = self.width() - _LEFT_PX - _RIGHT_PX - words - 8
        look = current()
        self.sparkline.setVisible(free >= look.px(_SHORTEST_CURVE_PX))
        self.sparkline.setFixedWidth(max(1, min(look.px(_CURVE_PX), free)))

    def paintEvent(self, event: QPaintEvent) -> None:
        """White with a bar of the action colour where chosen; a frame where the keys are."""
        look = current()
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        area = self.rect().adjusted(6, 1, -1, -1)
        if self._chosen:
            painter.setPen(QPen(look.colour("rule"), 1))
            painter.setBrush(look.colour("card"))
            painter.drawRoundedRect(area, 6, 6)
            painter.fillRect(0, 1, 3, self.height() - 2, look.colour("accent"))
        if self.hasFocus():
            painter.setPen(QPen(look.colour("accent"), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(area.adjusted(1, 1, -1, -1), 6, 6)
        painter.end()

    def _place(self) -> None:
        look = current()
        grid = QGridLayout(self)
        grid.setContentsMargins(_LEFT_PX, look.px(7), _RIGHT_PX, look.px(7))
        grid.setHorizontalSpacing(8)
        grid.setVerticalSpacing(0)
        grid.addWidget(self.name_label, 0, 0, 1, 2)
        grid.addWidget(self.age_label, 1, 0)
        grid.addWidget(self.yield_label, 2, 0)
        grid.addWidget(self.sparkline, 1, 1, 2, 1, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        grid.setColumnStretch(0, 1)

    def _draw_curve(self) -> None:
        points = self.summary.curve
        weighed = any(point.weight_g for point in points)
        steps = [(float(p.age), p.weight_g if weighed else float(p.fruit_count)) for p in points]
        token = "pick" if self._chosen else "mute"
        self.sparkline.show_steps(steps, max(1, self.summary.age_days), token=token)


def _text_width(label: ElidedLabel) -> int:
    label.ensurePolished()
    return label.fontMetrics().horizontalAdvance(label.text()) + 2
