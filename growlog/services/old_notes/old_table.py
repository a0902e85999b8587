"""A file of old notes as read: which line is the heading, what its columns are called, and the rows below."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property
from pathlib import Path

from growlog.services.old_notes.dates import readings
from growlog.services.open_logbook import LogbookProblem
from growlog.sharing.old_notes.old_file import REFUSED_HEADINGS, read_old_file
from growlog.sharing.old_notes.raw_rows import OldNotesUnreadable, RawRow
from growlog.words import say

Progress = Callable[[int, int], None]
_LOOKED_AT = 20  # lines in which a heading is looked for


class Stopped(Exception):
    """Raised by a progress function to end the work; nothing was written."""


@dataclass(frozen=True)
class OldTable:
    """The rows of a file with their columns' names. line: of the heading, 0 where the file has none.

    sheets: names of all sheets, none for a text file.
    """

    name: str
    headings: tuple[str, ...]
    rows: tuple[RawRow, ...]
    heading_line: int = 1
    sheets: tuple[str, ...] = ()
    sheet: str = ""

    @cached_property
    def shape(self) -> str:
        """What files of the same shape have in common: their heading cells, case-folded."""
        own = [h for h in self.headings if h not in REFUSED_HEADINGS]
        return "\t".join(" ".join(h.casefold().split()) for h in own)

    def column(self, place: int) -> list[object]:
        """The cells of a column that state something, of rows that can be read."""
        return [r.cells[place] for r in self.rows if not r.problem and place < len(r.cells) and r.cells[place] != ""]


def read_old_notes(
    path: Path, sheet: str = "", on_progress: Progress | None = None, *, heading_line: int | None = None
) -> OldTable:
    """Reads a file, or one sheet of it ("": the first). Writes nothing.

    heading_line: the line of the heading, 0 for none, None to find it. LogbookProblem with a sentence where the file
    cannot be read as a table; the rows that cannot be read alone carry their reason.
    """
    on_row = (lambda line: on_progress(line, 0)) if on_progress is not None else None
    try:
        raw = read_old_file(path, sheet, on_row)
    except OldNotesUnreadable as problem:
        raise LogbookProblem(say("{file}: {sentence}", file=path.name, sentence=str(problem))) from problem
    except OSError as error:
        reason = error.strerror or str(error)
        raise LogbookProblem(say("{file}: {reason}.", file=path.name, reason=reason)) from error
    found = _heading_place(raw.rows) if heading_line is None else _place_of(raw.rows, heading_line)
    headings = _headings(raw.rows, found, raw.even)
    rows = [_fitted(row, len(headings), raw.even) for row in raw.rows[0 if found is None else found + 1 :]]
    kept = tuple(row for row in rows if not row.is_blank)
    if not kept:
        raise LogbookProblem(say("{file}: there is no row below the heading.", file=path.name))
    line = 0 if found is None else raw.rows[found].line
    return OldTable(path.name, headings, kept, line, raw.sheets, raw.sheet)


def _heading_place(rows: tuple[RawRow, ...]) -> int | None:
    """The fullest line above the first line of data, the lowest of several; None if data come first."""
    filled = {p: [c for c in row.cells if c != ""] for p, row in enumerate(rows[:_LOOKED_AT]) if not row.problem}
    filled = {place: cells for place, cells in filled.items() if cells}
    widest = max(map(len, filled.values()), default=0)
    above: list[int] = []
    for place, cells in filled.items():
        if len(cells) * 2 > widest and _are_data(cells):
            break
        if not _are_data(cells):
            above.append(place)
    if len(above) == len(filled):  # no data at all among the first lines
        return next(iter(above), None)
    return max(above, key=lambda place: (len(filled[place]), place), default=None)


def _place_of(rows: tuple[RawRow, ...], line: int) -> int | None:
    if line == 0:
        return None
    place = next((i for i, row in enumerate(rows) if row.line == line), None)
    if place is None:
        raise LogbookProblem(say("There is no line {line} in this file.", line=line))
    return place


def _are_data(cells: Sequence[object]) -> bool:
    """Whether a line holds a day, or numbers in most of its cells: no heading does."""
    days = any(isinstance(cell, date) or (isinstance(cell, str) and readings(cell)) for cell in cells)
    return days or sum(map(_is_number, cells)) * 2 > len(cells)


def _is_number(cell: object) -> bool:
    if isinstance(cell, str):
        return cell.replace(",", "").replace(".", "").isdecimal()
    return isinstance(cell, (int, float))


def _headings(rows: tuple[RawRow, ...], place: int | None, even: bool) -> tuple[str, ...]:
    if place is None:
        width = max((_width(row) for row in rows[:_LOOKED_AT]), default=0)
        return tuple(say("Column {n}", n=n + 1) for n in range(width))
    heading = rows[place]
    width = max(_width(heading), _usual_width(rows[place + 1 :])) if even else len(heading.cells)
    named = [" ".join(str(cell).split()) for cell in heading.cells[:width]]
    return tuple(name or say("Column {n}", n=n + 1) for n, name in enumerate(named))


def _usual_width(rows: tuple[RawRow, ...]) -> int:
    """How far more than half of the rows reach: columns that nobody named still count."""
    widths = sorted(width for row in rows if (width := _width(row)))
    return widths[(len(widths) - 1) // 2] if widths else 0


def _width(row: RawRow) -> int:
    filled = [n for n, cell in enumerate(row.cells) if cell != ""]
    return filled[-1] + 1 if filled else 0


def _fitted(row: RawRow, width: int, even: bool) -> RawRow:
    """The row with its problem if it has more or fewer cells than the heading: it is never shifted to fit."""
    if row.problem or not any(cell != "" for cell in row.cells):
        return row
    if even:  # a spreadsheet has as many cells in each row as in its widest
        if _width(row) <= width:
            return RawRow(row.line, (row.cells + ("",) * width)[:width])
        return RawRow(row.line, row.cells, _odd_width(_width(row), width))
    if len(row.cells) == width:
        return row
    return RawRow(row.line, row.cells, _odd_width(len(row.cells), width))


def _odd_width(cells: int, width: int) -> str:
    if cells > width:
        return say("The row has {cells} fields, the heading only {width}.", cells=cells, width=width)
    return say("The row has only {cells} fields, the heading {width}.", cells=cells, width=width)
