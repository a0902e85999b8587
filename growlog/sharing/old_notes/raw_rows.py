"""What any reader of old notes hands out: rows of cells as they stand in the file, with the line each stands on."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

Cell = str | int | float | bool | date | datetime | time | timedelta
MOST_ROWS = 200_000
MOST_COLUMNS = 200
LONGEST_CELL = 20_000  # letters; a longer cell is a broken quotation, not a note
CellsRead = Callable[[int], None]


class OldNotesUnreadable(Exception):
    """A file that cannot be read as a table at all; str() is the sentence for the user."""


@dataclass(frozen=True)
class RawRow:
    """One row. line: as a text editor or a spreadsheet counts, from 1. problem: why it cannot be read, "" if it can."""

    line: int
    cells: tuple[Cell, ...]
    problem: str = ""

    @property
    def is_blank(self) -> bool:
        """Whether nothing stands in it."""
        return not self.problem and all(cell == "" for cell in self.cells)


@dataclass(frozen=True)
class RawTable:
    """A file, or one sheet of it. sheets: the names of all sheets, none for a text file. even: rows of a
    spreadsheet are a rectangle, so that how many cells a row has says nothing.
    """

    rows: tuple[RawRow, ...]
    sheets: tuple[str, ...] = ()
    sheet: str = ""
    even: bool = False
