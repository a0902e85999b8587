"""What a number of the line is: by the word that waits for it, the word behind it, what is spoken of, or its unit."""

from datetime import time

from growlog.records.entry import PollinationWay
from growlog.services.quick_line import hints
from growlog.services.quick_line.drafts import Draft, DraftedCull
from growlog.services.quick_line.line_state import LineState
from growlog.services.quick_line.pick_numbers import PickedNumber
from growlog.services.quick_line.tokens import Token, TokenKind, hour_of_half_day
from growlog.services.quick_line.values import NotTaken, give, into_feed, labour
from growlog.services.quick_line.vocabulary import MEASURES, PHRASES, Meaning, Role

_DEFAULTS = {"pick": "fruit_count", "pollination": "females_pollinated"}
_BEHIND = (Role.COUNT, Role.CAUSE, Role.CULL, Role.LABEL, Role.HEAD)
_MALES_OPEN = PHRASES["males open"]


def take_number(state: LineState, place: int) -> int:
    """Takes the number at a place; returns the place of what comes next."""
    token = state.tokens[place]
    try:
        return _take(state, place, token)
    except NotTaken as hint:
        _leave_with_label(state, place, str(hint))
        return place + 1


def take_time(state: LineState, place: int, at: time | None) -> int:
    """A time of day: of the whole line where it stands first, else of the entry before it."""
    draft = state.current or (state.drafts[-1] if state.drafts else None)
    said = state.line_at if draft is None else draft.at
    if at is None or said is not None:
        state.leave(place, place + 1, hints.already_said(hints.time_word()) if at is not None else "")
        return place + 1
    if draft is None:
        state.line_at = at
    else:
        draft.at = at
    state.take(place, place + 1, "at", draft)
    return place + 1


def _take(state: LineState, place: int, token: Token) -> int:
    if token.value is None:
        raise NotTaken(hints.number_hint(token, in_feed=False))
    if state.waiting is not None:
        waiting = state.waiting
        give(state, waiting.meaning, place, waiting.first, waiting.stop)
        state.waiting = None
        return place + 1
    if token.unit is not None and token.unit.measure == "clock":
        hour = hour_of_half_day(token.value, token.unit.name)
        return take_time(state, place, time(hour) if hour < 24 else None)
    if token.unit is None and place and state.tokens[place - 1].text.lower() == "at":
        raise NotTaken(hints.clock_needed(token.text))
    behind = _word_behind(state, place, token)
    if behind is not None:
        meaning, first, stop = behind
        give(state, meaning, place, first, stop)
        return stop
    if not (_by_topic(state, place, token) or _by_unit(state, place, token)):
        raise NotTaken(_hint(state, place, token))
    return place + 1


def _hint(state: LineState, place: int, token: Token) -> str:
    """The way on; none where the word behind the number is what was not understood."""
    following = state.tokens[place + 1] if place + 1 < len(state.tokens) else None
    unknown = following is not None and following.kind is TokenKind.WORD and state.phrase_at(place + 1) is None
    in_feed = state.current is not None and state.current.kind == "feed"
    return "" if unknown and token.unit is None else hints.number_hint(token, in_feed)


def _leave_with_label(state: LineState, place: int, hint: str) -> None:
    waiting, state.waiting = state.waiting, None
    if waiting is not None:
        state.leave(waiting.first, waiting.stop)
    state.leave(place, place + 1, hint)


def _word_behind(state: LineState, place: int, token: Token) -> tuple[Meaning, int, int] | None:
    """The phrase right behind a number that names it, unless that phrase has a number of its own."""
    first = place + 1
    volume = token.unit is not None and token.unit.measure == "volume"
    if volume and first < len(state.tokens) and state.tokens[first].text.lower() == "of":
        first += 1
    found = state.phrase_at(first)
    if found is None:
        return None
    meaning, stop = found
    if meaning.value is PollinationWay.MALE_FLOWER and token.unit is None:
        meaning = _MALES_OPEN
    if not state.is_clear(meaning) and token.unit is None:
        raise NotTaken(hints.say_removed(state.phrase_text(first, stop)))
    fits = meaning.role in _BEHIND and _fits(state, meaning, stop, token)
    return (meaning, first, stop) if fits else None


