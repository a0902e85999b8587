"""Lanes and chart on one axis, with the day line across them; takes all of the mouse and the keys."""

from PySide6.QtCore import QEvent, QPoint, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.board.lanes_view import LanesView
from growlog.desktop.board.overlay import HoverBox, Overlay
from growlog.desktop.board.wording import day_and_month, short_day, weekday_and_day
from growlog.desktop.board.yield_chart import YieldChart
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.pictures import Pictures
from growlog.services.board import Board, Curve
from growlog.services.yield_view.outlook import Outlook
from growlog.words import say

_CHART_SHARE = 0.42
_CHART_LEAST_PX = 152
_NAMES_SHARE = 0.36
_RIGHT_PX = 14
_ZOOM_STEP = 1.25
_PAN_PX = 60
_MOST_HOVER_LINES = 12
_STEPS = {
    Qt.Key.Key_Left: -1,
    Qt.Key.Key_Right: 1,
    Qt.Key.Key_PageUp: -7,
    Qt.Key.Key_PageDown: 7,
}


class Surface(QWidget):
    """The board below its header."""

    age_chosen = Signal(int)
    entry_chosen = Signal(str)
    lane_order_changed = Signal(list)

    def __init__(self, pictures: Pictures, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("board-surface")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setMouseTracking(True)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.lanes = LanesView(pictures, self)
        self.chart = YieldChart(self)
        self.overlay = Overlay(self)
        self.hover = HoverBox(self)
        self.axis = AgeAxis.over(0, 1)
        self.board: Board | None = None
        self.age = 0
        self._first = 0
        self.calendar = False
        self._dragging = ""
        self._drag_x = 0.0
        self._drag_lane = ""
        self._wheel_rest = 0.0
        self.chart.unit_changed.connect(self._show_line)
        self.chart.outlook_toggled.connect(self._outlook_toggled)
        theme_signal().changed.connect(self.lay_out)

    def show_board(self, board: Board, age: int) -> None:
        """Another crop, or the same one after a change: then what is in view stays in view."""
        again = self.board is not None and self.board.crop.id == board.crop.id
        if not again:
            self.chart.forget_outlook()
        whole = AgeAxis.over(first_age(board), self._last_shown(board))
        was = self.axis
        self.board, self._first = board, first_age(board)
        self.age = self._within(age, board)
        self.axis = whole.placed(was.left, was.width)
        if again and not was.is_whole:
            self.axis = self.axis.showing_what(was)
        self.lanes.show_board(board)
        self.chart.show_board(board)
        self.lay_out()

    def set_day(self, age: int) -> None:
        """Moves the day line; nothing else is painted anew unless the day was out of view."""
        if self.board is None:
            return
        self.age = self._within(age, self.board)
        self._set_axis(self.axis.showing(self.age))
        self._show_line()

    def set_underlay(self, curve: Curve | None) -> None:
        """Lays another crop's curve under the yield."""
        self.chart.set_underlay(curve)
        self._show_line()

    def set_outlook(self, outlook: Outlook | None) -> None:
        """What is still to come of the crop shown; the axis reaches to its end."""
        self.chart.set_outlook(outlook)
        self._reach_ahead()

    def set_calendar(self, calendar: bool) -> None:
        """Labels by dates or by plant age."""
        self.calendar = calendar
        self.chart.set_axis(self.axis, calendar)
        self._show_line()

    def zoom(self, factor: float, about_x: float | None = None) -> None:
        """Closer or farther, about a pixel or else about the day line."""
        self._set_axis(self.axis.zoomed(factor, self.axis.x(self.age) if about_x is None else about_x))
        self._show_line()

    def fit(self) -> None:
        """The whole crop in view."""
        self._set_axis(self.axis.fitted())
        self._show_line()

    def lay_out(self) -> None:
        """Gives lanes, chart and overlay their places; asks for more height where they need it."""
        least_chart = round(_CHART_LEAST_PX * (1 + (current().scale - 1) * 0.5))
        least, natural = self.lanes.least_height(), self.lanes.natural_height()
        self.setMinimumHeight(least + least_chart)
        height = max(self.height(), least + least_chart)
        chart = max(least_chart, round(height * _CHART_SHARE))
        lanes = max(least, min(natural, height - chart))
        left = min(self.lanes.names_width(), round(self.width() * _NAMES_SHARE))
        self.axis = self.axis.placed(left, self.width() - left - _RIGHT_PX)
        self.lanes.setGeometry(0, 0, self.width(), lanes)
        self.chart.setGeometry(0, lanes, self.width(), height - lanes)
        self.overlay.setGeometry(0, 0, self.width(), height)
        self.overlay.raise_()
        self.lanes.set_axis(self.axis)
        self.chart.set_axis(self.axis, self.calendar)
        self._show_line()

    def day_label(self) -> str:
        """What the day line says of itself."""
        if self.calendar and self.board is not None:
            return short_day(self.board.date_of(self.age))
        return say("day {age}", age=self.age)

    def told_day(self) -> list[str]:
        """All that is known of the day at the line."""
        return self.lanes.tell(self.age) + self.chart.tell(self.age)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Places everything anew."""
        self.lay_out()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Arrows step a day, page keys a week; + - 0 zoom."""
        key = Qt.Key(event.key())
        if self.board is None:
            event.ignore()
        elif key in _STEPS:
            self._choose(self.age + _STEPS[key])
        elif key == Qt.Key.Key_Home:
            self._choose(self._first)
        elif key == Qt.Key.Key_End:
            self._choose(self.board.last_age)
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom(_ZOOM_STEP)
        elif key == Qt.Key.Key_Minus:
            self.zoom(1 / _ZOOM_STEP)
        elif key == Qt.Key.Key_0:
            self.fit()
        else:
            event.ignore()

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Plain: steps the day line. Ctrl: zooms at the pointer. Shift: pans. Over the names: scrolls the page."""
        turn = event.angleDelta().y() or event.angleDelta().x()
        if event.position().x() < self.axis.left or not turn:
            event.ignore()
            return
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(_ZOOM_STEP ** (turn / 120), event.position().x())
        elif event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
            self._pan(-turn / 120 * _PAN_PX)
        else:
            self._wheel_rest += turn / 120
            whole = int(self._wheel_rest)
            self._wheel_rest -= whole
            if whole:
                self._choose(self.age - whole)
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Left: the day line, a mark, or a lane's name; on the axis, or with the middle button: panning."""
        self.setFocus(Qt.FocusReason.MouseFocusReason)
        self.hover.hide()
        at = event.position()
        if event.button() == Qt.MouseButton.MiddleButton or self._on_axis(at):
            self._dragging, self._drag_x = "pan", at.x()
        elif event.button() == Qt.MouseButton.LeftButton and at.x() < self.axis.left - 4:
            self._start_lane_drag(at)
        elif event.button() == Qt.MouseButton.LeftButton:
            self._dragging = "line"
            self._click(at)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Drags on, or tells what is under the pointer."""
        at = event.position()
        if self._dragging == "pan":
            self._pan(self._drag_x - at.x())
            self._drag_x = at.x()
        elif self._dragging == "line":
            self._choose(self.axis.day(at.x()))
        elif self._dragging == "lane":
            self.overlay.set_drop(self._drop_line(at.y()))
        else:
            self._tell(at)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Ends a drag."""
        if self._dragging == "lane":
            self._drop_lane(event.position().y())
        self._dragging = ""

    def focusInEvent(self, event: QFocusEvent) -> None:
        """The day line shows that keys go to it."""
        self.overlay.set_focused(True)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        """Keys go elsewhere."""
        self.overlay.set_focused(False)

    def leaveEvent(self, event: QEvent) -> None:
        """Nothing is under the pointer any more."""
        self.hover.hide()

    def move_lane(self, key: str, before: str | None) -> None:
        """Puts a lane before another one, or last."""
        order = [k for k in self.lanes.lane_keys() if k != key]
        order.insert(len(order) if before is None else order.index(before), key)
        if order != self.lanes.lane_keys():
            self.lanes.set_order(order)
            self.lane_order_changed.emit(order)

    def _click(self, at: QPointF) -> None:
        entry = self.lanes.entry_at(at) if at.y() < self.lanes.height() else None
        self._choose(self.axis.day(at.x()) if entry is None else entry[0])
        if entry is not None:
            self.entry_chosen.emit(entry[1])

    def _choose(self, age: int) -> None:
        if self.board is None:
            return
        age = self._within(age, self.board)
        if age != self.age:
            self.set_day(age)
            self.age_chosen.emit(age)

    def _outlook_toggled(self, _on: bool) -> None:
        self.chart.update_outlook()
        self._reach_ahead()

    def _reach_ahead(self) -> None:
        if self.board is None:
            return
        was = self.axis
        whole = AgeAxis.over(first_age(self.board), self._last_shown(self.board)).placed(was.left, was.width)
        self._set_axis(whole if was.is_whole else whole.showing_what(was))
        self._show_line()

    def _last_shown(self, board: Board) -> int:
        return max(last_shown_age(board), self.chart.ahead_until or 0)

    def _within(self, age: int, board: Board) -> int:
        return min(max(age, self._first), board.last_age)

    def _pan(self, pixels: float) -> None:
        self._set_axis(self.axis.panned(pixels))
        self._show_line()

    def _set_axis(self, axis: AgeAxis) -> None:
        if axis != self.axis:
            self.axis = axis
            self.lanes.set_axis(axis)
            self.chart.set_axis(axis, self.calendar)

    def _show_line(self) -> None:
        if self.board is None:
            return
        x = self.axis.x(self.age)
        seen = self.axis.left - 0.5 <= x <= self.axis.right + 0.5
        bottom = self.chart.y() + self.chart.axis_strip().top()
        self.overlay.set_line(x if seen else None, self.day_label(), bottom)
        point = self.chart.point_on(self.age)
        if point is None:
            self.overlay.set_point(None, "")
        else:
            down = QPointF(0, self.chart.y())
            taken = [place.translated(down) for place in self.chart.taken_places()]
            chart = self.chart.plot_area().translated(down)
            self.overlay.set_point(point[0] + down, point[1], taken, chart, self._covered_curve)
        self._describe(self.board)

    def _covered_curve(self, box: QRectF) -> float:
        return self.chart.covered_curve(box.translated(0, -self.chart.y()))

    def _describe(self, board: Board) -> None:
        day = weekday_and_day(board.date_of(self.age))
        self.setAccessibleName(say("{crop}, day {age}, {day}", crop=board.crop.name, age=self.age, day=day))
        self.setAccessibleDescription(". ".join(self.told_day()) or say("Nothing noted on this day"))

    def _tell(self, at: QPointF) -> None:
        if self.board is None:
            return
        lines = self.hover_lines(at)
        self.hover.tell(lines[:_MOST_HOVER_LINES], at.toPoint() if lines else QPoint())

    def hover_lines(self, at: QPointF) -> list[str]:
        """What is under a point: the day, then what its lane has there."""
        if self.board is None or self._on_axis(at):
            return []
        placed = self.lanes.lane_at(at.y()) if at.y() < self.lanes.height() else None
        if at.x() < self.axis.left - 4:
            return self._name_lines(placed.lane.key) if placed is not None else []
        age = self.axis.day(at.x())
        if not self._first <= age <= self._last_shown(self.board):
            return []
        found = self.chart.tell(age) if at.y() >= self.lanes.height() else placed.lane.tell(age) if placed else []
        head = say("day {age}, {day}", age=age, day=day_and_month(self.board.date_of(age)))
        return [head, *found] if found else []

    def _name_lines(self, key: str) -> list[str]:
        lane = self.lanes.lane(key)
        more = getattr(lane, "summary", None)
        summary = str(more()) if more is not None else ""
        return [t for t in (lane.name(), lane.second_line(), summary, say("Drag to move the lane")) if t]

    def _on_axis(self, at: QPointF) -> bool:
        return at.y() - self.chart.y() >= self.chart.axis_strip().top()

    def _start_lane_drag(self, at: QPointF) -> None:
        placed = self.lanes.lane_at(at.y()) if at.y() < self.lanes.height() else None
        if placed is not None:
            self._dragging, self._drag_lane = "lane", placed.lane.key

    def _drop_target(self, y: float) -> str | None:
        """The lane before which a lane dropped here would stand; None for the end."""
        return next((p.lane.key for p in self.lanes.placed() if y < p.top + p.height / 2), None)

    def _drop_line(self, y: float) -> float:
        key, placed = self._drop_target(y), self.lanes.placed()
        last = placed[-1]
        return next((p.top for p in placed if p.lane.key == key), last.top + last.height)

    def _drop_lane(self, y: float) -> None:
        self.overlay.set_drop(None)
        before = self._drop_target(y)
        if before != self._drag_lane:
            self.move_lane(self._drag_lane, before)


def first_age(board: Board) -> int:
    """The earliest day of the board: day 0, or before it where something is noted there."""
    return min([0, *(p.age for p in board.photo_days), *(m.age for m in (*board.events, *board.readings))])


def last_shown_age(board: Board) -> int:
    """The last day of the board: today or clearing, or the last day on which something is due."""
    return max([board.last_age, *(d.age for d in board.due)])
