"""How the columns of the grower's old notes are read, kept for the next file of the same shape."""

from dataclasses import dataclass
from datetime import datetime

from growlog.records.problems import Problem
from growlog.words import say

DATE_ORDERS = ("", "ymd", "dmy", "mdy")  # "": no date of the file needs an order
DECIMALS = (".", ",")


@dataclass(frozen=True)
class MappedColumn:
    """One column by its heading and what it becomes.

    field: "day", "at", "note", "crop" and the like, or kind and field such as "pick.total_weight_g"; "": left out.
    unit: the unit of its numbers as written, "" for the one that is kept. cumulative: each cell holds the sum so far.
    """

    column: str
    field: str = ""
    unit: str = ""
    cumulative: bool = False


@dataclass(frozen=True)
class ColumnMap:
    """The use of each column of a shape of file. heading: its heading cells, case-folded and joined by tabs.

    date_order: "ymd", "dmy" or "mdy", "" where none was needed. decimal: "." or ",".
    """

    id: str
    heading: str
    columns: tuple[MappedColumn, ...]
    date_order: str = ""
    decimal: str = "."
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = []
        if self.date_order not in DATE_ORDERS:
            found.append(
                Problem("date_order", say("{order} is no order of day, month and year.", order=self.date_order))
            )
        if self.decimal not in DECIMALS:
            found.append(Problem("decimal", say("{sign} is no decimal sign.", sign=self.decimal)))
        return found
