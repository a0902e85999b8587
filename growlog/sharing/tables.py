"""The published tables that come with the program, as rows of text."""

import csv
from io import StringIO
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent
_FOLDERS = (_PACKAGE / "resources" / "tables", _PACKAGE.parent / "resources" / "tables")


def table_rows(name: str) -> list[dict[str, str]]:
    """The rows of a table such as "salts"; FileNotFoundError where the installation is incomplete."""
    for folder in _FOLDERS:
        path = folder / f"{name}.csv"
        if path.is_file():
            return list(csv.DictReader(StringIO(path.read_text(encoding="utf-8"))))
    raise FileNotFoundError(2, "A table that belongs to the program is missing", f"{name}.csv")
