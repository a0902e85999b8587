"""The grower's routines as due things. An entry of the kind, made that day for that crop, does one without a tick."""

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date

from growlog.calculations.due import DueDay, DueRule, Span, due_days
from growlog.calculations.plant_age import day_at
from growlog.records.cultivar import FloweringHabit
from growlog.records.display import fixed
from growlog.records.entry import Entry, Feed
from growlog.records.routine import Routine, RoutineFor, RoutineWhen
from growlog.services.due.facts import CropFacts, DueFacts
from growlog.services.due.flowers import female_spans, flowering_spans
from growlog.services.due.item import DueHow, DueItem
from growlog.words import say, say_count, show_day

_SHAKEN = (FloweringHabit.PERFECT, FloweringHabit.NEEDS_ANOTHER)
_NO_FORM = {"": DueHow.TICK, "photo": DueHow.PHOTO, "note": DueHow.WRITES}


def from_routines(facts: DueFacts, until: date) -> Iterator[DueItem]:
    """What the routines that are switched on ask for."""
    for routine in facts.routines:
        if not routine.is_on:
            continue
        if routine.who is RoutineFor.ROOM:
            yield from _items(routine, facts, None, until)
            continue
        for crop in facts.crops:
            if routine.who is RoutineFor.EACH_CROP or routine.crop_id == crop.crop.id:
                yield from _items(routine, facts, crop, until)


def routine_key(routine_id: str, crop_id: str | None) -> str:
    """The key of what a routine asks for."""
    return f"routine:{routine_id}" + (f":{crop_id}" if crop_id else "")


def rule_words(routine: Routine) -> str:
    """The rule of a routine in words."""
    often = _often(routine.every_days or 1)
    if routine.when is RoutineWhen.AT_AGE:
        return say("at plant age {age}", age=routine.at_age or 0)
    if routine.when is RoutineWhen.ON_DAY:
        return say("on {day}", day=show_day(routine.from_day)) if routine.from_day else ""
    if routine.when is RoutineWhen.WHILE_FEMALES_OPEN:
        return say("{often} while female flowers are open", often=often)
    if routine.when is RoutineWhen.WHILE_FLOWERING:
        return say("{often} while it flowers", often=often)
    return often


def _often(every_days: int) -> str:
    return say("every day") if every_days == 1 else say_count("every {n} day", "every {n} days", every_days)


def _items(routine: Routine, facts: DueFacts, crop: CropFacts | None, until: date) -> Iterator[DueItem]:
    key = routine_key(routine.id, None if crop is None else crop.crop.id)
    done = _done_days(routine, facts, crop, key)
    rule = _rule(routine, facts, crop, until, bool(done))
    if rule is None:
        return
    last = max((d for d in done if d <= facts.today), default=None)
    found = due_days(rule, done, facts.put_off(key), facts.today, until)
    if found:
        first = _item(routine, crop, key, found[0], _why(routine, last))
        yield first
        yield from (replace(first, due_day=d.day, since=d.since, late_days=d.late_days) for d in found[1:])


def _done_days(routine: Routine, facts: DueFacts, crop: CropFacts | None, key: str) -> set[date]:
    """Days on which it was done. A note says anything, so only the note that was written for the routine counts."""
    done = facts.answered_days(key)
    if routine.entry_kind in ("", "note"):
        return done
    made = facts.room_days.get(routine.entry_kind, ()) if crop is None else crop.days_of(routine.entry_kind)
    return done | set(made)


def _rule(routine: Routine, facts: DueFacts, crop: CropFacts | None, until: date, ever_done: bool) -> DueRule | None:
    """The rule as days; None where it asks for nothing of this crop."""
    begins = routine.from_day or (date.min if ever_done else facts.today)
    zero = date.min if crop is None else crop.crop.day_zero
    if routine.when is RoutineWhen.ON_DAY:
        return DueRule(begins) if begins >= zero else None
    if routine.when is RoutineWhen.AT_AGE:
        first = day_at(zero, routine.at_age or 0) if crop is not None else None
        return None if first is None or (routine.from_day and first < routine.from_day) else DueRule(first)
    spans = None if crop is None else _spans(routine, crop, until)
    if spans == ():
        return None
    return DueRule(max(begins, zero), routine.every_days or 1, routine.until_day, spans)


def _spans(routine: Routine, crop: CropFacts, until: date) -> tuple[Span, ...] | None:
    """The days of the flowering rules; shaking trusses is nothing for flowers that are apart or set alone."""
    if routine.when is RoutineWhen.WHILE_FEMALES_OPEN:
        return female_spans(crop, until)
    if routine.when is not RoutineWhen.WHILE_FLOWERING:
        return None
    if routine.entry_kind == "pollination" and crop.cultivar.habit not in _SHAKEN:
        return ()
    return flowering_spans(crop, until)


def _item(routine: Routine, crop: CropFacts | None, key: str, due: DueDay, why: str) -> DueItem:
    how, offer = _how(routine, crop)
    return DueItem(
        key=key,
        title=routine.name,
        crop_id=None if crop is None else crop.crop.id,
        crop_name="" if crop is None else crop.crop.name,
        due_day=due.day,
        since=due.since,
        why=why,
        entry_kind=routine.entry_kind,
        how=how,
        offer=offer,
        late_days=due.late_days,
        in_the_morning=routine.in_the_morning,
        is_daily=(routine.every_days or 1) == 1 and routine.when not in (RoutineWhen.AT_AGE, RoutineWhen.ON_DAY),
    )


def _how(routine: Routine, crop: CropFacts | None) -> tuple[DueHow, str]:
    if routine.entry_kind == "note" and crop is None:
        return DueHow.TICK, ""  # a note belongs to a crop
    if routine.entry_kind in _NO_FORM:
        return _NO_FORM[routine.entry_kind], ""
    if routine.entry_kind == "feed" and crop is not None:
        last = repeatable_feed(crop.of_kind("feed"))
        if last is not None and isinstance(last.detail, Feed):
            return DueHow.WRITES, _amount(last.detail)
    return DueHow.FORM, ""


def repeatable_feed(feeds: Iterable[Entry]) -> Entry | None:
    """The last feed, if it says how much was given: that can be given again without being measured again."""
    last = None
    for entry in feeds:
        last = entry
    detail = None if last is None else last.detail
    return last if isinstance(detail, Feed) and detail.volume_l is not None else None


def _amount(feed: Feed) -> str:
    amount = fixed(feed.volume_l or 0.0, 1 if (feed.volume_l or 0) >= 0.1 else 2, "L")
    return say("water {amount}", amount=amount) if feed.water_only else amount


def _why(routine: Routine, last: date | None) -> str:
    words = rule_words(routine)
    if last is not None:
        words = say("{rule}, last {day}", rule=words, day=show_day(last))
    words = words[:1].upper() + words[1:] + "."
    return f"{words} {routine.note}" if routine.note else words
