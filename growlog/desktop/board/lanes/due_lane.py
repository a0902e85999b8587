"""The lane of what is due: hollow, faint marks from today on. It is there only while there is something due."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QTransform

from growlog.desktop.board.lanes.lane import Space
from growlog.desktop.board.lanes.marks_lane import MarksLane
from growlog.desktop.look.marks import KINDS, mark_path
from growlog.desktop.look.tokens import blend
from growlog.services.board import Board, Mark
from growlog.words import say

_FAINT = 0.75  # of the full colour; the outline still reaches 3:1 on paper


class DueLane(MarksLane):
    """What routines, packets and plans ask for."""

    key = "due"
    natural_px = 28
    least_px = 20
    mark_px = 11.0
    only_with_something = True

    def name(self) -> str:
        """Due."""
        return say("Due")

    def second_line(self) -> str:
        """From when on."""
        return say("from today on")

    def marks(self, board: Board) -> Sequence[Mark]:
        """What is due, in the order of the days."""
        return [Mark(due.age, "", due.kind, due.text, "") for due in board.due]

    def paint(self, painter: QPainter, space: Space) -> None:
        """Outlines only: nothing of it has happened yet."""
        size = self._size(space)
        for mark, centre in self._places(space):
            if space.area.left() - size <= centre.x() <= space.area.right() + size:
                _paint_hollow(painter, mark.kind, centre, size, space)

    def entry_at(self, space: Space, point: QPointF) -> tuple[int, str] | None:
        """There is no entry yet."""
        return None


def _paint_hollow(painter: QPainter, kind: str, centre: QPointF, size: float, space: Space) -> None:
    palette = space.look.palette
    colour = palette.mark(kind) if kind in KINDS else palette.mute
    painter.setPen(QPen(QColor(blend(palette.paper, colour, _FAINT)), 1.2))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(QTransform().translate(centre.x(), centre.y()).scale(size, size).map(_outline(kind)))


def _outline(kind: str) -> QPainterPath:
    """The kind's own shape; an empty box for what is only ticked."""
    if kind in KINDS:
        return mark_path(kind)
    box = QPainterPath()
    box.addRoundedRect(QRectF(-0.42, -0.42, 0.84, 0.84), 0.15, 0.15)
    return box
