"""Paints a chart into any rectangle: a widget, a picture or a drawing."""

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPainterPath, QPen

from growlog.desktop.charts.chart_data import Band, ChartData, Line
from growlog.desktop.charts.legend import legend_height, paint_legend
from growlog.desktop.charts.pens import band_brush, line_pen
from growlog.desktop.charts.ticks import number_words, round_steps
from growlog.desktop.look.theme import Look

TEXT_PX = 11
_TICK_GAP_PX, _LABEL_GAP_PX = 34, 64


@dataclass(frozen=True)
class Plot:
    """The area that is drawn in, and what it shows."""

    area: QRectF
    x_low: float
    x_high: float
    y_low: float
    y_high: float

    def x(self, value: float) -> float:
        """The pixel of an x."""
        return self.area.left() + self.area.width() * (value - self.x_low) / (self.x_high - self.x_low)

    def y(self, value: float) -> float:
        """The pixel of a y."""
        return self.area.bottom() - self.area.height() * (value - self.y_low) / (self.y_high - self.y_low)

    def x_value(self, pixel: float) -> float:
        """The x at a pixel."""
        return self.x_low + (pixel - self.area.left()) / self.area.width() * (self.x_high - self.x_low)


def paint_chart(painter: QPainter, rect: QRectF, data: ChartData, look: Look, titled: bool = False) -> Plot:
    """Draws everything and says where; titled: with the title above and the notes below, for a picture on its own."""
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    inner = _around(painter, rect, data, look) if titled else rect
    plot, ticks = _plot_of(inner, data, look)
    _paint_axes(painter, plot, ticks, data, look)
    painter.save()
    painter.setClipRect(plot.area.adjusted(-1, -1, 1, 1))
    for band in data.bands:
        _paint_band(painter, plot, band, look)
    for line in data.lines:
        _paint_line(painter, plot, line, look)
    painter.restore()
    _paint_uprights(painter, plot, data, look)
    paint_legend(painter, QRectF(inner.left(), inner.top(), inner.width(), 0), data, look)
    return plot


def _around(painter: QPainter, rect: QRectF, data: ChartData, look: Look) -> QRectF:
    """The title and the notes; what is left between them."""
    inner = rect.adjusted(look.px(20), look.px(16), -look.px(20), -look.px(14))
    painter.setFont(look.font(15, QFont.Weight.DemiBold))
    painter.setPen(look.colour("ink"))
    title = _words(painter, inner, data.title)
    painter.setFont(look.font(TEXT_PX))
    painter.setPen(look.colour("mute"))
    text = "\n".join(data.notes)
    height = _height(painter, inner.width(), text)
    _words(painter, QRectF(inner.left(), inner.bottom() - height, inner.width(), height), text)
    below = height + look.px(8) if text else 0
    return inner.adjusted(0, title + look.px(10), 0, -below)


def _words(painter: QPainter, box: QRectF, text: str) -> float:
    flags = int(Qt.AlignmentFlag.AlignLeft) | int(Qt.AlignmentFlag.AlignTop) | int(Qt.TextFlag.TextWordWrap)
    height = _height(painter, box.width(), text)
    painter.drawText(QRectF(box.left(), box.top(), box.width(), height + 2), flags, text)
    return height


def _height(painter: QPainter, width: float, text: str) -> float:
    if not text:
        return 0.0
    flags = int(Qt.TextFlag.TextWordWrap)
    return QFontMetricsF(painter.font()).boundingRect(QRectF(0, 0, width, 1000), flags, text).height()


def _plot_of(rect: QRectF, data: ChartData, look: Look) -> tuple[Plot, list[float]]:
    metrics = QFontMetricsF(look.font(TEXT_PX))
    row = metrics.height()
    (x_low, x_high), (y_low, y_high) = data.x_bounds(), data.y_bounds()
    top = rect.top() + legend_height(rect.width(), data, look) + look.px(8)
    bottom = rect.bottom() - 2 * row - look.px(12)
    height = max(bottom - top, 20.0)
    most = max(2, int(height / look.px(_TICK_GAP_PX)))
    room = 0.06 * (y_high - y_low or 1.0)
    ticks = round_steps(y_low, y_high + room, most, data.whole_y)
    widest = max((metrics.horizontalAdvance(t) for t in number_words(ticks)), default=0.0)
    left = rect.left() + row + look.px(6) + widest + look.px(8)
    width = max(rect.right() - left - look.px(10), 20.0)
    lowest = y_low - room if y_low < 0 else min(y_low, min(ticks))
    plot = Plot(QRectF(left, top, width, height), x_low, x_high, lowest, y_high + room)
    return plot, ticks


