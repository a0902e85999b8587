"""Puts a number into the field that a word before or behind it names."""

from growlog.records.limits import limit
from growlog.services.quick_line import hints
from growlog.services.quick_line.drafts import Draft, DraftedCull
from growlog.services.quick_line.line_state import LineState
from growlog.services.quick_line.tokens import Token, TokenKind
from growlog.services.quick_line.units import unit_of_bare_number
from growlog.services.quick_line.vocabulary import DRAINED, MEASURES, NEEDS_UNIT, Meaning, Role
from growlog.words import say


class NotTaken(Exception):
    """A number that does not go where its word points; its text is a hint, which may be empty."""


def give(state: LineState, meaning: Meaning, place: int, first: int, stop: int) -> None:
    """Puts the number at a place into what the phrase from first to stop means. NotTaken if it cannot be."""
    token = state.tokens[place]
    phrase = state.phrase_text(first, stop)
    draft: Draft | None
    if meaning.role in (Role.COUNT, Role.HEAD):
        draft, name = _count(state, meaning, token, phrase)
    elif meaning.role in (Role.CAUSE, Role.CULL):
        draft, name = _cull(state, meaning, token), "culls"
    elif meaning.field == "labour_minutes":
        draft, name = labour(state, place, kept(state, token, meaning.field, phrase)), meaning.field
    else:
        draft, name = _measure(state, meaning, token, phrase)
    state.take(min(first, place), max(stop, place + 1), name, draft)
    state.last_field, state.last_number = name, place


def kept(state: LineState, token: Token, name: str, phrase: str) -> float:
    """The number in the unit that a field is kept in. NotTaken if its unit measures something else."""
    assert token.value is not None
    measure = MEASURES[name]
    if measure == "ph":
        if token.unit is not None:
            raise NotTaken
        return token.value
    unit = token.unit or (None if name in NEEDS_UNIT else unit_of_bare_number(measure, state.context.units))
    if unit is None:
        raise NotTaken(hints.unit_needed(phrase))
    if unit.measure != measure:
        raise NotTaken(say("{unit} is no unit for {word}.", unit=unit.name, word=phrase))
    if state.context.units != "us":
        _say_which(state, unit.name)
    return unit.kept(token.value)


def _say_which(state: LineState, unit: str) -> None:
    """Units that are not the same on both sides of the ocean."""
    which = {
        "gal": say("gal is the US gallon, 3.785 L. For the imperial one write imp gal."),
        "fl oz": say("fl oz is the US fluid ounce, 29.57 mL."),
        "tsp": say("tsp is the US teaspoon, 4.93 mL."),
        "tbsp": say("tbsp is the US tablespoon, 14.79 mL."),
    }
    if unit in which:
        state.remark(which[unit])


def labour(state: LineState, place: int, minutes: float) -> Draft | None:
    """Adds labour to the entry that is spoken of, or to the first one that follows."""
    draft = state.current or (state.drafts[-1] if state.drafts else None)
    so_far = state.labour_before if draft is None else draft.labour_minutes
    before = state.tokens[place - 1] if place else None
    follows_hours = before is not None and before.kind is TokenKind.NUMBER and _is_hours(before)
    if so_far is not None and not follows_hours:
        raise NotTaken(hints.already_said(say("labour")))
    if draft is None:
        state.labour_before = (so_far or 0) + minutes
    else:
        draft.labour_minutes = (so_far or 0) + minutes
    return draft


def into_feed(state: LineState, draft: Draft, name: str, token: Token) -> str:
    """Puts a measure into a feed, or into its drain while that is spoken of. Returns the field."""
    if draft.mode == "drain":
        name = DRAINED.get(name, name)
    label = say(limit(name).label)
    if draft.has(name):
        raise NotTaken(hints.already_said(label))
    draft.values[name] = kept(state, token, name, label)
    return name


def _is_hours(token: Token) -> bool:
    return token.unit is not None and token.unit.name == "h"


def _count(state: LineState, meaning: Meaning, token: Token, phrase: str) -> tuple[Draft, str]:
    if token.unit is not None and meaning.kind != "feed":
        raise NotTaken(say("{word} is a count, without a unit.", word=phrase))
    assert token.value is not None
    draft = state.draft_for(meaning.kind, meaning.field)
    if meaning.field == "fruit_count":
        if draft.numbers:
            draft = state.begin("pick")
        draft.mode = ""
    draft.values[meaning.field] = token.value if token.unit is None else kept(state, token, meaning.field, phrase)
    if meaning.role is Role.HEAD:
        draft.head_said = True
        draft.water_only = meaning.value is True
    return draft, meaning.field


def _cull(state: LineState, meaning: Meaning, token: Token) -> Draft:
    if token.unit is not None:
        raise NotTaken(hints.number_hint(token, in_feed=False))
    assert token.value is not None
    draft = pick_for_culls(state)
    draft.culls.append(DraftedCull(token.value, meaning.value if meaning.role is Role.CAUSE else None))  # type: ignore[arg-type]
    return draft


def pick_for_culls(state: LineState) -> Draft:
    """The pick that culls belong to: the one of this part of the line, or one of culls alone."""
    draft = state.latest("pick") or state.begin("pick")
    draft.mode = "cull"
    state.current = draft
    return draft


def _measure(state: LineState, meaning: Meaning, token: Token, phrase: str) -> tuple[Draft, str]:
    name = meaning.field
    if name == "canopy_ppfd_umol" and token.unit is not None and token.unit.measure == "illuminance":
        name = "canopy_lux"
    if meaning.kind == "feed":
        draft = state.current if state.current is not None and state.current.kind == "feed" else state.latest("feed")
        if draft is None:
            raise NotTaken(hints.feed_first())
        state.current = draft
        return draft, into_feed(state, draft, name, token)
    value = kept(state, token, name, phrase)
    if meaning.kind == "pick":
        draft = state.latest("pick")
        if draft is None or draft.has(name):
            raise NotTaken(hints.already_said(phrase) if draft else "")
    else:
        draft = state.draft_for(meaning.kind, name)
    draft.values[name] = value
    return draft, name
