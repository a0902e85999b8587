"""Tables of figures as text for other programs."""

from collections.abc import Iterable

from growlog.sharing.csv_text import csv_text


def table_text(rows: Iterable[Iterable[str]]) -> str:
    """Rows as CSV by RFC 4180; numbers in them are to have a point."""
    return csv_text(rows)
