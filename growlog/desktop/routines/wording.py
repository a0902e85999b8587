"""What a routine says of itself in a list."""

from collections.abc import Mapping

from growlog.records.entry import KINDS
from growlog.records.routine import Routine, RoutineFor
from growlog.services.due import rule_words
from growlog.words import say


def whom_words(routine: Routine, crop_names: Mapping[str, str]) -> str:
    """Whom it is for."""
    if routine.who is RoutineFor.ROOM:
        return say("the room")
    if routine.who is RoutineFor.CROP:
        return crop_names.get(routine.crop_id or "", say("a crop that is gone"))
    return say("each crop")


def done_by_words(kind: str) -> str:
    """What does it."""
    if not kind:
        return say("a tick")
    return say("Photo") if kind == "photo" else say(KINDS[kind].label)


def line_of(routine: Routine, crop_names: Mapping[str, str]) -> str:
    """Rule, whom it is for, what does it."""
    morning = say("in the morning") if routine.in_the_morning else ""
    by = say("done by: {what}", what=done_by_words(routine.entry_kind)) if routine.entry_kind else ""
    off = "" if routine.is_on else say("switched off")
    parts = (off, rule_words(routine), morning, whom_words(routine, crop_names), by)
    return "; ".join(part for part in parts if part)
