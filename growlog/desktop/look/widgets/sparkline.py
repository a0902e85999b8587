"""A small step curve without axes, as it stands beside a crop in the list."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QSize
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from growlog.desktop.look.theme import current, theme_signal


class Sparkline(QWidget):
    """Draws a growing sum over days as steps on a ground line. It is a picture only: the figures stand beside it."""

    def __init__(self, width_px: int = 64, height_px: int = 32) -> None:
        super().__init__()
        self._width_px = width_px
        self._height_px = height_px
        self._steps: tuple[tuple[float, float], ...] = ()
        self._last_x = 1.0
        self._top = 1.0
        self._token = "mute"
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        theme_signal().changed.connect(self.updateGeometry)
        theme_signal().changed.connect(self.update)

    def show_steps(
        self,
        steps: Sequence[tuple[float, float]],
        last_x: float,
        top: float | None = None,
        token: str = "mute",
    ) -> None:
        """steps: x and the sum from there on, in order of x. last_x: where the line ends. top: the highest sum."""
        self._steps = tuple(steps)
        self._last_x = max(last_x, 1e-9)
        highest = top if top is not None else max((y for _, y in steps), default=0.0)
        self._top = highest if highest > 0 else 1.0
        self._token = token
        self.update()

    def sizeHint(self) -> QSize:
        """Its size at the present text size."""
        look = current()
        return QSize(look.px(self._width_px), look.px(self._height_px))

    def curve(self) -> QPainterPath:
        """The steps in pixels of the widget."""
        ground = self.height() - 2.0
        path = QPainterPath(QPointF(1, ground))
        y_before = ground
        for x_value, total in self._steps:
            x = 1 + (self.width() - 2) * min(1.0, x_value / self._last_x)
            y = ground - (self.height() - 4) * min(1.0, total / self._top)
            path.lineTo(x, y_before)
            path.lineTo(x, y)
            y_before = y
        path.lineTo(self.width() - 1, y_before)
        return path

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws the ground line and the steps over it."""
        look = current()
        painter = QPainter(self)
        painter.setPen(QPen(look.colour("rule"), 1))
        painter.drawLine(1, self.height() - 2, self.width() - 1, self.height() - 2)
        painter.setPen(QPen(look.colour(self._token), 1.5 * look.scale))
        painter.drawPath(self.curve())
        painter.end()
