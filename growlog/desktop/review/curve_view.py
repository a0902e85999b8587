"""The cumulative yield of the review by plant age, beside earlier crops and the packet."""

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFont, QFontMetrics, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from growlog.desktop.board.curve_steps import Steps, count_ticks, drawn_curve
from growlog.desktop.board.weight_scale import weight_ticks, weight_unit
from growlog.desktop.board.wording import number
from growlog.desktop.charts import ChartData, Line, Upright
from growlog.desktop.look.theme import current, theme_signal
from growlog.services.review.model import CropReview, ReviewCurve
from growlog.words import say

_HEIGHT_PX, _LEFT_PX, _TOP_PX, _BOTTOM_PX, _RIGHT_PX = 240, 56, 22, 24, 16
_EMPTY_PX = 120
_DASHES = (Qt.PenStyle.SolidLine, Qt.PenStyle.DashLine, Qt.PenStyle.DotLine)
_DASH_WORDS = ("dash", "dot", "dash-dot")
_AGE_STEPS = (7, 14, 28, 56)


class CurveView(QWidget):
    """A picture to look at; the same figures stand in the tables."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("reviewCurve")
        self._review: CropReview | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        theme_signal().changed.connect(self.updateGeometry)
        theme_signal().changed.connect(self.update)

    def show_review(self, review: CropReview) -> None:
        """Another crop."""
        self._review = review
        names = ", ".join([review.curve.name, *(crop.name for crop in review.earlier)])
        self.setAccessibleName(say("Cumulative yield by plant age: {names}", names=names))
        self.updateGeometry()
        self.update()

    def data(self) -> ChartData | None:
        """The curves as values, to be saved; None before there is a review."""
        review = self._review
        if review is None:
            return None
        curves = [review.curve, *(crop.curve for crop in review.earlier)]
        lines = [_line(curve, review.by_weight, number) for number, curve in enumerate(curves)]
        packet = [] if review.packet_age is None else [Upright(review.packet_age, say("packet maturity"))]
        measured = say("marketable yield so far, kg") if review.by_weight else say("marketable fruit so far")
        title = say("{crop}: cumulative yield", crop=review.curve.name)
        return ChartData(title, say("plant age, days"), measured, lines, (), packet, whole_y=not review.by_weight)

    def sizeHint(self) -> QSize:
        """As high as a curve can be read."""
        return QSize(current().px(400), self._wanted_height())

    def minimumSizeHint(self) -> QSize:
        """It may become narrow."""
        return QSize(current().px(240), self._wanted_height())

    def _wanted_height(self) -> int:
        """Less where there is nothing to draw."""
        review = self._review
        curves = [] if review is None else [review.curve, *(crop.curve for crop in review.earlier)]
        return current().px(_HEIGHT_PX if any(curve.points for curve in curves) else _EMPTY_PX)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Rules, curves, words."""
        if self._review is None:
            return
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        _Drawing(self._review, QRectF(self.rect()), painter).draw()
        painter.end()


def _line(curve: ReviewCurve, by_weight: bool, number: int) -> Line:
    """The curve's steps from day 0 to its last day."""
    values = [p.weight_g / 1000 if by_weight else float(p.fruit_count) for p in curve.points]
    ages = [0, *(p.age for p in curve.points), curve.last_age]
    heights = [0.0, *values, values[-1] if values else 0.0]
    token, dash = ("pick", "") if number == 0 else ("mute", _DASH_WORDS[(number - 1) % len(_DASH_WORDS)])
    return Line(curve.name, ages, heights, token, dash, steps=True)


