"""Reads a line of plain words from left to right into entries."""

from collections.abc import Callable

from growlog.records.entry import PollinationWay
from growlog.services.quick_line import hints
from growlog.services.quick_line.drafts import Draft, drafted
from growlog.services.quick_line.line_state import LineState, Waiting
from growlog.services.quick_line.number_reader import take_number, take_time
from growlog.services.quick_line.reading import KnownMix, LineContext, LineProblem, LineReading, Span, SpanRole
from growlog.services.quick_line.tokens import TokenKind, tokens_of
from growlog.services.quick_line.units import is_unit, unit_named
from growlog.services.quick_line.values import pick_for_culls
from growlog.services.quick_line.vocabulary import PHRASES, Meaning, Role, key_of
from growlog.words import say

LONGEST_LINE = 10_000
_BINDING = frozenset(":=+&()")
_Handler = Callable[[LineState, Meaning, int, int], int]


def read_line(text: str, context: LineContext | None = None) -> LineReading:
    """A line as it is understood. Nothing is dropped: what was not understood is among the spans as unread."""
    context = context or LineContext()
    if len(text) > LONGEST_LINE:
        return _too_long(text)
    state = LineState(text, context, tokens_of(text, context.comma_is_decimal))
    place = 0
    while place < len(state.tokens):
        place = _step(state, place)
    _drop_waiting(state)
    return _result(state)


def _step(state: LineState, place: int) -> int:
    mix = _mix_at(state, place)
    if mix is not None:
        return _take_mix(state, place, *mix)
    token = state.tokens[place]
    if token.kind is TokenKind.MARK:
        return _mark(state, place)
    if token.kind is TokenKind.WORD:
        return _word(state, place)
    after = take_time(state, place, token.at) if token.kind is TokenKind.TIME else take_number(state, place)
    state.separated = False
    return after


def _mark(state: LineState, place: int) -> int:
    text = state.tokens[place].text
    if text == ";":
        _drop_waiting(state)
        state.current, state.since = None, len(state.drafts)
    elif text in (",", ".", "…") or text.startswith(".."):
        _drop_waiting(state)
        state.separated = True
    elif text not in _BINDING and not (text == "/" and _between_codes(state, place)):
        state.leave(place, place + 1)
        return place + 1
    state.join(place, place + 1)
    return place + 1


def _between_codes(state: LineState, place: int) -> bool:
    return state.current is not None and state.current.kind == "stage" and state.is_number(place + 1)


def _word(state: LineState, place: int) -> int:
    found = state.phrase_at(place)
    if found is None:
        if not _late_unit(state, place):
            state.leave(place, place + 1, hints.word_hint(state.tokens[place].text))
        return place + 1
    meaning, stop = found
    if meaning.role not in (Role.JOIN, Role.AT):
        if state.waiting is not None and state.waiting.meaning.field == meaning.field != "":
            state.waiting.stop = stop
            return stop
        _drop_waiting(state)
    return _HANDLERS[meaning.role](state, meaning, place, stop)


def _late_unit(state: LineState, place: int) -> bool:
    """86 93 78 … g: a unit after the row of weights that it belongs to."""
    word, draft = state.tokens[place].text, state.current
    if draft is None or not draft.numbers or draft.numbers[-1].unit is not None or not is_unit(word):
        return False
    if unit_named(word).measure != "weight":
        return False
    draft.numbers[-1].unit = unit_named(word)
    state.take(place, place + 1, "weights_g", draft)
    return True


def _head(state: LineState, meaning: Meaning, place: int, stop: int) -> int:
    draft = state.current if _of_water(state, meaning, place) else None
    draft = draft or _draft_of_head(state, meaning.kind)
    draft.head_said, draft.mode = True, ""
    draft.water_only = draft.water_only or meaning.value is True
    state.current = draft
    state.take(place, stop, "head", draft)
    state.last_field, state.separated = "", False
    return stop


def _of_water(state: LineState, meaning: Meaning, place: int) -> bool:
    """Fed 1.2 L of water: the same entry, and plain water."""
    is_of = place > 0 and state.tokens[place - 1].text.lower() == "of" and state.last_number == place - 2
    return meaning.value is True and is_of and state.last_field == "volume_l"


def _draft_of_head(state: LineState, kind: str) -> Draft:
    """An entry that was begun without its head goes on with it; a second head begins another entry."""
    draft = state.latest(kind)
    if draft is None or draft.head_said:
        return state.begin(kind)
    if kind == "pick" and (draft is not state.current or (state.separated and draft.has_content)):
        return state.begin(kind)
    if kind == "feed" and draft.has("volume_l"):
        return state.begin(kind)
    return draft


def _named(state: LineState, meaning: Meaning, place: int, stop: int) -> int:
    """A word for a count or a measure whose number comes after it; or one that repeats what was just taken."""
    if state.last_field == meaning.field and state.last_number == place - 1 and not state.is_number(stop):
        state.take(place, stop, meaning.field, state.current)
    elif not state.is_clear(meaning):
        state.leave(place, stop, hints.say_removed(state.phrase_text(place, stop)))
    elif meaning.field == "fruit_count":
        return _head(state, meaning, place, stop)
    else:
        state.waiting = Waiting(meaning, place, stop)
    return stop


def _cause(state: LineState, meaning: Meaning, place: int, stop: int) -> int:
    draft = state.latest("pick")
    open_cull = next((c for c in reversed(draft.culls) if c.cause is None), None) if draft is not None else None
    if draft is None or open_cull is None:
        state.waiting = Waiting(meaning, place, stop)
        return stop
    open_cull.cause = meaning.value  # type: ignore[assignment]
    draft.mode = "cull"
    state.current = draft
    state.take(place, stop, "culls", draft)
    return stop


