"""The season board: everything about a crop on one axis of plant age, with one day line across it."""

from growlog.desktop.board.season_board import SeasonBoard

__all__ = ["SeasonBoard"]
