"""What the quick line takes from an open logbook, and what a line would meet there."""

from collections.abc import Iterable
from datetime import date

from growlog.records.change import Change
from growlog.records.entry import Entry, Owner
from growlog.records.problems import Problem
from growlog.services.entries import add_entries, check_entry
from growlog.services.mixes import mixes_of
from growlog.services.open_logbook import OpenLogbook
from growlog.services.quick_line.completion import LineWords, line_words
from growlog.services.quick_line.reading import KnownMix, LineContext, LineReading, entries_of
from growlog.words import say, show_day, show_number, units


def context_of(log: OpenLogbook) -> LineContext:
    """The mixes of the logbook, and the units and the decimal mark that the window shows."""
    mixes = tuple(KnownMix(mix.name.strip(), mix.id) for mix in mixes_of(log))
    return LineContext(units(), "," in show_number(0.5, 1), mixes)


def words_of(context: LineContext, entries: Iterable[Entry]) -> LineWords:
    """What a line about a crop with these entries may go on with."""
    return line_words([mix.name for mix in context.mixes], entries)


def check_line(log: OpenLogbook, reading: LineReading, owner: Owner, day: date) -> list[Problem]:
    """What the logbook knows against the entries of a line, or asks about them. Writes nothing."""
    found = [p for entry in entries_of(reading, owner, day) for p in check_entry(log, entry)]
    return list(dict.fromkeys(found))


def write_line(log: OpenLogbook, reading: LineReading, owner: Owner, day: date) -> Change:
    """Writes all entries of a line as one undoable change; RecordRefused with all that is wrong."""
    entries = entries_of(reading, owner, day)
    title = say("Quick line on {day}", day=show_day(day)) if len(entries) > 1 else ""
    return add_entries(log, entries, title)
