"""Lanes of single marks: training and readings."""

from collections.abc import Iterable, Iterator, Sequence

from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from growlog.desktop.board.lanes.lane import BoardLane, Space
from growlog.desktop.look.marks import paint_mark
from growlog.services.board import Board, Mark
from growlog.words import say

_BEFORE_PX = 3  # a lane may paint that far before its left edge
_MOST_SHIFT = 2.0  # sizes of a mark; beyond that it would seem to belong to another day


class MarksLane(BoardLane):
    """A mark at each entry; those that would cover each other stand in two rows."""

    natural_px = 26
    least_px = 16
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
        """Marks that would cover each other stand in two rows where there is room for two, then move apart."""
        marks = [] if self.board is None else self.marks(self.board)
        size, area = self._size(space), space.area
        xs = [space.axis.x(m.age) for m in marks]
        row_of = rows_of_marks(xs, size) if area.height() >= 1.7 * size and self.may_stack else [0] * len(marks)
        two = any(row_of)
        if self.may_stack:
            xs = _spread_rows(xs, row_of, size, area)
        for number, (mark, row) in enumerate(zip(marks, row_of, strict=True)):
            y = area.top() + area.height() * ((row + 0.5) / 2 if two else 0.5)
            yield mark, QPointF(xs[number], y)


def _spread_rows(xs: list[float], row_of: Sequence[int], size: float, area: QRectF) -> list[float]:
    """Each row's marks moved apart, none past an edge unless its day is."""
    moved = list(xs)
    for row in set(row_of):
        members = [i for i, r in enumerate(row_of) if r == row]
        days = [xs[i] for i in members]
        places = spread(days, size + 1, _MOST_SHIFT * size)
        if days[-1] <= area.right():
            places = _kept_back(places, area.right() - size / 2, size + 1)
        mirrored = [-x for x in reversed(places)]
        if days[0] >= area.left():
            mirrored = _kept_back(mirrored, -area.left() - size / 2 + _BEFORE_PX, size + 1)
        for i, x in zip(members, reversed(mirrored), strict=True):
            moved[i] = -x
    return moved


def _kept_back(places: Sequence[float], limit: float, size: float) -> list[float]:
    """Moves those past a limit at the right back, and with them the ones they would run into."""
    kept = list(places)
    for index in reversed(range(len(kept))):
        if kept[index] <= limit:
            break
        kept[index] = limit
        limit -= size
    return kept


def spread(xs: Sequence[float], size: float, most: float) -> list[float]:
    """Places from left to right at least size apart, each moved as little as can be and by no more than most."""
    groups: list[list[float]] = []  # sum of what the first of a group would want, and how many there are
    for index, x in enumerate(xs):
        groups.append([x - index * size, 1])
        while len(groups) > 1 and groups[-2][0] / groups[-2][1] > groups[-1][0] / groups[-1][1]:
            total, count = groups.pop()
            groups[-1][0] += total
            groups[-1][1] += count
    starts = [total / count for total, count in groups for _ in range(int(count))]
    moved = [start + index * size for index, start in enumerate(starts)]
    return [min(max(new, x - most), x + most) for new, x in zip(moved, xs, strict=True)]


def rows_of_marks(xs: Sequence[float], size: float) -> list[int]:
    """Row 0 or 1 for each mark, from left to right: the upper one if free, else the one in which it moves less."""
    free, rows = [float("-inf"), float("-inf")], []
    for x in xs:
        row = 0 if free[0] <= max(x, free[1]) else 1
        free[row] = max(x, free[row]) + size
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
