"""The quick line: a line of ordinary words becomes entries. Reading it is pure; nothing is written here."""

from growlog.services.quick_line.completion import Completion, LineWords, completions, line_words
from growlog.services.quick_line.from_logbook import check_line, context_of, words_of, write_line
from growlog.services.quick_line.line_reader import read_line
from growlog.services.quick_line.reading import (
    DraftedEntry,
    KnownMix,
    LineContext,
    LineProblem,
    LineReading,
    Span,
    SpanRole,
    entries_of,
)
from growlog.services.quick_line.wording import more_of, title_of

__all__ = [
    "Completion",
    "DraftedEntry",
    "KnownMix",
    "LineContext",
    "LineProblem",
    "LineReading",
    "LineWords",
    "Span",
    "SpanRole",
    "check_line",
    "completions",
    "context_of",
    "entries_of",
    "line_words",
    "more_of",
    "read_line",
    "title_of",
    "words_of",
    "write_line",
]
