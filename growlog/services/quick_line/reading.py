"""What was understood of a line: the spans of its text, the entries drafted, and what is wrong or asked."""

from dataclasses import dataclass
from datetime import date, time
from enum import StrEnum

from growlog.records.entry import Detail, Entry, Owner
from growlog.services.open_logbook import new_id


class SpanRole(StrEnum):
    """How a span of the line was taken. A joining word means nothing by itself."""

    READ = "read"
    JOINED = "joined"
    UNREAD = "unread"


@dataclass(frozen=True)
class Span:
    """A piece of the line from start to end. meaning: the field it was read as. draft: of which entry, or None."""

    start: int
    end: int
    role: SpanRole
    meaning: str = ""
    draft: int | None = None


@dataclass(frozen=True)
class KnownMix:
    """A mix that a feed may name: its newest edition."""

    name: str
    id: str


@dataclass(frozen=True)
class LineContext:
    """What the reader knows beside the line. units: of bare numbers, "metric" or "us"."""

    units: str = "metric"
    comma_is_decimal: bool = False
    mixes: tuple[KnownMix, ...] = ()


@dataclass(frozen=True)
class DraftedEntry:
    """An entry as it would be written. mix_name: of a feed, "" if none is named."""

    detail: Detail
    at: time | None = None
    labour_minutes: float | None = None
    note: str = ""
    mix_name: str = ""


@dataclass(frozen=True)
class LineProblem:
    """A sentence about the line. asks: a question that may be answered yes.

    draft: about which entry; start: about what was not understood there; None for neither.
    """

    sentence: str
    asks: bool = False
    draft: int | None = None
    start: int | None = None


@dataclass(frozen=True)
class LineReading:
    """A line as it was understood. remarks: what is good to know and stops nothing."""

    text: str
    spans: tuple[Span, ...] = ()
    drafts: tuple[DraftedEntry, ...] = ()
    problems: tuple[LineProblem, ...] = ()
    remarks: tuple[str, ...] = ()

    @property
    def unread(self) -> tuple[str, ...]:
        """What was not understood, as it stands in the line."""
        return tuple(self.text[s.start : s.end] for s in self.spans if s.role is SpanRole.UNREAD)

    @property
    def unread_with_hints(self) -> tuple[tuple[str, str], ...]:
        """What was not understood, each with the way on, "" where there is none to give."""
        found = []
        for span in (s for s in self.spans if s.role is SpanRole.UNREAD):
            hints = [p.sentence for p in self.problems if p.start is not None and span.start <= p.start < span.end]
            found.append((self.text[span.start : span.end], " ".join(dict.fromkeys(hints))))
        return tuple(found)

    @property
    def refusals(self) -> tuple[LineProblem, ...]:
        """What keeps the line from being written."""
        return tuple(p for p in self.problems if not p.asks)

    @property
    def questions(self) -> tuple[LineProblem, ...]:
        """What has to be answered yes first."""
        return tuple(p for p in self.problems if p.asks)

    @property
    def can_be_written(self) -> bool:
        """Whether all of it was understood and nothing is wrong; questions may remain."""
        return bool(self.drafts) and not self.unread and not self.refusals


def entries_of(reading: LineReading, owner: Owner, day: date) -> list[Entry]:
    """The drafted entries as new entries of an owner on a civil day; ValueError if the line cannot be written."""
    if not reading.can_be_written:
        raise ValueError("the line has parts that were not understood or are wrong")
    return [_entry(draft, owner, day) for draft in reading.drafts]


def _entry(draft: DraftedEntry, owner: Owner, day: date) -> Entry:
    minutes = None if draft.labour_minutes is None else int(draft.labour_minutes)
    return Entry(new_id(), owner, day, draft.detail, draft.at, minutes, draft.note)
