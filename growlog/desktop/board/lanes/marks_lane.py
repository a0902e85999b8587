"""Lanes of single marks: training and readings."""

from collections.abc import Iterable, Iterator, Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from growlog.desktop.board.lanes.lane import BoardLane, Space
from growlog.desktop.look.marks import paint_mark
from growlog.services.board import Board, Mark
from growlog.words import say


class MarksLane(BoardLane):
    """A mark at each entry; those that would cover each other stand in two rows."""

    natural_px = 26
    least_px = 18
    mark_px = 12.0
    may_stack = True

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
        """Marks that would cover each other stand in two rows where there is room for two."""
        marks = [] if self.board is None else self.marks(self.board)
        size, area = self._size(space), space.area
        rows = [rows_of_marks([space.axis.x(m.age) for m in marks], size), [0] * len(marks)]
        row_of = rows[0] if area.height() >= 1.7 * size and self.may_stack else rows[1]
        two = any(row_of)
        for mark, row in zip(marks, row_of, strict=True):
            y = area.top() + area.height() * ((row + 0.5) / 2 if two else 0.5)
            yield mark, QPointF(space.axis.x(mark.age), y)


def rows_of_marks(xs: Sequence[float], size: float) -> list[int]:
    """Row 0 or 1 for each mark, from left to right: the row in which it covers less."""
    last, rows = [float("-inf"), float("-inf")], []
    for x in xs:
        row = 0 if x - last[0] >= size or last[0] <= last[1] else 1
        last[row] = x
        rows.append(row)
    return rows


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
    may_stack = False

    def name(self) -> str:
        """Readings."""
        return say("Readings")

    def marks(self, board: Board) -> Sequence[Mark]:
        """Reading entries."""
        return board.readings

    def _size(self, space: Space) -> float:
        return min(super()._size(space), max(space.axis.pixels_per_day * 1.1, 4.0))
