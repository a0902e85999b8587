"""The pollination lane: females pollinated a day as bars."""

from collections.abc import Iterable

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from growlog.desktop.board.lanes.lane import BoardLane, Space, draw_line_of_text, entry_near, text_width
from growlog.records.cultivar import FloweringHabit
from growlog.services.board import Board
from growlog.words import say


class PollinationLane(BoardLane):
    """What was pollinated, and how much of it was picked in the end; that share is no fruit set."""

    key = "pollination"
    natural_px = 38
    least_px = 20

    def name(self) -> str:
        """Pollination."""
        return say("Pollination")

    def second_line(self) -> str:
        """What a bar counts."""
        perfect = self.board is not None and self.board.cultivar.habit is FloweringHabit.PERFECT
        return say("trusses a day") if perfect else say("females a day")

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """Each day's entries."""
        for tally in board.pollination:
            yield tally.age, tally.text

    def summary(self) -> str:
        """Pollinated, and picked of them; nothing where the figures do not belong together."""
        if self.board is None or not self.board.females_pollinated:
            return ""
        picked = self.board.total.fruit_count + self.board.total.culled_count
        if picked > self.board.females_pollinated:
            return say("{n} pollinated", n=self.board.females_pollinated)
        return say("{n} pollinated, {picked} picked of them", n=self.board.females_pollinated, picked=picked)

    def entry_at(self, space: Space, point: QPointF) -> tuple[int, str] | None:
        """The day's first entry."""
        entries = [] if self.board is None else [(x.age, x.entry_id) for x in self.board.pollination]
        return entry_near(space, point, entries)

    def paint(self, painter: QPainter, space: Space) -> None:
        """Bars from the ground up."""
        if self.board is None or not self.board.pollination:
            return
        highest = max(t.count for t in self.board.pollination)
        width = min(max(space.axis.pixels_per_day * 0.62, 1.5), 9 * space.look.scale)
        base, room = space.area.bottom() - 4, space.area.height() - 8
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(space.look.colour("pollination"))
        for tally in self.board.pollination:
            height = room * tally.count / highest
            painter.drawRect(QRectF(space.axis.x(tally.age) - width / 2, base - height, width, height))
        self._paint_summary(painter, space, self.board.pollination[0].age, self.board.pollination[-1].age)

    def _paint_summary(self, painter: QPainter, space: Space, first: int, last: int) -> None:
        text, pad = self.summary(), space.look.px(8)
        width = text_width(space.font(), text) + 2
        before, after = space.axis.x(first) - pad, space.axis.x(last) + pad
        row = QRectF(0, space.area.top() + 2, width, space.area.height() - 4)
        if before - space.area.left() >= width:
            row.moveRight(before)
        elif space.area.right() - after >= width:
            row.moveLeft(after)
        else:
            return
        draw_line_of_text(painter, space, row, text)
