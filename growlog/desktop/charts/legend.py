"""The names of a chart's lines and bands above it, each beside a piece of itself."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter

from growlog.desktop.charts.chart_data import Band, ChartData, Line
from growlog.desktop.charts.pens import band_brush, line_pen
from growlog.desktop.look.theme import Look

_TEXT_PX = 11
_PIECE_PX, _GAP_PX, _BETWEEN_PX, _ROW_PX = 22, 6, 18, 18


def legend_height(width: float, data: ChartData, look: Look) -> float:
    """How high it is at a width."""
    rows = len(_rows(width, data, look))
    return rows * look.px(_ROW_PX)


def paint_legend(painter: QPainter, place: QRectF, data: ChartData, look: Look) -> None:
    """Paints it from the place's top left on, as wide as the place."""
    painter.setFont(look.font(_TEXT_PX))
    for number, row in enumerate(_rows(place.width(), data, look)):
        x, y = place.left(), place.top() + number * look.px(_ROW_PX)
        for part, width in row:
            _piece(painter, QRectF(x, y, look.px(_PIECE_PX), look.px(_ROW_PX)), part, look)
            painter.setPen(look.colour("ink"))
            text = QRectF(x + look.px(_PIECE_PX + _GAP_PX), y, width, look.px(_ROW_PX))
            painter.drawText(text, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, part.name)
            x += width + look.px(_BETWEEN_PX)


def _rows(width: float, data: ChartData, look: Look) -> list[list[tuple[Line | Band, float]]]:
    metrics = QFontMetricsF(look.font(_TEXT_PX))
    rows: list[list[tuple[Line | Band, float]]] = []
    x = width + 1.0
    for part in data.parts:
        if not part.name or not len(part.xs):
            continue
        own = look.px(_PIECE_PX + _GAP_PX) + metrics.horizontalAdvance(part.name) + 2
        if x + own > width:
            rows.append([])
            x = 0.0
        rows[-1].append((part, own))
        x += own + look.px(_BETWEEN_PX)
    return rows


def _piece(painter: QPainter, box: QRectF, part: Line | Band, look: Look) -> None:
    middle = box.center().y()
    if isinstance(part, Band):
        painter.fillRect(QRectF(box.left(), middle - 5, box.width(), 10), band_brush(look, part))
        return
    painter.setPen(line_pen(look, part))
    painter.drawLine(QPointF(box.left(), middle), QPointF(box.right(), middle))
