"""What every lane of the board is: a name, a height, something to paint and something to tell of a day."""

from abc import ABC, abstractmethod
from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from typing import ClassVar

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter

from growlog.desktop.board.axis import AgeAxis
from growlog.desktop.look.theme import Look
from growlog.desktop.look.tokens import blend
from growlog.services.board import Board

SMALL_PX = 11


@dataclass(frozen=True)
class Space:
    """Where a lane paints, on which axis and how it looks."""

    area: QRectF
    axis: AgeAxis
    look: Look

    def tint(self, token: str, share: float) -> QColor:
        """A quiet ground in the colour of a token."""
        return QColor(blend(self.look.palette.paper, self.look.palette.colour(token), share))

    def font(self, bold: bool = False) -> QFont:
        """The lanes' small type."""
        return self.look.font(SMALL_PX, QFont.Weight.DemiBold if bold else QFont.Weight.Normal)


class BoardLane(ABC):
    """One lane. It is shown a board, then paints itself as often as needed."""

    key: ClassVar[str]
    natural_px: ClassVar[float] = 24
    least_px: ClassVar[float] = 18
    only_with_something: ClassVar[bool] = False  # takes no room while it has nothing to show

    def __init__(self) -> None:
        self.board: Board | None = None
        self.told: dict[int, list[str]] = {}

    def show_board(self, board: Board) -> None:
        """Takes the data in."""
        self.board = board
        self.told = _by_age(self.tellings(board))

    @abstractmethod
    def name(self) -> str:
        """What stands beside the lane."""

    def second_line(self) -> str:
        """What stands below the name, "" if nothing."""
        return ""

    def natural_height(self) -> float:
        """Its height at 100 % text where there is room."""
        return self.natural_px

    def least_height(self) -> float:
        """The height at 100 % text below which it would not be readable."""
        return self.least_px

    @abstractmethod
    def tellings(self, board: Board) -> Iterable[tuple[int, str]]:
        """Sentences with the plant age that each belongs to."""

    def tell(self, age: int) -> list[str]:
        """What is there on a day."""
        return self.told.get(age, [])

    def is_empty(self) -> bool:
        """Whether there is nothing to paint."""
        return not self.told

    @abstractmethod
    def paint(self, painter: QPainter, space: Space) -> None:
        """Paints the lane into its area."""

    def entry_at(self, space: Space, point: QPointF) -> tuple[int, str] | None:
        """The plant age and id of the entry whose mark lies under a point."""
        return None


def entry_near(space: "Space", point: QPointF, entries: Iterable[tuple[int, str]]) -> tuple[int, str] | None:
    """The entry whose day lies under a point, within half a day or five pixels."""
    reach = max(space.axis.pixels_per_day / 2, 5.0)
    near = [(abs(space.axis.x(age) - point.x()), age, entry_id) for age, entry_id in entries if entry_id]
    best = min(near, default=None)
    return None if best is None or best[0] > reach else (best[1], best[2])


def _by_age(told: Iterable[tuple[int, str]]) -> dict[int, list[str]]:
    lines: dict[int, list[str]] = defaultdict(list)
    for age, text in told:
        if text:
            lines[age].append(text)
    return dict(lines)


def text_width(font: QFont, text: str) -> float:
    """The width of a text in pixels."""
    return QFontMetricsF(font).horizontalAdvance(text)


def draw_line_of_text(
    painter: QPainter,
    space: Space,
    box: QRectF,
    text: str,
    token: str = "ink",
    bold: bool = False,
    align: Qt.AlignmentFlag = Qt.AlignmentFlag.AlignLeft,
) -> None:
    """One line in a box, vertically centred, elided where the box ends."""
    font = space.font(bold)
    painter.setFont(font)
    painter.setPen(space.look.colour(token))
    shown = QFontMetricsF(font).elidedText(text, Qt.TextElideMode.ElideRight, box.width() + 0.5)
    painter.drawText(box, align | Qt.AlignmentFlag.AlignVCenter | Qt.TextFlag.TextDontClip, shown)