def _paint_axes(painter: QPainter, plot: Plot, ticks: list[float], data: ChartData, look: Look) -> None:
    area, px = plot.area, look.px
    painter.setFont(look.font(TEXT_PX))
    row = QFontMetricsF(painter.font()).height()
    right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
    for value, text in zip(ticks, number_words(ticks), strict=True):
        y = plot.y(value)
        painter.setPen(QPen(look.colour("edge" if value == 0 else "rule"), 1))
        painter.drawLine(QPointF(area.left(), y), QPointF(area.right(), y))
        painter.setPen(look.colour("mute"))
        painter.drawText(QRectF(area.left() - 200, y - row / 2, 200 - px(6), row), right, text)
    painter.setPen(QPen(look.colour("edge"), 1))
    painter.drawLine(area.bottomLeft(), area.bottomRight())
    _paint_x_ticks(painter, plot, data, look, row)
    painter.setPen(look.colour("ink"))
    title = QRectF(area.left(), area.bottom() + px(8) + row, area.width(), row + 2)
    painter.drawText(title, Qt.AlignmentFlag.AlignCenter, data.x_title)
    painter.save()
    widest = max(QFontMetricsF(painter.font()).horizontalAdvance(t) for t in number_words(ticks))
    painter.translate(area.left() - px(14) - widest - row, area.center().y())
    painter.rotate(-90)
    painter.drawText(QRectF(-area.height() / 2 - 60, 0, area.height() + 120, row + 2), Qt.AlignmentFlag.AlignCenter,
                     data.y_title)  # fmt: skip
    painter.restore()


def _paint_x_ticks(painter: QPainter, plot: Plot, data: ChartData, look: Look, row: float) -> None:
    values = x_ticks(plot, data, look)
    texts = number_words(values) if data.x_text is None else [data.x_text(v) for v in values]
    for value, text in zip(values, texts, strict=True):
        x = plot.x(value)
        painter.setPen(QPen(look.colour("edge"), 1))
        painter.drawLine(QPointF(x, plot.area.bottom()), QPointF(x, plot.area.bottom() + look.px(4)))
        painter.setPen(look.colour("mute"))
        box = QRectF(x - 80, plot.area.bottom() + look.px(6), 160, row)
        painter.drawText(box, Qt.AlignmentFlag.AlignCenter, text)


def x_ticks(plot: Plot, data: ChartData, look: Look) -> list[float]:
    """Days are labelled in whole days; weeks where there are many."""
    most = max(2, int(plot.area.width() / look.px(_LABEL_GAP_PX)))
    span = plot.x_high - plot.x_low
    step = next((s for s in (1, 2, 7, 14, 28, 56, 112) if span / s <= most), max(1, round(span / most)))
    first = -(-plot.x_low // step)
    return [n * step for n in range(int(first), int(plot.x_high // step) + 1)]


def _paint_band(painter: QPainter, plot: Plot, band: Band, look: Look) -> None:
    if not len(band.xs):
        return
    upper = _points(plot, band.xs, band.high, band.steps)
    lower = _points(plot, band.xs, band.low, band.steps)
    path = QPainterPath(upper[0])
    for point in [*upper[1:], *reversed(lower)]:
        path.lineTo(point)
    path.closeSubpath()
    painter.fillPath(path, band_brush(look, band))


def _paint_line(painter: QPainter, plot: Plot, line: Line, look: Look) -> None:
    if not len(line.xs):
        return
    points = _points(plot, line.xs, line.ys, line.steps)
    path = QPainterPath(points[0])
    for point in points[1:]:
        path.lineTo(point)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.strokePath(path, line_pen(look, line))
    if len(points) == 1:
        painter.setBrush(look.colour(line.token))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.drawEllipse(points[0], look.px(3), look.px(3))


def _points(plot: Plot, xs: Sequence[float], ys: Sequence[float], steps: bool) -> list[QPointF]:
    points: list[QPointF] = []
    for x, y in zip(xs, ys, strict=True):
        at = QPointF(plot.x(x), plot.y(y))
        if steps and points:
            points.append(QPointF(at.x(), points[-1].y()))
        points.append(at)
    return points


def _paint_uprights(painter: QPainter, plot: Plot, data: ChartData, look: Look) -> None:
    painter.setFont(look.font(TEXT_PX))
    metrics = QFontMetricsF(painter.font())
    top = plot.area.top()
    shown = [m for m in data.uprights if plot.area.left() - 1 <= plot.x(m.x) <= plot.area.right() + 1]
    for mark in shown:
        x = plot.x(mark.x)
        painter.setPen(QPen(look.colour(mark.token), 1.2 * look.scale, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(x, plot.area.top()), QPointF(x, plot.area.bottom()))
    for mark in shown:  # words after all lines, so that none is crossed out
        x = plot.x(mark.x)
        width = metrics.horizontalAdvance(mark.words) + 2
        left = x + look.px(4)
        if left + width > plot.area.right():
            left = x - look.px(4) - width
        painter.setPen(look.colour("ink"))
        box = QRectF(left, top, width, metrics.height())
        painter.fillRect(box, _veil(look))
        painter.drawText(box, Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignVCenter, mark.words)
        top += metrics.height() + 2


def _veil(look: Look) -> QColor:
    colour = QColor(look.colour("card"))
    colour.setAlphaF(0.75)
    return colour