def _cull(state: LineState, _meaning: Meaning, place: int, stop: int) -> int:
    state.take(place, stop, "culls", pick_for_culls(state))
    return stop


def _drain(state: LineState, _meaning: Meaning, place: int, stop: int) -> int:
    draft = state.current if state.current is not None and state.current.kind == "feed" else state.latest("feed")
    draft = draft or state.begin("feed")
    draft.mode = "drain"
    state.current = draft
    state.take(place, stop, "drain_l", draft)
    return stop


def _way(state: LineState, meaning: Meaning, place: int, stop: int) -> int:
    if meaning.value is PollinationWay.MALE_FLOWER and state.is_number(stop):
        state.waiting = Waiting(PHRASES["males open"], place, stop)  # male flowers 4: how many were open
        return stop
    draft = state.latest("pollination") or state.begin("pollination")
    if draft.way not in (None, meaning.value):
        state.leave(place, stop, hints.already_said(say("The way")))
        return stop
    draft.way = meaning.value  # type: ignore[assignment]
    state.current = draft
    state.take(place, stop, "way", draft)
    return stop


def _echo(state: LineState, meaning: Meaning, place: int, stop: int) -> int:
    if state.last_field == meaning.field and state.last_number == place - 1:
        state.take(place, stop, meaning.field, state.current)
    else:
        state.leave(place, stop)
    return stop


def _total(state: LineState, meaning: Meaning, place: int, stop: int) -> int:
    draft = state.current
    is_behind = state.last_field == "weights_g" and state.last_number == place - 1
    if draft is None or not is_behind or draft.has("total_weight_g") or draft.numbers[-1].unit is None:
        state.waiting = Waiting(meaning, place, stop)
        return stop
    last = draft.numbers.pop()
    assert last.unit is not None
    draft.values["total_weight_g"] = last.unit.kept(last.value)
    state.take(place, stop, "total_weight_g", draft)
    return stop


def _note(state: LineState, _meaning: Meaning, place: int, stop: int) -> int:
    """All that follows is the note, up to a semicolon or the end of the line."""
    while stop < len(state.tokens) and state.tokens[stop].text in (":", "-", "–"):
        stop += 1
    after = next((n for n in range(stop, len(state.tokens)) if state.tokens[n].text == ";"), len(state.tokens))
    draft = state.begin("note")
    draft.note = state.phrase_text(stop, after) if after > stop else ""
    state.take(place, after, "note", draft)
    return after


def _join(state: LineState, _meaning: Meaning, place: int, stop: int) -> int:
    state.join(place, stop)
    return stop


_HANDLERS: dict[Role, _Handler] = {
    Role.HEAD: _head,
    Role.COUNT: _named,
    Role.LABEL: _named,
    Role.CAUSE: _cause,
    Role.WAY: _way,
    Role.ECHO: _echo,
    Role.CULL: _cull,
    Role.DRAIN: _drain,
    Role.TOTAL: _total,
    Role.NOTE: _note,
    Role.AT: _join,
    Role.JOIN: _join,
}


def _mix_at(state: LineState, place: int) -> tuple[KnownMix, int] | None:
    """The mix whose name stands at a place, the longest one, and where the next token stands."""
    start = state.tokens[place].start
    for mix in sorted(state.context.mixes, key=lambda m: -len(m.name)):
        end = start + len(mix.name)
        if not mix.name or state.text[start:end].casefold() != mix.name.casefold() or _is_plain_word(state, mix, place):
            continue
        stop = place
        while stop < len(state.tokens) and state.tokens[stop].end <= end:
            stop += 1
        if state.tokens[stop - 1].end == end and stop > place:
            return mix, stop
    return None


def _is_plain_word(state: LineState, mix: KnownMix, place: int) -> bool:
    """A mix with the name of a word of the line counts as a mix behind "mix", "with" or "of" only."""
    if key_of(mix.name.split()) not in PHRASES and not is_unit(mix.name):
        return False
    return not place or state.tokens[place - 1].text.lower() not in ("mix", "with", "of")


def _take_mix(state: LineState, place: int, mix: KnownMix, stop: int) -> int:
    _drop_waiting(state)
    draft = state.current if state.current is not None and state.current.kind == "feed" else None
    if draft is None or draft.mix is not None:
        draft = state.begin("feed")
    draft.mix = mix
    state.take(place, stop, "mix_id", draft)
    state.separated = False
    return stop


def _drop_waiting(state: LineState) -> None:
    waiting, state.waiting = state.waiting, None
    if waiting is not None:
        phrase = state.phrase_text(waiting.first, waiting.stop)
        state.leave(waiting.first, waiting.stop, hints.missing_number(phrase))


def _result(state: LineState) -> LineReading:
    if state.drafts and state.labour_before is not None and state.drafts[0].labour_minutes is None:
        state.drafts[0].labour_minutes = state.labour_before
    problems = list(state.problems)
    spans = state.spans()
    unread = any(span.role is SpanRole.UNREAD for span in spans)
    entries = []
    for number, draft in enumerate(state.drafts):
        entry, found = drafted(draft, number, state.line_at, state.context.units)
        entries.append(entry)
        problems += found if draft.has_content or not unread else []  # what is empty may be so for what was not read
    if state.tokens and not entries and not problems:
        problems.append(LineProblem(say("Say what happened, such as picked, feed or note.")))
    return LineReading(state.text, spans, tuple(entries), tuple(dict.fromkeys(problems)), tuple(state.remarks))


def _too_long(text: str) -> LineReading:
    stripped = text.strip()
    start = text.index(stripped) if stripped else 0
    spans = (Span(start, start + len(stripped), SpanRole.UNREAD),) if stripped else ()
    problem = LineProblem(say("The line is too long. Write it in parts."), start=start)
    return LineReading(text, spans, (), (problem,))
