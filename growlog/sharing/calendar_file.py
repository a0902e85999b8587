"""A calendar file of whole days, as RFC 5545 (Internet Calendaring and Scheduling, iCalendar, 2009) has it."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING
from uuid import UUID, uuid5

from growlog.sharing.whole_file import write_whole

if TYPE_CHECKING:
    from icalendar import Event

PRODUCT = "-//Growing-room Logbook//growing-room//EN"
_NAMESPACE = UUID("5d0c7c0e-6a4b-5f0e-9a57-6c1f1f8b7e21")


@dataclass(frozen=True)
class CalendarDay:
    """Something on a whole day. key and since name it: they stay when it moves on to a later day."""

    key: str
    since: date
    day: date
    title: str
    more: str


def calendar_uid(key: str, since: date) -> str:
    """The UID of something due: the same on every run and every computer, so that a calendar replaces its entry."""
    return str(uuid5(_NAMESPACE, f"{key}@{since.isoformat()}"))


def calendar_bytes(days: Iterable[CalendarDay], name: str, now: datetime) -> bytes:
    """The file's content. name: of the calendar. now: the moment of writing, UTC, as DTSTAMP asks for it."""
    # Imported here: it takes long, and most starts of the program write no calendar.
    from icalendar import Calendar

    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    calendar.add("name", name)  # RFC 7986
    for day in days:
        calendar.add_component(_event(day, now))
    return bytes(calendar.to_ical())


def write_calendar_file(target: Path, content: bytes) -> None:
    """Writes the file whole or not at all, over one that is there; OSError where the disk does not take it."""
    write_whole(target, content)


def _event(day: CalendarDay, now: datetime) -> "Event":
    """An all-day event: every calendar shows those, while many hide to-dos. It takes no time of the day away."""
    from icalendar import Event

    event = Event()
    event.add("uid", calendar_uid(day.key, day.since))
    event.add("dtstamp", now)
    event.add("dtstart", day.day)  # a date without DTEND is that one day
    event.add("summary", day.title)
    if day.more:
        event.add("description", day.more)
    event.add("transp", "TRANSPARENT")
    return event
