"""What would go in: each row with its entries or the reason why it stays out, and what must be answered before."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from functools import cached_property

from growlog.records.column_map import ColumnMap
from growlog.records.entry import Entry
from growlog.services.old_notes.old_table import OldTable
from growlog.sharing.old_notes.raw_rows import Cell


class RowOutcome(StrEnum):
    """What happens to a row."""

    GOES_IN = "goes-in"
    KNOWN = "known"  # the logbook has all of it already
    SAYS_NOTHING = "says-nothing"
    ASKED = "asked"  # stays out until its question is answered
    REFUSED = "refused"


@dataclass(frozen=True)
class PlannedRow:
    """A row and what becomes of it. reason: why it stays out, or what is unusual about it. known: how many of its
    entries the logbook has already, and which are left out.
    """

    line: int
    cells: tuple[Cell, ...]
    outcome: RowOutcome
    entries: tuple[Entry, ...] = ()
    reason: str = ""
    known: int = 0
    day: date | None = None

    @property
    def stays_out(self) -> bool:
        """Whether it could not be taken, though it states something."""
        return self.outcome in (RowOutcome.REFUSED, RowOutcome.ASKED)


@dataclass(frozen=True)
class Question:
    """Something that must be answered before anything goes in. choices: answers and their words; none where another
    use of the columns is the answer. place: the column that it is about, None for all.
    """

    key: str
    sentence: str
    choices: tuple[tuple[str, str], ...] = ()
    place: int | None = None


@dataclass(frozen=True)
class Answers:
    """What the person decided beside the use of the columns; "" is not answered.

    date_order: ymd, dmy or mdy. decimal: . or ,. year_slips: "mend" takes the year that fits the days around,
    "keep" the day as it stands, "" leaves the row out. with_known: entries that the logbook has go in once more.
    """

    date_order: str = ""
    decimal: str = ""
    year_slips: str = ""
    with_known: bool = False


@dataclass(frozen=True)
class ImportPlan:
    """Nothing is written yet. column_map: as used, to be remembered when the entries go in."""

    table: OldTable
    column_map: ColumnMap
    rows: tuple[PlannedRow, ...] = ()
    questions: tuple[Question, ...] = ()

    @cached_property
    def entries(self) -> tuple[Entry, ...]:
        """What goes in."""
        return tuple(e for row in self.rows if row.outcome is RowOutcome.GOES_IN for e in row.entries)

    @cached_property
    def refused(self) -> tuple[PlannedRow, ...]:
        """Rows that stay out, each with its reason."""
        return tuple(row for row in self.rows if row.stays_out)

    @cached_property
    def known_count(self) -> int:
        """Entries that are left out because the logbook has them."""
        return sum(row.known for row in self.rows)

    @property
    def is_ready(self) -> bool:
        """Whether it can be carried in: nothing is open, and there is something."""
        return not self.questions and bool(self.entries)

    def count(self, outcome: RowOutcome) -> int:
        """Rows of an outcome."""
        return self._counts.get(outcome, 0)

    @cached_property
    def _counts(self) -> dict[RowOutcome, int]:
        counts: dict[RowOutcome, int] = {}
        for row in self.rows:
            counts[row.outcome] = counts.get(row.outcome, 0) + 1
        return counts

    @cached_property
    def unusual_count(self) -> int:
        """How many rows go in though they are worth a look."""
        return sum(1 for _ in self.unusual())

    def unusual(self) -> Iterator[PlannedRow]:
        """Rows that go in though something about them is worth a look."""
        return (row for row in self.rows if row.outcome is RowOutcome.GOES_IN and row.reason)
