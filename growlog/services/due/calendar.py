"""What is due in the days to come as a calendar file."""

from collections.abc import Iterable
from datetime import timedelta
from pathlib import Path

from growlog.services.due.due_list import due_items
from growlog.services.due.item import DueItem
from growlog.services.logbooks import facts_of
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.sharing.calendar_file import CalendarDay, calendar_bytes, write_calendar_file
from growlog.words import say, say_count

CALENDAR_DAYS = 60


class CalendarRefused(LogbookProblem):
    """The calendar file cannot be written; nothing of it was kept. str() is the sentence."""


def write_calendar(log: OpenLogbook, target: Path, days: int = CALENDAR_DAYS, *, replace: bool = False) -> int:
    """Writes what is due from today on for so many days (1 to 366) and says how many entries there are.

    Each time is written out as a day of its own, not as a rule of recurrence: what was put off or left out then needs
    no exceptions, and every calendar reads it. CalendarRefused with a sentence where the file is there and is not to be
    replaced, or cannot be written.
    """
    if not 1 <= days <= 366:
        raise ValueError(f"days {days} is outside 1 to 366")
    if target.exists() and not replace:
        raise CalendarRefused(say("{file} is there already. Choose another name, or replace it.", file=target))
    today = log.today()
    items = due_items(log, today, today + timedelta(days=days - 1))
    content = calendar_bytes(_calendar_days(items), facts_of(log).name, log.clock.now())
    try:
        write_calendar_file(target, content)
    except OSError as error:
        reason = error.strerror or str(error)
        raise CalendarRefused(say("{file} could not be written: {reason}.", file=target, reason=reason)) from error
    return len(items)


def _calendar_days(items: Iterable[DueItem]) -> list[CalendarDay]:
    return [CalendarDay(i.key, i.since, i.due_day, _title(i), _more(i)) for i in items]


def _title(item: DueItem) -> str:
    named = say("{what}: {crop}", what=item.title, crop=item.crop_name) if item.crop_name else item.title
    return say("{what} (morning)", what=named) if item.in_the_morning else named


def _more(item: DueItem) -> str:
    late = say_count("{n} day late.", "{n} days late.", item.late_days) if item.late_days else ""
    return " ".join(part for part in (late, item.why) if part)
