"""The picks lane: a square for each fruit, stacked by day; culls hollow with a cross; very good days as a bar."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from growlog.desktop.board.lanes.lane import SMALL_PX, BoardLane, Space, draw_line_of_text, entry_near, text_width
from growlog.services.board import Board, Tally
from growlog.words import say

MOST_SQUARES = 8
_LEAST_PITCH_PX = 4.2


class PicksLane(BoardLane):
    """Fruit picked a day."""

    key = "picks"
    natural_px = 50
    least_px = 26

    def name(self) -> str:
        """Picks."""
        return say("Picks")

    def second_line(self) -> str:
        """What a square counts."""
        return say("fruit a day")

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """Each day's picks."""
        for tally in board.picks:
            culls = say("{n} culled", n=tally.culled) if tally.culled and tally.count else ""
            yield tally.age, ", ".join(t for t in (tally.text, culls) if t)

    def entry_at(self, space: Space, point: QPointF) -> tuple[int, str] | None:
        """The day's first entry."""
        entries = [] if self.board is None else [(x.age, x.entry_id) for x in self.board.picks]
        return entry_near(space, point, entries)

    def paint(self, painter: QPainter, space: Space) -> None:
        """Squares or a bar for each day."""
        if self.board is None:
            return
        area, look = space.area.adjusted(0, 4, 0, -4), space.look
        most = min(MOST_SQUARES, int(area.height() / (_LEAST_PITCH_PX * look.scale)))
        tallest = max((n for t in self.board.picks if (n := _all(t)) <= most), default=1)
        pitch = min(8.5 * look.scale, max(space.axis.pixels_per_day * 1.25, 3.0), area.height() / max(tallest, 1))
        for tally in self.board.picks:
            if _all(tally) > most:
                others = (t.age for t in self.board.picks if t is not tally and _all(t) > most)
                apart = min((abs(age - tally.age) for age in others), default=99)
                self._paint_bar(painter, space, tally, area, pitch, apart * space.axis.pixels_per_day)
            else:
                self._paint_squares(painter, space, tally, area.bottom(), pitch)

    def _paint_squares(self, painter: QPainter, space: Space, tally: Tally, base: float, pitch: float) -> None:
        side, x = pitch * 0.82, space.axis.x(tally.age)
        for index in range(tally.count + tally.culled):
            box = QRectF(x - side / 2, base - pitch * index - side, side, side)
            if index < tally.count:
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(space.look.colour("pick"))
                painter.drawRoundedRect(box, side * 0.14, side * 0.14)
            else:
                _paint_cull(painter, space, box)

    def _paint_bar(
        self, painter: QPainter, space: Space, tally: Tally, area: QRectF, pitch: float, room_px: float
    ) -> None:
        text = str(tally.count) if not tally.culled else f"{tally.count}+{tally.culled}"
        line = space.look.px(SMALL_PX + 2)
        box = QRectF(space.axis.x(tally.age) - pitch * 0.41, area.top() + line, pitch * 0.82, area.height() - line)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(space.look.colour("pick"))
        painter.drawRoundedRect(box, 1, 1)
        width = text_width(space.font(True), text)
        if room_px >= width + 2:
            place = QRectF(box.center().x() - width / 2, area.top(), width + 1, line)
            draw_line_of_text(painter, space, place, text, bold=True)


def _all(tally: Tally) -> int:
    return tally.count + tally.culled


def _paint_cull(painter: QPainter, space: Space, box: QRectF) -> None:
    inner = box.adjusted(0.5, 0.5, -0.5, -0.5)
    painter.setPen(QPen(space.look.colour("pick"), 1))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawRect(inner)
    painter.drawLine(QPointF(inner.left(), inner.top()), QPointF(inner.right(), inner.bottom()))
    painter.drawLine(QPointF(inner.left(), inner.bottom()), QPointF(inner.right(), inner.top()))