def _fits(state: LineState, meaning: Meaning, stop: int, token: Token) -> bool:
    if meaning.role is Role.LABEL:
        if token.unit is None:
            return not state.is_number(stop)
        return token.unit.measure == MEASURES.get(meaning.field)
    if meaning.role is Role.HEAD:
        return _head_behind(state, meaning, stop, token)
    return token.unit is None and state.is_clear(meaning) and not _names_the_next(state, meaning, stop)


def _head_behind(state: LineState, meaning: Meaning, stop: int, token: Token) -> bool:
    """12 picked, 5 pollinated, 1.2 L feed: a word for the kind behind its number."""
    if meaning.kind == "feed":
        in_feed = state.current is not None and state.current.kind == "feed"
        is_volume = token.unit is not None and token.unit.measure == "volume"
        return is_volume and not in_feed and not state.is_number(stop)
    return meaning.kind in _DEFAULTS and token.unit is None and (state.current is None or not state.is_number(stop))


def _names_the_next(state: LineState, meaning: Meaning, stop: int) -> bool:
    """Pollinated 5 males 9: the word belongs to the number behind it, the number before it to the head."""
    draft = state.current
    default = _DEFAULTS.get(draft.kind, "") if draft is not None and draft.head_said else ""
    if not default or meaning.field == default or draft is None or draft.has(default) or draft.numbers:
        return False
    if not state.is_number(stop):
        return False
    behind = state.phrase_at(stop + 1)
    return behind is None or behind[0].role is not Role.COUNT


def _by_topic(state: LineState, place: int, token: Token) -> bool:
    """A number without a word of its own, in the entry that is spoken of."""
    draft = state.current
    measure = token.unit.measure if token.unit is not None else ""
    if draft is None or token.value is None:
        return False
    taken = ""
    if draft.kind == "pick" and measure in ("", "weight"):
        taken = _in_pick(state, draft, token, token.value)
    elif draft.kind == "feed" and (measure in ("volume", "ec") or (not measure and not draft.has(_volume(draft)))):
        name = "ec_ms_per_cm" if measure == "ec" else "volume_l"
        taken = into_feed(state, draft, name, token)
    elif not measure and draft.kind == "pollination" and not draft.has("females_pollinated"):
        draft.values["females_pollinated"] = token.value
        taken = "females_pollinated"
    elif not measure and draft.kind == "stage":
        draft.codes += token.text.split(",")
        taken = "codes"
    return _taken(state, place, draft, taken)


def _volume(draft: Draft) -> str:
    return "drain_l" if draft.mode == "drain" else "volume_l"


def _in_pick(state: LineState, draft: Draft, token: Token, value: float) -> str:
    if draft.mode != "cull":
        if token.unit is None and state.separated and any(n.unit is not None for n in draft.numbers):
            return ""  # a row of weights ended with its unit; what begins behind the comma is something else
        draft.numbers.append(PickedNumber(value, token.unit, state.separated))
        return "weights_g"
    if token.unit is None:
        draft.culls.append(DraftedCull(value))
        return "culls"
    if not draft.culls or draft.culls[-1].weight_g is not None:
        return ""
    draft.culls[-1].weight_g = token.unit.kept(value)
    return "culls"


def _by_unit(state: LineState, place: int, token: Token) -> bool:
    """A number whose unit alone says what it is."""
    if token.unit is None or token.value is None:
        return False
    measure, value = token.unit.measure, token.unit.kept(token.value)
    in_feed = state.current is not None and state.current.kind == "feed"
    if measure == "duration":
        return _taken(state, place, labour(state, place, value), "labour_minutes")
    name = {"ppfd": "canopy_ppfd_umol", "illuminance": "canopy_lux"}.get(measure, "")
    if measure == "temperature" and not in_feed:
        name = "air_temperature_c"
    if measure == "percent" and state.current is not None and state.current.kind == "reading":
        name = "relative_humidity_percent"
    if not name:
        return False
    draft = state.draft_for("reading", name)
    draft.values[name] = value
    return _taken(state, place, draft, name)


def _taken(state: LineState, place: int, draft: Draft | None, name: str) -> bool:
    if not name:
        return False
    state.take(place, place + 1, name, draft)
    state.last_field, state.last_number = name, place
    return state.tokens[place].kind is TokenKind.NUMBER
