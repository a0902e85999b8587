"""One door to a file of old notes, whatever its make; and the file of rows that could not be carried in."""

from collections.abc import Iterable, Sequence
from pathlib import Path

from growlog.sharing.cells import guard
from growlog.sharing.csv_text import csv_text
from growlog.sharing.old_notes.raw_rows import (
    LONGEST_CELL,
    MOST_COLUMNS,
    MOST_ROWS,
    Cell,
    CellsRead,
    OldNotesUnreadable,
    RawRow,
    RawTable,
)
from growlog.sharing.old_notes.spreadsheet import ENDINGS, sheet_names, sheet_rows
from growlog.sharing.old_notes.text_table import decoded, text_rows
from growlog.words import say, say_count

_LARGEST_BYTES = 100 << 20
_SPREADSHEET_STARTS = (b"PK\x03\x04", b"\xd0\xcf\x11\xe0")


def read_old_file(path: Path, sheet: str = "", on_row: CellsRead | None = None) -> RawTable:
    """All rows of a text file, or of one sheet ("": the first); OldNotesUnreadable with a sentence, or OSError.

    on_row is told the line now and then; what it raises ends the reading.
    """
    if path.stat().st_size > _LARGEST_BYTES:
        raise OldNotesUnreadable(say("This file is larger than 100 MB. Divide it into smaller ones."))
    with path.open("rb") as file:
        start = file.read(4)
    if path.suffix.casefold() in ENDINGS or start in _SPREADSHEET_STARTS:
        sheets = sheet_names(path)
        chosen = sheet or next(iter(sheets), "")
        return RawTable(_gathered(sheet_rows(path, chosen, on_row)), sheets, chosen, even=True)
    return RawTable(_gathered(text_rows(decoded(path.read_bytes()), on_row)))


def write_refused(path: Path, heading: Sequence[str], rows: Iterable[tuple[int, str, Sequence[Cell]]]) -> None:
    """Rows with their line and reason before their cells, as CSV that reads back as it was."""
    lines = [[*REFUSED_HEADINGS, *heading]]
    lines += [[str(line), guard(reason), *map(_as_text, cells)] for line, reason, cells in rows]
    path.write_text(csv_text(lines), encoding="utf-8-sig", newline="")


# Not translated: a later reading knows its own columns by them.
REFUSED_HEADINGS = ("Line in the old file", "Why it was left out")


def _as_text(cell: Cell) -> str:
    text = str(cell)
    return text if _is_number(text) else guard(text)


def _is_number(text: str) -> bool:
    try:
        float(text.replace(",", "."))
    except ValueError:
        return False
    return True


def _gathered(rows: Iterable[RawRow]) -> tuple[RawRow, ...]:
    gathered: list[RawRow] = []
    for row in rows:
        if len(gathered) >= MOST_ROWS:
            sentence = say_count("This file has more than {n} row.", "This file has more than {n} rows.", MOST_ROWS)
            raise OldNotesUnreadable(sentence + " " + say("Divide it into smaller ones."))
        gathered.append(_judged(row))
    return tuple(gathered)


def _judged(row: RawRow) -> RawRow:
    if row.problem:
        return row
    if len(row.cells) > MOST_COLUMNS and any(cell != "" for cell in row.cells[MOST_COLUMNS:]):
        return RawRow(
            row.line, row.cells[:MOST_COLUMNS], say("This row has more cells than a table of notes can have.")
        )
    if any(isinstance(cell, str) and len(cell) > LONGEST_CELL for cell in row.cells):
        return RawRow(row.line, row.cells, say("A cell of this row is longer than any note."))
    return row
