"""Reads lines for the tests and says what became of them in one string an entry."""

from growlog.services.quick_line import DraftedEntry, KnownMix, LineContext, LineReading, more_of, read_line, title_of

BLOOM = KnownMix("Basic bloom", "mix-1")
CONTEXT = LineContext(mixes=(BLOOM,))


def read(line: str) -> LineReading:
    """A line in metric units, with one mix known."""
    return read_line(line, CONTEXT)


def words_of_entry(draft: DraftedEntry) -> str:
    """Title and particulars as the page of words writes them, with plain blanks."""
    return " · ".join(part for part in (title_of(draft), more_of(draft)) if part).replace("\u2009", " ")


def became(line: str) -> list[str]:
    """The entries of a line that can be written; fails for one that cannot."""
    reading = read(line)
    assert reading.can_be_written, (line, reading.unread, [p.sentence for p in reading.problems])
    return [words_of_entry(draft) for draft in reading.drafts]


def detail_of(line: str) -> object:
    """The detail of the one entry of a line."""
    reading = read(line)
    assert reading.can_be_written, (line, reading.unread, [p.sentence for p in reading.problems])
    assert len(reading.drafts) == 1, line
    return reading.drafts[0].detail
