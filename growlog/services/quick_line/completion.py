"""How a begun word goes on: the names of mixes, earlier notes of the crop, and the words of the line."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from growlog.records.entry import Entry, Pick, Pollination
from growlog.services.quick_line.vocabulary import LONGEST_PHRASE, PHRASES, key_of

_OFFERED = ("picked", "fruit", "culled", "cracked", "misshapen", "blossom-end rot", "oversize", "damaged", "total",
            "feed", "plain water", "drain", "strength", "females pollinated", "males open", "trusses vibrated", "brush",
            "swab", "shaken", "old leaves removed", "side shoots removed", "tips stopped", "stems tied",
            "plants staked", "air", "humidity", "solution temperature", "height", "container weight", "canopy light",
            "fruit check", "females open", "hanging", "dropped", "thinned", "stage", "labour", "note")  # fmt: skip
_NOTE = re.compile(r"(?:^|[^\w-])notes?\s*:?\s+(\S[^;]*)$", re.IGNORECASE)
_WORD_BEGINS = re.compile(r"(?<![^\s,;:(])[^\s,;:(]")
_SHORTEST = 2
_MOST = 8


@dataclass(frozen=True)
class LineWords:
    """What a line may go on with, each best first. words: those used before stand before the rest."""

    mixes: tuple[str, ...] = ()
    notes: tuple[str, ...] = ()
    words: tuple[str, ...] = _OFFERED


@dataclass(frozen=True)
class Completion:
    """Text that takes the place of what stands from start to end."""

    start: int
    end: int
    text: str


def line_words(mixes: Iterable[str], entries: Iterable[Entry]) -> LineWords:
    """The words for a crop: its mixes, its earlier notes with the latest first, and the words that it used first."""
    entries = sorted(entries, key=lambda e: e.day, reverse=True)
    notes = dict.fromkeys(note for e in entries if (note := e.note.strip()) and "\n" not in note and ";" not in note)
    used = dict.fromkeys(word for e in entries for word in _words_in(e))
    return LineWords(tuple(mixes), tuple(notes), tuple(dict.fromkeys([*used, *_OFFERED])))


def completions(text: str, cursor: int, words: LineWords) -> tuple[Completion, ...]:
    """How what was begun before the cursor may go on, best first; nothing inside a word."""
    left = text[:cursor]
    if not left.strip() or not _at_end_of_word(text, cursor):
        return ()
    in_note = _NOTE.search(left)
    if in_note is not None:
        return _matching(in_note.start(1), left, words.notes)
    begins = [m.start() for m in _WORD_BEGINS.finditer(left[-400:])][-LONGEST_PHRASE:]
    shift = max(0, len(left) - 400)
    found: list[Completion] = []
    for start in begins:
        found += _matching(start + shift, left, words.mixes)
        if key_of(left[start + shift :].split()) not in PHRASES:
            found += _matching(start + shift, left, words.words)
    return tuple(dict.fromkeys(found))[:_MOST]


def _at_end_of_word(text: str, cursor: int) -> bool:
    return not text[cursor - 1].isspace() and (cursor >= len(text) or not text[cursor].isalnum())


def _matching(start: int, left: str, offered: Iterable[str]) -> tuple[Completion, ...]:
    typed = left[start:]
    if len(typed) < _SHORTEST:
        return ()
    begun = typed.casefold()
    fits = [o for o in offered if len(o) > len(typed) and o.casefold().startswith(begun)]
    return tuple(Completion(start, len(left), fit) for fit in fits)


def _words_in(entry: Entry) -> list[str]:
    detail = entry.detail
    if isinstance(detail, Pick):
        return [cull.cause.label for cull in detail.culls]
    if isinstance(detail, Pollination) and detail.way is not None:
        return [detail.way.label] if detail.way.label in PHRASES else []
    return []
