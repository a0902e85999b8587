"""The cumulative yield on the board's axis: the crop's curve, another one under it, packet and first pick."""

import numpy as np
import pyqtgraph as pg
from PySide6.QtCore import QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QFrame, QWidget

from growlog.desktop.board import chart_items
from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.board.chart_head import ROOMY_PX, ChartHead
from growlog.desktop.board.chart_labels import ChartLabels, ChartSpace
from growlog.desktop.board.chart_surround import AgeLabels, paint_axis, paint_empty, paint_names, value_text
from growlog.desktop.board.curve_steps import (
    DrawnCurve,
    count_ticks,
    drawn_curve,
    point_at,
    value_of,
    value_on,
)
from growlog.desktop.board.outlook_layer import DrawnOutlook, drawn_outlook, outlook_items, tell_ahead
from growlog.desktop.board.weight_scale import weight_ticks
from growlog.desktop.board.wording import THIN, against_packet, fruit
from growlog.desktop.board.yield_chart_values import chart_of_yield
from growlog.desktop.charts import ChartData
from growlog.desktop.look.theme import current, theme_signal
from growlog.services.board import Board, Curve
from growlog.services.yield_view.outlook import Outlook
from growlog.words import say

AXIS_PX = 22
_TOP_PX = 10
_HEADROOM_PX = 40
_TICK_GAP_PX = 30
_FIRST_PICK_PX = 56  # how far above the ground its words begin


