"""What comes of a crop by itself: packet maturity, the planned clearing, and the ends of a treatment's intervals."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, time, timedelta

from growlog.calculations.due import DueRule, due_days
from growlog.calculations.plant_age import day_at
from growlog.records.entry import Entry, Treatment
from growlog.services.board import packet_age_of
from growlog.services.due.facts import CropFacts, DueFacts
from growlog.services.due.item import DueHow, DueItem
from growlog.words import say, show_day

MATURITY_AHEAD_DAYS = 7
NOTICE_DAYS = 3  # what merely comes stands for these days, its own among them, until it is ticked


def packet_maturity(facts: DueFacts, until: date) -> Iterator[DueItem]:
    """The packet's days to maturity, a week ahead and on the day."""
    for crop in facts.crops:
        age = packet_age_of(crop.crop, crop.cultivar)
        if age is None:
            continue
        day = day_at(crop.crop.day_zero, age)
        why = say("The packet promises the first pick at plant age {age}, {day}.", age=age, day=show_day(day))
        soon = day - timedelta(days=MATURITY_AHEAD_DAYS)
        title = say("Packet maturity in {n} days", n=MATURITY_AHEAD_DAYS)
        yield from notice(facts, crop, f"maturity:{crop.crop.id}:ahead", title, soon, why, until)
        yield from notice(facts, crop, f"maturity:{crop.crop.id}", say("Packet maturity"), day, why, until)


def planned_clearing(facts: DueFacts, until: date) -> Iterator[DueItem]:
    """The day for which clearing is planned."""
    for crop in facts.crops:
        day = crop.crop.planned_clearing_on
        if day is None:
            continue
        key = f"clearing:{crop.crop.id}"
        rule = DueRule(day)
        for due in due_days(rule, facts.answered_days(key), facts.put_off(key), facts.today, until):
            yield DueItem(
                key,
                say("Planned clearing"),
                crop.crop.id,
                crop.crop.name,
                due.day,
                due.since,
                say("Planned for {day}.", day=show_day(day)),
                how=DueHow.CLEARING,
                late_days=due.late_days,
            )


def treatment_intervals(facts: DueFacts, until: date) -> Iterator[DueItem]:
    """The end of a treatment's re-entry and harvest intervals, as its label was written down."""
    for crop in facts.crops:
        for entry in crop.of_kind("treatment"):
            if isinstance(entry.detail, Treatment):
                yield from _re_entry(facts, crop, entry, entry.detail, until)
                yield from _harvest(facts, crop, entry, entry.detail, until)


def _re_entry(facts: DueFacts, crop: CropFacts, entry: Entry, given: Treatment, until: date) -> Iterable[DueItem]:
    if not given.re_entry_h:
        return ()
    # Without a time of day the interval is counted from the end of the day: rather too long than too short.
    begun = datetime.combine(entry.day, entry.at or time()) + timedelta(days=0 if entry.at else 1)
    day = (begun + timedelta(hours=given.re_entry_h)).date()
    title = say("Re-entry interval of {product} ends", product=given.product)
    why = say("Noted as {hours} h from the treatment on {day}. The label rules: read it before you go in.",
              hours=f"{given.re_entry_h:g}", day=show_day(entry.day))  # fmt: skip
    return notice(facts, crop, f"interval:{entry.id}:re-entry", title, day, why, until)


def _harvest(facts: DueFacts, crop: CropFacts, entry: Entry, given: Treatment, until: date) -> Iterable[DueItem]:
    if not given.harvest_interval_days:
        return ()
    free = entry.day + timedelta(days=given.harvest_interval_days)
    title = say("Harvest interval of {product} is over", product=given.product)
    why = say("Noted as {days} d from the treatment on {day}. The label rules: read it before you pick.",
              days=given.harvest_interval_days, day=show_day(entry.day))  # fmt: skip
    return notice(facts, crop, f"interval:{entry.id}:harvest", title, free, why, until)


def notice(
    facts: DueFacts, crop: CropFacts, key: str, title: str, day: date, why: str, until: date
) -> Iterator[DueItem]:
    """Something that comes by itself and is never late: it stands for a few days until it is ticked."""
    rule = DueRule(day, last=day + timedelta(days=NOTICE_DAYS - 1))
    put_off = facts.put_off(key)
    if put_off:
        rule = DueRule(day, last=max(p.until for p in put_off) + timedelta(days=NOTICE_DAYS - 1))
    for due in due_days(rule, facts.answered_days(key), put_off, facts.today, until):
        yield DueItem(key, title, crop.crop.id, crop.crop.name, due.day, due.since, why)
