"""The lane of problems, treatments, fruit checks, potting-on, calibrations and notes, each with its own mark."""

from collections.abc import Sequence

from growlog.desktop.board.lanes.marks_lane import MarksLane
from growlog.services.board import Board, Mark
from growlog.words import say


class EventsLane(MarksLane):
    """What does not happen every day."""

    key = "events"
    natural_px = 32
    least_px = 28
    mark_px = 12.0

    def name(self) -> str:
        """Problems."""
        return say("Problems")

    def second_line(self) -> str:
        """What else is here."""
        return say("and notes")

    def marks(self, board: Board) -> Sequence[Mark]:
        """All of them."""
        return board.events