class YieldChart(QWidget):
    """Draws the yield. The mouse is its parent's business, but for the switch between weight and count."""

    unit_changed = Signal(str)
    outlook_toggled = Signal(bool)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._board: Board | None = None
        self._underlay: Curve | None = None
        self._outlook: Outlook | None = None
        self._axis = AgeAxis.over(0, 1)
        self._calendar = False
        self._highest = 1.0
        self._ticks: list[float] = [0.0]
        self.drawn: DrawnCurve | None = None
        self.underlaid: DrawnCurve | None = None
        self.ahead: DrawnOutlook | None = None
        self._labels = ChartLabels()
        self.plot = _calm_plot(self)
        self.head = ChartHead(self, self.chart_data)
        self.switch, self.strip, self.export_menu = self.head.switch, self.head.strip, self.head.export_menu
        self.switch.value_changed.connect(self._unit_chosen)
        self.strip.toggled.connect(self.outlook_toggled)
        theme_signal().changed.connect(self._draw)

    def show_board(self, board: Board) -> None:
        """Draws a crop's yield."""
        self._board = board
        self._draw()

    def set_underlay(self, curve: Curve | None) -> None:
        """Lays another crop's curve under it."""
        self._underlay = curve
        self._draw()

    def set_outlook(self, outlook: Outlook | None) -> None:
        """What is still to come of the crop shown, None for nothing."""
        self._outlook = outlook
        self.strip.show_outlook(outlook)
        self._draw()

    def forget_outlook(self) -> None:
        """Another crop is about to be shown: what was to come of the one before goes with it."""
        self._outlook = None

    def update_outlook(self) -> None:
        """Draws anew after the switch was used."""
        self._draw()

    @property
    def ahead_until(self) -> int | None:
        """The last plant age of what is to come, None where that is not shown."""
        outlook = self._outlook
        wanted = outlook is not None and self.strip.is_on and self.has_picks()
        return outlook.last_age if outlook is not None and wanted else None

    def chart_data(self) -> ChartData | None:
        """The chart as values, to be exported."""
        if self._board is None or not self.has_picks():
            return None
        outlook = self._outlook if self.ahead_until is not None else None
        return chart_of_yield(self._board, self._underlay, outlook, self.by_count)

    def set_axis(self, axis: AgeAxis, calendar: bool) -> None:
        """Shows other ages, or labels them differently."""
        if (axis, calendar) != (self._axis, self._calendar):
            self._axis, self._calendar = axis, calendar
            self._place_plot()
            self._draw()

    @property
    def by_count(self) -> bool:
        """Whether fruit are counted, not weighed."""
        return self.switch.value() == "count"

    def has_picks(self) -> bool:
        """Whether the crop has a curve."""
        return self._board is not None and bool(self._board.curve.points)

    def point_on(self, age: int) -> tuple[QPointF, str] | None:
        """Where the curve stands on a day, in pixels, and its words; None before the first pick."""
        if self._board is None:
            return None
        point = point_at(self._board.curve.points, age)
        if point is None or age > self._board.last_age:
            return None
        text = fruit(point.fruit_count, point.weight_g or None, point.is_estimate)
        return QPointF(self._axis.x(age), self._y(value_of(point, self.by_count))), text

    def tell(self, age: int) -> list[str]:
        """The yield of a day in words."""
        if self._board is None:
            return []
        if age > self._board.last_age:
            return tell_ahead(self._outlook, age) if self._outlook is not None else []
        point = point_at(self._board.curve.points, age)
        lines = [] if point is None else [fruit(point.fruit_count, point.weight_g or None, point.is_estimate)]
        if self._underlay is not None:
            other = point_at(self._underlay.points, age)
            if other is not None:
                words = fruit(other.fruit_count, other.weight_g or None, other.is_estimate)
                lines.append(f"{self._underlay.name}: {words}")
        return lines

    def axis_strip(self) -> QRect:
        """The strip with the axis labels, which can be dragged."""
        height = current().px(AXIS_PX)
        return QRect(0, self.height() - height, self.width(), height)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another size wants other ticks."""
        self._place_plot()
        self._draw()

    def paintEvent(self, event: QPaintEvent) -> None:
        """Names and labels around the plot."""
        look = current()
        painter = QPainter(self)
        painter.fillRect(event.rect(), look.colour("paper"))
        if event.rect().left() < self._axis.left:
            self._paint_names(painter)
        if event.rect().bottom() >= self.axis_strip().top():
            paint_axis(painter, self._age_labels(), self.axis_strip().top())
        if self._board is not None and self.drawn is None:
            paint_empty(painter, QRectF(self._plot_rect()))
        painter.end()

    def _plot_rect(self) -> QRect:
        top = current().px(_TOP_PX)
        height = max(self.height() - current().px(AXIS_PX) - top, 10)
        return QRect(round(self._axis.left), top, max(round(self._axis.width), 10), height)

    def _place_plot(self) -> None:
        self.plot.setGeometry(self._plot_rect())
        self.head.place(self._plot_rect())

    def _y(self, value: float) -> float:
        rect = self._plot_rect()
        return rect.top() + rect.height() * (1 - value / self._highest)

    def _unit_chosen(self, unit: str) -> None:
        self._draw()
        self.unit_changed.emit(unit)

    def _draw(self) -> None:
        self.plot.clear()
        if self._board is None:
            return
        curve = self._board.curve
        self.drawn = drawn_curve(curve.points, curve.last_age, self.by_count) if curve.points else None
        under = self._underlay
        self.underlaid = drawn_curve(under.points, under.last_age, self.by_count) if under and under.points else None
        outlook = self._outlook
        shown = outlook is not None and self.ahead_until is not None
        self.ahead = drawn_outlook(outlook, self._board, self.by_count) if outlook is not None and shown else None
        self.head.show_for(self.drawn is not None, outlook is not None and self._board.crop.growing)
        self._place_plot()
        self._scale()
        self._draw_rules()
        self._draw_underlay()
        for item in () if self.ahead is None else outlook_items(self.ahead, current()):
            self.plot.addItem(item)
        self._draw_curve()
        self._draw_labels()
        self.update()

    def _scale(self) -> None:
        rect = self._plot_rect()
        highest = max(float(d.whole.values[-1]) for d in (self.drawn, self.underlaid) if d) if self._any() else 0.0
        highest = max(highest, 0.0 if self.ahead is None else self.ahead.highest)
        headroom = current().px(_HEADROOM_PX) + self.head.extra_px
        room = max(rect.height() - headroom, rect.height() * 0.6)
        self._highest = (highest or 1.0) * rect.height() / max(room, 1)
        most = max(1, int(room / current().px(_TICK_GAP_PX)))
        make = count_ticks if self.by_count else weight_ticks
        self._ticks = make(highest, min(most, 6))
        self.plot.setXRange(self._axis.start, self._axis.end, padding=0)
        self.plot.setYRange(0, self._highest, padding=0)

    def _any(self) -> bool:
        return self.drawn is not None or self.underlaid is not None

    def _draw_rules(self) -> None:
        look = current()
        self.plot.addItem(chart_items.rules_at(self._ticks[1:], self._axis.lowest, self._axis.highest, look))

    def _draw_curve(self) -> None:
        if self.drawn is None:
            return
        look = current()
        self.plot.addItem(chart_items.fill_of(self.drawn.whole, look))
        self.plot.addItem(chart_items.line_of(self.drawn.sure_part(), chart_items.curve_pen(look, "pick", 2)))
        if self.drawn.has_estimate:
            self.plot.addItem(chart_items.hatching_of(self.drawn, look))
            dashed = chart_items.curve_pen(look, "pick", 2, Qt.PenStyle.DashLine)
            self.plot.addItem(chart_items.line_of(self.drawn.estimated_part(), dashed))

    def _draw_underlay(self) -> None:
        if self.underlaid is None or self._underlay is None:
            return
        look = current()
        self.plot.addItem(chart_items.line_of(self.underlaid.whole, chart_items.curve_pen(look, "mute", 1.3)))

    def _draw_labels(self) -> None:
        """First pick and packet first: they belong to a day, the others may stand anywhere along their curve."""
        space = ChartSpace(QRectF(self._plot_rect()), self._axis, self._highest)
        curves = [drawn for drawn in (self.drawn, self.underlaid) if drawn]
        self._labels.begin(space, curves, self.head.places())
        self._draw_first_pick(space)
        self._draw_packet()
        if self.underlaid is not None and self._underlay is not None:
            above = self._underlay_is_higher() or self.drawn is None
            self._labels.at_end(self.plot, (self._underlay.name, "", "mute"), self._end_point(self.underlaid), above)
        if self.drawn is not None and self.drawn.has_estimate and self.drawn.sure_until < self._axis.end:
            above = self.underlaid is not None and not self._underlay_is_higher()
            words = (say("partly estimated"), "", "mute")
            self._labels.at_end(self.plot, words, self._end_point(self.drawn), above)
        self._draw_ahead_label()

    def _draw_ahead_label(self) -> None:
        """What the band means, at its end."""
        band = None if self.ahead is None else self.ahead.band
        if band is None or band.ages[0] >= self._axis.end or self._plot_rect().height() < current().px(ROOMY_PX):
            return
        age = min(float(band.ages[-1]), self._axis.end)
        top = float(np.interp(age, band.ages, band.high))
        words = (say("in four cases out of five"), "", "mute")
        self._labels.at_end(self.plot, words, QPointF(self._axis.x(age), self._y(top)), True)

    def taken_places(self) -> list[QRectF]:
        """Where words and the switch stand, in pixels, so that nothing else is put over them."""
        return list(self._labels.taken)

    def covered_curve(self, box: QRectF) -> float:
        """What it costs to lie over a curve."""
        return self._labels.covered_curve(box)

    def plot_area(self) -> QRectF:
        """The plot in pixels."""
        return QRectF(self._plot_rect())

    def _below_heads(self, age: float) -> float:
        """The value up to which an upright line may go without crossing a switch or its words."""
        rect = self._plot_rect()
        lowest = self.head.bottom_at(self._axis.x(age))
        share = (rect.bottom() - max(lowest, rect.top())) / max(rect.height(), 1)
        return self._highest * share

    def _end_point(self, drawn: DrawnCurve) -> QPointF:
        age, value = self._end_of(drawn)
        return QPointF(self._axis.x(age), self._y(value))

    def _underlay_is_higher(self) -> bool:
        """Whether the other crop's curve ends above this one's, as far as is in view."""
        if self.underlaid is None or self.drawn is None:
            return False
        return self._end_of(self.underlaid)[1] >= self._end_of(self.drawn)[1]

    def _end_of(self, drawn: DrawnCurve) -> tuple[float, float]:
        age = min(float(drawn.whole.ages[-1]), self._axis.end)
        return age, value_on(drawn.whole, age)

    def _draw_packet(self) -> None:
        age = None if self._board is None else self._board.packet_maturity_age
        if age is None or not self._axis.start <= age <= self._axis.end:
            return
        pen = chart_items.curve_pen(current(), "mute", 1, Qt.PenStyle.DashLine)
        self.plot.addItem(chart_items.upright(age, self._below_heads(age), pen))
        text = say("packet maturity {days}", days=f"{age}{THIN}d")
        self._labels.beside_line(self.plot, (text, "", "mute"), age, self._plot_rect().top())

    def _draw_first_pick(self, space: ChartSpace) -> None:
        board = self._board
        if board is None or board.first_pick_age is None or self.drawn is None:
            return
        look, age = current(), board.first_pick_age
        if not self._axis.start <= age <= self._axis.end:
            return
        words = (say("first pick"), against_packet(age, board.packet_maturity_age), "ink")
        place = self._labels.beside_line(self.plot, words, age, space.area.bottom() - look.px(_FIRST_PICK_PX))
        top = space.value(place.top())
        self.plot.addItem(chart_items.upright(age, top, chart_items.curve_pen(look, "pick", 1)))

    def _paint_names(self, painter: QPainter) -> None:
        top = self._ticks[-1]
        paint_names(painter, self._axis.left, [(self._y(v), value_text(v, top, self.by_count)) for v in self._ticks])

    def _age_labels(self) -> AgeLabels:
        return AgeLabels(self._axis, self._board, self._calendar)

    def labelled_ages(self) -> list[int]:
        """The plant ages that carry a label."""
        return self._age_labels().ages()


def _calm_plot(parent: QWidget) -> pg.PlotWidget:
    """A plot that is only a picture: no menu, no buttons, no axes, no mouse."""
    plot = pg.PlotWidget(parent, background=None)
    plot.setObjectName("yield-plot")
    plot.setAttribute(Qt.WidgetAttribute.WA_TransparentForMouseEvents)
    plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    plot.setFrameShape(QFrame.Shape.NoFrame)
    plot.setStyleSheet("background: transparent; border: none;")
    item = plot.getPlotItem()
    item.setMenuEnabled(False)
    item.hideButtons()
    for side in ("left", "bottom", "right", "top"):
        item.hideAxis(side)
    item.layout.setContentsMargins(0, 0, 0, 0)
    item.setMouseEnabled(False, False)
    item.disableAutoRange()
    return plot
