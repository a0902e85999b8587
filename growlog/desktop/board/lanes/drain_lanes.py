"""The drain lanes: how much of each feed drained, and how much stronger or weaker the drain was than the feed."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPen

from growlog.desktop.board.lanes.lane import BoardLane, Space, draw_line_of_text, entry_near
from growlog.desktop.board.wording import THIN, number
from growlog.services.board import Board
from growlog.services.drain_series import DrainPoint
from growlog.words import say

_LEAST_SPAN_MS = 0.4  # so that small wobble stays small


class _DrainLane(BoardLane):
    """What both share: points by age, told in words, each leading to its feed."""

    natural_px = 36
    least_px = 24
    only_with_something = True

    def points(self, board: Board) -> list[tuple[DrainPoint, float]]:
        """The points that this lane draws, each with its value."""
        raise NotImplementedError

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """Each drain in words."""
        for point, _ in self.points(board):
            yield point.age, point.text

    def entry_at(self, space: Space, point: QPointF) -> tuple[int, str] | None:
        """The feed that drained."""
        shown = [] if self.board is None else [(p.age, p.entry_id) for p, _ in self.points(self.board)]
        return entry_near(space, point, shown)

    def _write_top(self, painter: QPainter, space: Space, text: str) -> None:
        box = QRectF(space.area.left() + 2, space.area.top(), space.look.px(90), space.look.px(13))
        draw_line_of_text(painter, space, box, text, "mute")


class DrainShareLane(_DrainLane):
    """Per cent of each feed that drained, as bars."""

    key = "drain-share"

    def name(self) -> str:
        """Drain."""
        return say("Drain")

    def second_line(self) -> str:
        """What a bar is."""
        return say("% of the feed")

    def points(self, board: Board) -> list[tuple[DrainPoint, float]]:
        """Those whose share was measured."""
        return [(p, p.drain_share_percent) for p in board.drains if p.drain_share_percent is not None]

    def paint(self, painter: QPainter, space: Space) -> None:
        """A bar for each drain; the highest names the scale."""
        shown = [] if self.board is None else self.points(self.board)
        if not shown:
            return
        highest = max(10.0, *(share for _, share in shown))
        base, room = space.area.bottom() - 3, space.area.height() - space.look.px(8)
        width = min(max(space.axis.pixels_per_day * 0.6, 1.6), 7 * space.look.scale)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(space.look.colour("feed"))
        for point, share in shown:
            height = max(1.0, room * share / highest)
            painter.drawRect(QRectF(space.axis.x(point.age) - width / 2, base - height, width, height))
        self._write_top(painter, space, f"{number(highest)}{THIN}%")


class DrainEcLane(_DrainLane):
    """EC of the drain less EC of the feed: above the line salts gather, below it the plants took more than was fed."""

    key = "drain-ec"

    def name(self) -> str:
        """Drain less feed."""
        return say("Drain − feed")

    def second_line(self) -> str:
        """The unit, and what dots and rings stand for."""
        return say("EC: ● more, ○ less")

    def points(self, board: Board) -> list[tuple[DrainPoint, float]]:
        """Those where both were measured."""
        return [(p, p.ec_difference_ms_per_cm) for p in board.drains if p.ec_difference_ms_per_cm is not None]

    def paint(self, painter: QPainter, space: Space) -> None:
        """Dots above a line of nought, rings below it."""
        shown = [] if self.board is None else self.points(self.board)
        if not shown:
            return
        values = [difference for _, difference in shown]
        low, high = min(0.0, *values), max(0.0, *values)
        spread = max(high - low, _LEAST_SPAN_MS)
        room = space.area.adjusted(0, space.look.px(6), 0, -space.look.px(6))

        def y(value: float) -> float:
            return room.bottom() - room.height() * (value - low) / spread

        painter.setPen(QPen(space.look.colour("rule"), 1))
        painter.drawLine(QPointF(room.left(), y(0.0)), QPointF(room.right(), y(0.0)))
        colour = space.look.colour("feed")
        radius = min(max(space.axis.pixels_per_day * 0.36, 1.4), 2.6 * space.look.scale)
        painter.setPen(QPen(colour, 1))
        for point, difference in shown:
            painter.setBrush(colour if difference >= 0 else Qt.BrushStyle.NoBrush)
            painter.drawEllipse(QPointF(space.axis.x(point.age), y(difference)), radius, radius)
        self._write_top(
            painter, space, f"+{number(high, 1)}{THIN}mS/cm" if high > 0 else f"{number(low, 1)}{THIN}mS/cm"
        )
