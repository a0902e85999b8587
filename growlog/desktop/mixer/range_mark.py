"""A value on a numbered range: a dot inside it, a hollow diamond outside it."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QSizePolicy, QWidget

from growlog.desktop.explanation.figure_words import value_text
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.tokens import blend

_LABEL_PX = 10
_BEYOND = 1.4  # how far the line goes beyond the range, so that a miss is seen as one
_BEYOND_VALUE = 1.08


class RangeMark(QWidget):
    """Draws one range from 0 on, with its ends in numbers, and where a value lies. The words stand beside it."""

    def __init__(self) -> None:
        super().__init__()
        self.value: float | None = None
        self.low: float | None = None
        self.high: float | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        theme_signal().changed.connect(self.updateGeometry)
        theme_signal().changed.connect(self.update)

    def show_value(self, value: float | None, low: float | None, high: float | None) -> None:
        """A value and its range; None: not known, or open to that side."""
        self.value, self.low, self.high = value, low, high
        self.update()

    @property
    def is_outside(self) -> bool:
        """Whether the value lies outside its range."""
        if self.value is None:
            return False
        slack = 1e-9 * max(self.value, 1.0)
        return (self.low is not None and self.value < self.low - slack) or (
            self.high is not None and self.value > self.high + slack
        )

    def sizeHint(self) -> QSize:
        """High enough for the mark and the numbers below it."""
        look = current()
        return QSize(look.px(220), look.px(30))

    def minimumSizeHint(self) -> QSize:
        """It may become narrow."""
        look = current()
        return QSize(look.px(90), look.px(30))

    def end_of_line(self) -> float:
        """The value at the right end of the line."""
        ends = [e * _BEYOND for e in (self.low, self.high) if e is not None]
        return max([*ends, (self.value or 0.0) * _BEYOND_VALUE, 1e-9])

    def x_of(self, value: float) -> float:
        """Where a value lies, in pixels of the widget."""
        side = current().px(8)
        return side + (self.width() - 2 * side) * min(1.0, max(0.0, value / self.end_of_line()))

    def paintEvent(self, event: QPaintEvent) -> None:
        """The line, the range with its numbers, and the mark."""
        if self.low is None and self.high is None:
            return
        look, painter = current(), QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        middle = look.px(10)
        painter.setPen(QPen(look.colour("rule"), look.px(2)))
        painter.drawLine(QPointF(self.x_of(0), middle), QPointF(self.width() - look.px(8), middle))
        left = self.x_of(self.low or 0.0)
        right = self.width() - look.px(8) if self.high is None else self.x_of(self.high)
        band = QRectF(left, middle - look.px(3), max(right - left, 2.0), look.px(6))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(_band_colour())
        painter.drawRect(band)
        self._paint_numbers(painter, left, right)
        if self.value is not None:
            self._paint_mark(painter, QPointF(self.x_of(self.value), middle))
        painter.end()

    def _paint_numbers(self, painter: QPainter, left: float, right: float) -> None:
        look = current()
        font = look.font(_LABEL_PX)
        painter.setFont(font)
        painter.setPen(look.colour("mute"))
        metrics = QFontMetricsF(font)
        low = "" if self.low is None else value_text(self.low)
        high = "" if self.high is None else value_text(self.high)
        low_at, high_at = left - metrics.horizontalAdvance(low) / 2, right - metrics.horizontalAdvance(high) / 2
        overlap = low_at + metrics.horizontalAdvance(low) + look.px(6) - high_at
        if low and high and overlap > 0:
            low_at, high_at = low_at - overlap / 2, high_at + overlap / 2
        base = self.height() - metrics.descent() - 1
        for text, at in ((low, low_at), (high, high_at)):
            room = self.width() - metrics.horizontalAdvance(text)
            painter.drawText(QPointF(min(max(0.0, at), room), base), text)

    def _paint_mark(self, painter: QPainter, at: QPointF) -> None:
        look = current()
        if not self.is_outside:
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look.colour("ink"))
            painter.drawEllipse(at, look.px(5), look.px(5))
            return
        reach = look.px(6)
        corners = [QPointF(0, -reach), QPointF(reach, 0), QPointF(0, reach), QPointF(-reach, 0)]
        painter.setPen(QPen(look.colour("problem"), look.px(2)))
        painter.setBrush(look.colour("paper"))
        painter.drawPolygon(QPolygonF([at + corner for corner in corners]))


def _band_colour() -> QColor:
    palette = current().palette
    return QColor(blend(palette.paper, palette.accent, 0.6))
