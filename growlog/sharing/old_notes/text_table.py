"""Tables as text: the encoding, the separator and the quotation marks are found out, never asked."""

import codecs
import csv
import re
from collections import Counter
from collections.abc import Iterator

from growlog.sharing.cells import unguard
from growlog.sharing.old_notes.raw_rows import CellsRead, OldNotesUnreadable, RawRow
from growlog.words import say

SEPARATORS = (",", ";", "\t", "|")
_LINE_END = re.compile(r"\r\n|\r|\n")
_SEPARATOR_LINE = re.compile(r"sep=(.)", re.IGNORECASE)
_SAMPLE_LINES = 60
_MOST_LINES_OF_A_CELL = 60
_TELL_EVERY = 2000
# Looked up at once: a decoder is a module, and no thread beside the window may be the first to import one.
_DECODERS = [codecs.lookup(name) for name in ("utf-8-sig", "utf-16", "cp1252", "latin-1")]


def decoded(content: bytes) -> str:
    """The text: UTF-16 or UTF-8 where a byte-order mark says so, UTF-8 where it is valid, else Windows-1252."""
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return _as_text(content, "utf-16")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = _as_text(content, "cp1252")
    return _must_be_text(text)


def text_rows(text: str, on_row: CellsRead | None = None) -> Iterator[RawRow]:
    """The rows of a text; blank lines are rows without cells' content, so that lines keep their numbers."""
    lines = _LINE_END.split(text)
    first = 0
    told = _SEPARATOR_LINE.fullmatch(lines[0].strip()) if lines else None
    if told:
        first = 1  # a line that some spreadsheets put first to name the separator
    separator = told[1] if told else separator_of(lines[:_SAMPLE_LINES])
    while lines and not lines[-1].strip():
        lines.pop()
    at = first
    while at < len(lines):
        if on_row is not None and at % _TELL_EVERY == 0:
            on_row(at)
        taken, row = _row_at(lines, at, separator)
        yield row
        at += taken


def separator_of(lines: list[str]) -> str:
    """The separator that cuts most lines into the same number of cells, and into most of them."""
    return max(SEPARATORS, key=lambda separator: _evenness(lines, separator))


def _evenness(lines: list[str], separator: str) -> tuple[float, int]:
    counts = Counter(_cell_count(line, separator) for line in lines if line.strip())
    counts.pop(1, None)
    if not counts:
        return 0.0, 0
    cells, often = counts.most_common(1)[0]
    share = often / sum(1 for line in lines if line.strip())
    return (1.0 if share > 0.7 else share), cells  # a few broken rows must not hand the file to a lesser separator


def _cell_count(line: str, separator: str) -> int:
    try:
        return len(next(csv.reader([line], delimiter=separator), []))
    except csv.Error:  # a field longer than the reader takes
        return line.count(separator) + 1


def _row_at(lines: list[str], at: int, separator: str) -> tuple[int, RawRow]:
    """How many lines the row takes, and the row; a quotation that never ends costs its own line only."""
    line = lines[at]
    if '"' not in line:
        return 1, RawRow(at + 1, tuple(_tidied(cell) for cell in line.split(separator)))
    problem = ""
    for taken in range(1, min(_MOST_LINES_OF_A_CELL, len(lines) - at) + 1):
        try:
            cells = next(csv.reader(["\n".join(lines[at : at + taken])], delimiter=separator, strict=True))
        except csv.Error as error:
            problem = say("The quotation marks of this row do not fit together.")
            if "field limit" in str(error):
                problem = say("A field of this row is longer than {n} characters.", n=csv.field_size_limit())
            if "unexpected end" not in str(error):
                break
            continue
        return taken, RawRow(at + 1, tuple(_tidied(cell) for cell in cells))
    return 1, RawRow(at + 1, tuple(_tidied(cell) for cell in line.split(separator)), problem)


def _tidied(cell: str) -> str:
    return unguard(cell.strip())


def _as_text(content: bytes, encoding: str) -> str:
    try:
        return _must_be_text(content.decode(encoding))
    except UnicodeDecodeError:
        if encoding == "utf-16":
            raise OldNotesUnreadable(say("The file is damaged: it is not the text it says it is.")) from None
        return _must_be_text(content.decode("latin-1"))  # Windows-1252 leaves five bytes without a letter


def _must_be_text(text: str) -> str:
    if "\x00" in text:
        raise OldNotesUnreadable(say("This is not a table as text. Save it as CSV in UTF-8, or as xlsx or ods."))
    return text
