"""The growth stage lane: principal stages as bands, one below the other where they overlap."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QPainter

from growlog.calculations.growth_stage import PRINCIPAL_STAGES, StageSpan
from growlog.desktop.board.lanes.lane import BoardLane, Space, draw_line_of_text, text_width
from growlog.services.board import Board
from growlog.words import say


class StageLane(BoardLane):
    """BBCH principal stages over plant age."""

    key = "stage"
    natural_px = 22
    least_px = 18

    def __init__(self) -> None:
        super().__init__()
        self._rows: list[list[StageSpan]] = []

    def show_board(self, board: Board) -> None:
        """Takes the stages in and finds a row for each."""
        super().show_board(board)
        self._rows = rows_of(board.stages)

    def name(self) -> str:
        """Growth stage."""
        return say("Growth stage")

    def second_line(self) -> str:
        """The scale."""
        return say("BBCH")

    def natural_height(self) -> float:
        """A row of text for each row of bands."""
        return max(self.natural_px, 6 + 16 * len(self._rows))

    def least_height(self) -> float:
        """Rows as low as text allows."""
        return max(self.least_px, 4 + 13 * len(self._rows))

    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """Each stage on each of its days."""
        for span in board.stages:
            codes = ", ".join(span.codes)
            for age in range(span.start_age, span.end_age + 1):
                yield age, say("{stage} (BBCH {codes})", stage=stage_words(span.principal), codes=codes)

    def paint(self, painter: QPainter, space: Space) -> None:
        """The bands, row by row."""
        pad = space.look.px(2)
        height = (space.area.height() - 2 * pad) / max(len(self._rows), 1)
        for number, row in enumerate(self._rows):
            top = space.area.top() + pad + number * height
            for index, span in enumerate(row):
                following = space.axis.x(row[index + 1].start_age) if index + 1 < len(row) else space.axis.right
                self._paint_band(painter, space, span, QRectF(0, top + 1, 0, height - 2), following)

    def _paint_band(self, painter: QPainter, space: Space, span: StageSpan, row: QRectF, following: float) -> None:
        left, right = space.axis.x(span.start_age), space.axis.x(span.end_age)
        box = QRectF(left, row.top(), max(right - left, 2), row.height())
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(QColor(space.look.palette.stage_band(span.principal / 9)))
        painter.drawRoundedRect(box, 3, 3)
        words = stage_words(span.principal)
        pad, width = space.look.px(5), text_width(space.font(True), words)
        seen = QRectF(box).intersected(space.area.adjusted(0, -99, 0, 99)).adjusted(pad, 0, -pad, 0)
        if seen.width() >= width or following - right < width + 2 * pad:
            if seen.width() >= text_width(space.font(True), "9"):
                short = words if seen.width() >= width else str(span.principal)
                draw_line_of_text(painter, space, seen, short, bold=True)
        elif right >= space.axis.left:
            draw_line_of_text(painter, space, QRectF(right + pad, row.top(), width + 1, row.height()), words, bold=True)


def stage_words(principal: int) -> str:
    """Number and meaning of a principal stage."""
    return f"{principal} {say(PRINCIPAL_STAGES[principal])}"


def rows_of(spans: Sequence[StageSpan]) -> list[list[StageSpan]]:
    """The spans in as few rows as possible, without overlap in a row."""
    rows: list[list[StageSpan]] = []
    for span in sorted(spans, key=lambda s: (s.start_age, s.principal)):
        row = next((r for r in rows if r[-1].end_age <= span.start_age), None)
        if row is None:
            rows.append([span])
        else:
            row.append(span)
    return rows
