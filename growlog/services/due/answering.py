"""Answers to what is due: done, put off to a later day, or left out with a reason."""

from datetime import date

from growlog.records.change import Change
from growlog.records.problems import Problem, RecordRefused, refuse
from growlog.records.routine import DueAnswer, DueOutcome
from growlog.services.due.drafts import drafted_entry
from growlog.services.due.item import DueHow, DueItem
from growlog.services.entries import add_entry, standing_entry_problems
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.words import say, show_day


def mark_done(log: OpenLogbook, item: DueItem) -> Change:
    """Writes the entry that does it, where one key is enough for that, or remembers that it was done.

    RecordRefused with all that is wrong with the entry. ValueError for what needs a form, photos or the day of
    clearing first (see `item.how`): that is done by writing those.
    """
    if item.how is DueHow.TICK:
        return tick(log, item)
    if item.how is not DueHow.WRITES or item.crop_id is None:
        raise ValueError(f"{item.key} is done by a {item.how.value}, not at once")
    if item.entry_kind == "note":
        return _write_note(log, item)
    return add_entry(log, drafted_entry(log, item, item.crop_id))


def tick(log: OpenLogbook, item: DueItem) -> Change:
    """Remembers that it was done, without an entry."""
    answer = _answer(item, DueOutcome.DONE)
    return _write(log, answer, say("Done: {what}", what=_named(item)))


def put_off(log: OpenLogbook, item: DueItem, until: date) -> Change:
    """Puts it off to a later day; RecordRefused where that day is not later."""
    if until <= log.today():
        raise RecordRefused([Problem("until_day", say("Say to which later day it is put off."))])
    answer = _answer(item, DueOutcome.PUT_OFF, until=until)
    return _write(log, answer, say("Put off to {day}: {what}", day=show_day(until), what=_named(item)))


def leave_out(log: OpenLogbook, item: DueItem, reason: str) -> Change:
    """Leaves it out this time, with a reason; what comes again comes again from today. RecordRefused without one."""
    answer = _answer(item, DueOutcome.LEFT_OUT, reason=reason.strip())
    return _write(log, answer, say("Left out: {what}", what=_named(item)))


def _answer(item: DueItem, outcome: DueOutcome, until: date | None = None, reason: str = "") -> DueAnswer:
    return DueAnswer(new_id(), item.key, item.due_day, outcome, item.crop_id, until, reason)


def _write(log: OpenLogbook, answer: DueAnswer, title: str) -> Change:
    group = new_id()
    with log.unit() as unit:
        refuse(answer.problems())
        unit.add(group, answer)
        unit.commit()
    return Change(group, title, (answer.id,), frozenset({answer.crop_id}) if answer.crop_id else None)


def _write_note(log: OpenLogbook, item: DueItem) -> Change:
    """A note in the routine's words, and the answer that stands for it."""
    group, crop_id = new_id(), item.crop_id or ""
    entry = drafted_entry(log, item, crop_id)
    answer = DueAnswer(new_id(), item.key, item.due_day, DueOutcome.DONE, crop_id, entry_id=entry.id)
    with log.unit() as unit:
        refuse(entry.problems() + standing_entry_problems(unit, entry, log.today()))
        unit.add(group, entry)
        unit.add(group, answer)
        unit.commit()
    return Change(group, say("Done: {what}", what=_named(item)), (entry.id, answer.id), frozenset({crop_id}))


def _named(item: DueItem) -> str:
    return f"{item.title}, {item.crop_name}" if item.crop_name else item.title
