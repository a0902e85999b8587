"""Sheets of a spreadsheet file (xlsx, ods): values as the spreadsheet last computed them."""

import codecs
from collections.abc import Iterator
from pathlib import Path
from zipfile import BadZipFile, ZipFile

from python_calamine import CalamineError, CalamineSheet, CalamineWorkbook, PasswordError

from growlog.sharing.old_notes.formulas import cells_without_result
from growlog.sharing.old_notes.raw_rows import MOST_COLUMNS, Cell, CellsRead, OldNotesUnreadable, RawRow
from growlog.words import say

codecs.lookup("cp437")  # of names in archives: a decoder is a module, not to be imported first by some thread
ENDINGS = (".xlsx", ".xlsm", ".ods")
_LARGEST_UNPACKED = 600 << 20
_TELL_EVERY = 2000


def sheet_names(path: Path) -> tuple[str, ...]:
    """The names of the sheets."""
    with _opened(path) as book:
        return tuple(book.sheet_names)


def sheet_rows(path: Path, sheet: str, on_row: CellsRead | None = None) -> Iterator[RawRow]:
    """The rows of a sheet, each with the line that the spreadsheet shows."""
    with _opened(path) as book:
        read = _sheet(book, sheet)
        if read.start is None:
            return
        if read.total_width > MOST_COLUMNS * 5:
            raise OldNotesUnreadable(say("This sheet has more columns than a table of notes can have."))
        lost = _problems(cells_without_result(str(path), sheet))
        line = 0
        left = ("",) * read.start[1]  # empty columns at the left are not handed out, empty rows above are
        for line, cells in enumerate(read.iter_rows(), start=1):
            if on_row is not None and line % _TELL_EVERY == 0:
                on_row(line)
            yield RawRow(line, (*left, *map(_tidied, cells)), lost.pop(line, ""))
        yield from (RawRow(below, (), problem) for below, problem in sorted(lost.items()) if below > line)


def _sheet(book: CalamineWorkbook, name: str) -> CalamineSheet:
    if name not in book.sheet_names:
        names = ", ".join(book.sheet_names)
        raise OldNotesUnreadable(say("There is no sheet {name}. There are: {names}.", name=name, names=names))
    return book.get_sheet_by_name(name)


def _opened(path: Path) -> CalamineWorkbook:
    _must_be_small(path)
    try:
        return CalamineWorkbook.from_path(path)
    except PasswordError as error:
        raise OldNotesUnreadable(say("The file has a password. Save it without one, then read it again.")) from error
    except CalamineError as error:
        raise OldNotesUnreadable(
            say("This cannot be read as a spreadsheet. Save it again as xlsx, ods or CSV.")
        ) from error


def _must_be_small(path: Path) -> None:
    try:
        with ZipFile(path) as archive:
            unpacked = sum(part.file_size for part in archive.infolist())
    except (BadZipFile, ValueError):
        return  # said when it is opened
    if unpacked > _LARGEST_UNPACKED:
        raise OldNotesUnreadable(say("This spreadsheet is too large. Save the sheet alone as CSV."))


def _problems(lost: dict[tuple[int, int], str]) -> dict[int, str]:
    """A sentence about the first such cell of each line."""
    found: dict[int, str] = {}
    for (row, column), error in sorted(lost.items()):
        place = f"{_letters(column)}{row + 1}"
        if error:
            sentence = say("The formula in {place} gave {error}.", place=place, error=error)
        else:
            sentence = say("The formula in {place} has no result in the file. Open and save it again.", place=place)
        found.setdefault(row + 1, sentence)
    return found


def _letters(column: int) -> str:
    letters = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters


def _tidied(cell: Cell) -> Cell:
    if isinstance(cell, str):
        return cell.strip()
    if isinstance(cell, float) and cell.is_integer() and abs(cell) < 1e15:
        return int(cell)
    return cell
