"""What the reader keeps while it goes through a line: where it stands, the drafts, and how each token was taken."""

from dataclasses import dataclass, field
from datetime import time

from growlog.services.quick_line.drafts import Draft
from growlog.services.quick_line.reading import LineContext, LineProblem, Span, SpanRole
from growlog.services.quick_line.tokens import Token, TokenKind
from growlog.services.quick_line.vocabulary import LONGEST_PHRASE, PHRASES, WITHIN, Meaning, key_of


@dataclass
class Taken:
    """How a token was taken."""

    role: SpanRole
    meaning: str = ""
    draft: int | None = None


@dataclass
class Waiting:
    """A label whose number has not come yet."""

    meaning: Meaning
    first: int
    stop: int


@dataclass
class LineState:
    """The line, cut into tokens, and what became of them. since: the first draft after the last semicolon."""

    text: str
    context: LineContext
    tokens: list[Token]
    taken: list[Taken | None] = field(default_factory=list)
    drafts: list[Draft] = field(default_factory=list)
    current: Draft | None = None
    waiting: Waiting | None = None
    separated: bool = False
    since: int = 0
    last_field: str = ""
    last_number: int = -1
    line_at: time | None = None
    labour_before: float | None = None
    problems: list[LineProblem] = field(default_factory=list)
    remarks: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.taken = [None] * len(self.tokens)

    def begin(self, kind: str) -> Draft:
        """A new entry of a kind, which is spoken of from now on."""
        self.current = Draft(kind)
        self.drafts.append(self.current)
        return self.current

    def draft_for(self, kind: str, name: str = "") -> Draft:
        """The entry of a kind that still wants a field: the current one, an earlier one of this part, or a new one."""
        recent = [d for d in self.drafts[self.since :] if d.kind == kind and d is not self.current]
        for draft in ([self.current] if self.current is not None else []) + recent[::-1]:
            if draft.kind == kind and not draft.has(name) and not _apart(name, draft):
                self.current = draft
                return draft
        return self.begin(kind)

    def is_clear(self, meaning: Meaning) -> bool:
        """Whether a word says by itself what was counted, here where it stands."""
        return meaning.value != WITHIN or (self.current is not None and self.current.kind == meaning.kind)

    def latest(self, kind: str) -> Draft | None:
        """The last entry of a kind in this part of the line."""
        of_kind = [d for d in self.drafts[self.since :] if d.kind == kind]
        return of_kind[-1] if of_kind else None

    def take(self, first: int, stop: int, meaning: str, draft: Draft | None) -> None:
        """Marks tokens as read."""
        number = self.drafts.index(draft) if draft is not None and draft in self.drafts else None
        self._mark(first, stop, Taken(SpanRole.READ, meaning, number))

    def join(self, first: int, stop: int) -> None:
        """Marks tokens as words that only bind."""
        self._mark(first, stop, Taken(SpanRole.JOINED))

    def leave(self, first: int, stop: int, hint: str = "") -> None:
        """Marks tokens as not understood."""
        self._mark(first, stop, Taken(SpanRole.UNREAD))
        if hint:
            self.problems.append(LineProblem(hint, start=self.tokens[first].start))

    def remark(self, sentence: str) -> None:
        """Something good to know, once."""
        if sentence not in self.remarks:
            self.remarks.append(sentence)

    def phrase_at(self, place: int) -> tuple[Meaning, int] | None:
        """The longest phrase that begins with a token, and where the next token stands; None if there is none."""
        words: list[str] = []
        found: tuple[Meaning, int] | None = None
        for index in range(place, min(place + LONGEST_PHRASE, len(self.tokens))):
            token = self.tokens[index]
            if token.kind is not TokenKind.WORD:
                break
            words.append(token.text)
            meaning = PHRASES.get(key_of(words))
            if meaning is not None:
                found = meaning, index + 1
        return found

    def phrase_text(self, first: int, stop: int) -> str:
        """Tokens as they stand in the line."""
        return self.text[self.tokens[first].start : self.tokens[stop - 1].end]

    def is_number(self, place: int) -> bool:
        """Whether a number stands at a place, a colon before it or not."""
        while place < len(self.tokens) and self.tokens[place].text in (":", "="):
            place += 1
        return place < len(self.tokens) and self.tokens[place].kind is TokenKind.NUMBER

    def spans(self) -> tuple[Span, ...]:
        """All tokens as spans; neighbours that were not understood are one."""
        found: list[Span] = []
        for token, taken in zip(self.tokens, self.taken, strict=True):
            taken = taken or Taken(SpanRole.UNREAD)
            span = Span(token.start, token.end, taken.role, taken.meaning, taken.draft)
            if found and span.role is SpanRole.UNREAD and found[-1].role is SpanRole.UNREAD:
                span = Span(found.pop().start, span.end, SpanRole.UNREAD)
            found.append(span)
        return tuple(found)

    def _mark(self, first: int, stop: int, taken: Taken) -> None:
        for place in range(first, stop):
            self.taken[place] = taken


def _apart(name: str, draft: Draft) -> bool:
    """Vibrated trusses and flowers pollinated one by one are entries of their own."""
    others = {"females_pollinated", "males_open"} if name == "trusses_vibrated" else {"trusses_vibrated"}
    one_by_one = name in ("trusses_vibrated", "females_pollinated", "males_open")
    return one_by_one and bool(others & draft.values.keys())
