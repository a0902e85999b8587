"""A chart on the screen, painted by the same hand as the one that is exported."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from growlog.desktop.charts.chart_data import ChartData
from growlog.desktop.charts.paint import paint_chart
from growlog.desktop.look.theme import current, theme_signal
from growlog.words import say


class ChartView(QWidget):
    """Shows one chart, or a sentence where there is nothing to draw."""

    def __init__(self, name: str, least_height_px: int = 220) -> None:
        super().__init__()
        self.setObjectName(name)
        self._least = least_height_px
        self._empty = ""
        self.data: ChartData | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        theme_signal().changed.connect(self._redraw)
        self._redraw()

    def show_chart(self, data: ChartData | None, empty: str = "") -> None:
        """Another chart; empty: the sentence that stands where there is none."""
        self.data, self._empty = data, empty
        self.setAccessibleName(empty if data is None else data.title)
        self.setAccessibleDescription("" if data is None else ". ".join(data.notes))
        self.update()

    def sizeHint(self) -> QSize:
        """Wider than high."""
        return QSize(current().px(560), current().px(self._least + 80))

    def paintEvent(self, event: QPaintEvent) -> None:
        """The chart, or why there is none."""
        painter = QPainter(self)
        look = current()
        if self.data is None or self.data.is_empty:
            painter.setPen(look.colour("mute"))
            painter.setFont(look.font())
            flags = int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap)
            painter.drawText(QRectF(self.rect()).adjusted(24, 8, -24, -8), flags, self._sentence())
        else:
            paint_chart(painter, QRectF(self.rect()), self.data, look)
        painter.end()

    def _sentence(self) -> str:
        return self._empty or say("Nothing to draw yet.")

    def _redraw(self) -> None:
        self.setMinimumHeight(current().px(self._least))
        self.update()
