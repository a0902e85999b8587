"""Photos of the story beside each other, in rows of even length."""

from collections.abc import Sequence
from math import ceil

from PySide6.QtCore import QSize
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.review.story_tile import NARROWEST_PX, StoryTile

_GAP_PX = 8


class TileGrid(QWidget):
    """Places tiles by its width; as many as fit in a row, and no row much shorter than another."""

    def __init__(self, widest_px: int = 150) -> None:
        super().__init__()
        self._widest_px = widest_px
        self.tiles: list[StoryTile] = []
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        theme_signal().changed.connect(self._lay_out)

    def show_tiles(self, tiles: Sequence[StoryTile]) -> None:
        """Other tiles in place of those shown."""
        for tile in self.tiles:
            tile.hide()
            tile.deleteLater()
        self.tiles = list(tiles)
        for tile in self.tiles:
            tile.setParent(self)
            tile.show()
        self._lay_out()

    def sizeHint(self) -> QSize:
        """At its present width."""
        width = max(self.width(), current().px(NARROWEST_PX))
        return QSize(width, self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:
        """One tile beside the other at least."""
        return QSize(current().px(NARROWEST_PX), 0)

    def hasHeightForWidth(self) -> bool:
        """Narrower means higher."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The height of all rows."""
        if not self.tiles:
            return 0
        columns, _ = self._shape(width)
        rows = ceil(len(self.tiles) / columns)
        return rows * (self._tile_height(width) + _GAP_PX) - _GAP_PX

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Another width."""
        super().resizeEvent(event)
        self._lay_out()

    def _shape(self, width: int) -> tuple[int, int]:
        """How many in a row, and how wide each is."""
        fitting = max(1, (width + _GAP_PX) // (current().px(NARROWEST_PX) + _GAP_PX))
        rows = ceil(len(self.tiles) / fitting) if self.tiles else 1
        columns = max(1, ceil(len(self.tiles) / rows))
        each = (width + _GAP_PX) // columns - _GAP_PX
        return columns, max(1, min(each, current().px(self._widest_px)))

    def _tile_height(self, width: int) -> int:
        _, each = self._shape(width)
        self.tiles[0].fit(each, self._lines(each))
        return self.tiles[0].height()

    def _lines(self, each: int) -> int:
        """As many lines of caption as the longest takes, so that all tiles are of one height."""
        return max(tile.caption_lines(each) for tile in self.tiles)

    def _lay_out(self) -> None:
        if not self.tiles:
            return
        columns, each = self._shape(self.width())
        lines = self._lines(each)
        for place, tile in enumerate(self.tiles):
            tile.fit(each, lines)
            row, column = divmod(place, columns)
            tile.move(column * (each + _GAP_PX), row * (tile.height() + _GAP_PX))
        self.updateGeometry()
