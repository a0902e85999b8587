"""Lanes of single marks: training and readings."""

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from growlog.desktop.board.lanes.lane import BoardLane, Space
from growlog.desktop.look.marks import paint_mark
from growlog.services.board import Board, Mark
from growlog.words import say


class MarksLane(BoardLane):
    """A mark at each entry; several on a day stand one above the other, slightly moved."""

    natural_px = 26
    least_px = 18
    mark_px = 12.0

    def marks(self, board: Board) -> Sequence[Mark]:
        """The entries of this lane."""
        raise NotImplementedError

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """Each entry's lines."""
        for mark in self.marks(board):
            yield mark.age, "; ".join(t for t in (mark.text, mark.more) if t)

    def paint(self, painter: QPainter, space: Space) -> None:
        """The marks that are in view."""
        size = self._size(space)
        for mark, centre in self._places(space):
            if space.area.left() - size <= centre.x() <= space.area.right() + size:
                paint_mark(painter, mark.kind, centre, size, space.look.palette)

    def entry_at(self, space: Space, point: QPointF) -> tuple[int, str] | None:
        """The entry under a point; of several the one painted last."""
        reach = self._size(space) / 2 + 2
        found = None
        for mark, centre in self._places(space):
            if QRectF(centre.x() - reach, centre.y() - reach, 2 * reach, 2 * reach).contains(point):
                found = mark.age, mark.entry_id
        return found

    def _size(self, space: Space) -> float:
        return min(self.mark_px * space.look.scale, space.area.height() - 4)

    def _places(self, space: Space) -> Iterator[tuple[Mark, QPointF]]:
        if self.board is None:
            return
        marks = self.marks(self.board)
        on_day, seen = Counter(m.age for m in marks), Counter[int]()
        size, middle = self._size(space), space.area.center().y()
        spread = max(0.0, (space.area.height() - size - 2))
        for mark in marks:
            count, index = on_day[mark.age], seen[mark.age]
            seen[mark.age] += 1
            share = 0.0 if count == 1 else index / (count - 1) - 0.5
            yield mark, QPointF(space.axis.x(mark.age), middle + spread * share)


class TrainingLane(MarksLane):
    """Training."""

    key = "training"

    def name(self) -> str:
        """Training."""
        return say("Training")

    def marks(self, board: Board) -> Sequence[Mark]:
        """Training entries."""
        return board.training


class ReadingsLane(MarksLane):
    """Readings."""

    key = "readings"
    natural_px = 22
    mark_px = 8.0

    def name(self) -> str:
        """Readings."""
        return say("Readings")

    def marks(self, board: Board) -> Sequence[Mark]:
        """Reading entries."""
        return board.readings
