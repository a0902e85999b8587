"""CSV by RFC 4180: CRLF, UTF-8 without a byte order mark, quotes only where they are needed."""

import csv
import re
from collections.abc import Iterable
from pathlib import Path

from growlog.sharing.problems import PackageProblem
from growlog.words import say

_NEEDS_QUOTES = re.compile(r'[",\r\n]')
_LONGEST_CELL = 1 << 24


def csv_text(rows: Iterable[Iterable[str]]) -> str:
    """The file's text."""
    return "".join(",".join(_quoted(cell) for cell in row) + "\r\n" for row in rows)


def read_csv(path: Path) -> list[list[str]]:
    """The rows of a file, the header among them; PackageProblem with a sentence if it is not readable as CSV."""
    name = path.name
    limit_before = csv.field_size_limit(_LONGEST_CELL)  # the whole program's, so it is put back
    rows: list[list[str]] = []
    try:
        # A byte order mark, which spreadsheets like to add, is passed over.
        with path.open(encoding="utf-8-sig", newline="") as file:
            for row in csv.reader(file, strict=True):
                rows.append(row)
    except FileNotFoundError as error:
        raise PackageProblem(say("The file is missing."), name) from error
    except OSError as error:
        reason = error.strerror or str(error)
        raise PackageProblem(say("The file cannot be read: {reason}.", reason=reason), name) from error
    except UnicodeDecodeError as error:
        raise PackageProblem(say("The file is not UTF-8 text. Save it again as UTF-8."), name) from error
    except csv.Error as error:
        raise PackageProblem(say("The quotation marks are not those of a CSV file."), name, len(rows) + 1) from error
    finally:
        csv.field_size_limit(limit_before)
    return rows


def _quoted(cell: str) -> str:
    return '"' + cell.replace('"', '""') + '"' if _NEEDS_QUOTES.search(cell) else cell
