"""Published figures for the tests: rows of the tables in tests/data/reference, with their sources beside them."""

import csv
from pathlib import Path

_FOLDER = Path(__file__).parent / "data" / "reference"


def published(table: str) -> list[dict[str, str]]:
    """All rows of a table as text."""
    with (_FOLDER / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))