class _Drawing:
    """One drawing of one review."""

    def __init__(self, review: CropReview, room: QRectF, painter: QPainter) -> None:
        self._review, self._painter, self._look = review, painter, current()
        px = self._look.px
        self._area = room.adjusted(px(_LEFT_PX), px(_TOP_PX), -px(_RIGHT_PX), -px(_BOTTOM_PX))
        self._by_count = not review.by_weight
        self._curves = [review.curve, *(crop.curve for crop in review.earlier)]
        self._last_age = max(1, *(curve.last_age for curve in self._curves))
        self._highest = self._top_value()

    def draw(self) -> None:
        """All of it, what matters most last."""
        self._draw_scale()
        self._draw_ages()
        self._draw_packet()
        if self._highest <= 0:
            self._say_empty()
        for curve, dash in zip(self._curves[1:], _DASHES, strict=False):
            self._draw_curve(curve, "mute", 1.4, dash)
        self._fill_own()
        self._draw_curve(self._review.curve, "pick", 2.2, Qt.PenStyle.SolidLine)
        self._name_others()

    def _top_value(self) -> float:
        return max((self._values(c).values[-1] for c in self._curves if c.points), default=0.0)

    def _values(self, curve: ReviewCurve) -> Steps:
        return drawn_curve(curve.points, curve.last_age, self._by_count).whole

    def _x(self, age: float) -> float:
        return self._area.left() + self._area.width() * age / self._last_age

    def _y(self, value: float) -> float:
        return self._area.bottom() - self._area.height() * value / (self._highest * 1.08 or 1.0)

    def _draw_scale(self) -> None:
        most = max(1, min(5, int(self._area.height() / self._look.px(32))))
        make = count_ticks if self._by_count else weight_ticks
        ticks = make(self._highest, most) if self._highest > 0 else [0.0]
        self._painter.setFont(self._look.font(11))
        for value in ticks:
            y = round(self._y(value)) + 0.5
            self._painter.setPen(QPen(self._look.colour("edge" if value == 0 else "rule"), 1))
            self._painter.drawLine(QPointF(self._area.left(), y), QPointF(self._area.right(), y))
            self._painter.setPen(self._look.colour("mute"))
            high = self._look.px(20)
            box = QRectF(0, y - high / 2, self._area.left() - self._look.px(8), high)
            right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
            self._painter.drawText(box, right, self._tick(value, ticks[-1]))

    def _tick(self, value: float, last: float) -> str:
        return number(value) if self._by_count or value == 0 else weight_unit(last).text(value)

    def _draw_ages(self) -> None:
        fitting = self._area.width() / self._look.px(44)
        step = next((s for s in _AGE_STEPS if self._last_age / s <= fitting), 112)
        self._painter.setFont(self._look.font(11))
        self._painter.setPen(self._look.colour("mute"))
        y = self._area.bottom() + self._look.px(4)
        height = self._look.px(16)
        for age in range(0, self._last_age + 1, step):
            box = QRectF(self._x(age) - 40, y, 80, height)
            self._painter.drawText(box, Qt.AlignmentFlag.AlignCenter, number(age))
        left = QRectF(0, y, self._area.left() - self._look.px(14), height)
        self._painter.drawText(left, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, say("day"))

    def _draw_packet(self) -> None:
        age = self._review.packet_age
        if age is None or age > self._last_age:
            return
        x = round(self._x(age)) + 0.5
        self._painter.setPen(QPen(self._look.colour("mute"), 1, Qt.PenStyle.DashLine))
        self._painter.drawLine(QPointF(x, 0), QPointF(x, self._area.bottom()))
        self._painter.setFont(self._look.font(11, QFont.Weight.DemiBold))
        words = say("packet maturity")
        width = QFontMetrics(self._painter.font()).horizontalAdvance(words) + 12
        left = x - width if x - width > self._area.left() else x
        box = QRectF(left, 0, width, self._look.px(16))
        self._painter.drawText(box, Qt.AlignmentFlag.AlignCenter, words)

    def _draw_curve(self, curve: ReviewCurve, token: str, thick: float, dash: Qt.PenStyle) -> None:
        if curve.points:
            self._painter.setPen(QPen(self._look.colour(token), thick * self._look.scale, dash))
            self._painter.setBrush(Qt.BrushStyle.NoBrush)
            self._painter.drawPath(self._path(curve))

    def _path(self, curve: ReviewCurve) -> QPainterPath:
        steps = self._values(curve)
        points = [QPointF(self._x(a), self._y(v)) for a, v in zip(steps.ages, steps.values, strict=True)]
        path = QPainterPath(points[0])
        for point in points[1:]:
            path.lineTo(point)
        return path

    def _fill_own(self) -> None:
        if not self._review.curve.points:
            return
        path = self._path(self._review.curve)
        end = path.currentPosition()
        path.lineTo(QPointF(end.x(), self._area.bottom()))
        path.lineTo(QPointF(self._area.left(), self._area.bottom()))
        tint = QColor(self._look.colour("pick"))
        tint.setAlphaF(0.12)
        self._painter.fillPath(path, tint)

    def _name_others(self) -> None:
        """The name of each earlier crop where its curve ends, no two over each other."""
        self._painter.setFont(self._look.font(11, QFont.Weight.DemiBold))
        self._painter.setPen(self._look.colour("mute"))
        taken: list[QRectF] = []
        for name, end in self._ends(self._curves[1:]):
            box = self._free_box(name, end, taken)
            taken.append(box)
            self._painter.drawText(box, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, name)

    def _ends(self, curves: Sequence[ReviewCurve]) -> Iterator[tuple[str, QPointF]]:
        for curve in curves:
            if curve.points:
                yield curve.name, self._path(curve).currentPosition()

    def _free_box(self, name: str, end: QPointF, taken: Sequence[QRectF]) -> QRectF:
        height = self._look.px(16)
        width = QFontMetrics(self._painter.font()).horizontalAdvance(name) + 4
        right = max(end.x(), self._area.left() + width)
        box = QRectF(right - width, end.y() - height - 2, width, height)
        while any(box.intersects(other) for other in taken) and box.bottom() < self._area.bottom():
            box.translate(0, height + 4)
        return box

    def _say_empty(self) -> None:
        self._painter.setFont(self._look.font())
        self._painter.setPen(self._look.colour("mute"))
        words = say("Nothing marketable was picked, so there is no curve.")
        flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
        taken = self._painter.boundingRect(self._area, flags, words).adjusted(-8, -4, 8, 4)
        self._painter.fillRect(taken, self._look.colour("paper"))
        self._painter.drawText(self._area, flags, words)
