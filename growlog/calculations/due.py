"""When something falls due: from a rule, the days on which it was done, and how far it was put off.

Common practice, no source: a round is counted from the day on which it was last done, not from the day on which it
should have been, so that one late day does not bring two rounds close together.
"""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

Span = tuple[date, date]  # first and last day, both inclusive


@dataclass(frozen=True)
class DueRule:
    """When something falls due.

    first: the earliest day. every_days: 1 to 366, the days from one time to the next; None for something due once.
    last: the last day of asking, None for no end. spans: if stated, it is asked for on their days only.
    """

    first: date
    every_days: int | None = None
    last: date | None = None
    spans: tuple[Span, ...] | None = None

    def __post_init__(self) -> None:
        if self.every_days is not None and not 1 <= self.every_days <= 366:
            raise ValueError(f"every_days {self.every_days} is outside 1 to 366")


@dataclass(frozen=True)
class PutOff:
    """On `on` it was put off to `until`."""

    on: date
    until: date


@dataclass(frozen=True)
class DueDay:
    """A day on which something is due, and since when it has been."""

    day: date
    since: date

    @property
    def late_days(self) -> int:
        """Days that it has waited: 0 on the day itself."""
        return (self.day - self.since).days


def due_days(
    rule: DueRule, done: Iterable[date], put_off: Sequence[PutOff], first_day: date, last_day: date
) -> list[DueDay]:
    """The days from first_day (today) to last_day on which it is due, in order.

    done: days on which it was done or left out; those after first_day count for nothing. What was not done in time is
    due on first_day; each later time follows as if all before it were done on their day. What comes every day is never
    late: a missed day is gone. Raises ValueError if last_day is before first_day.
    """
    if last_day < first_day:
        raise ValueError(f"last_day {last_day} is before first_day {first_day}")
    last = max((day for day in done if day <= first_day), default=None)
    found = []
    for number in range((last_day - first_day).days + 1):
        day = first_day + timedelta(days=number)
        since = _due_since(rule, last, put_off, day)
        if since is not None:
            found.append(DueDay(day, since))
            last = day
    return found


def _due_since(rule: DueRule, last: date | None, put_off: Sequence[PutOff], day: date) -> date | None:
    """Since when it is due on a day, None where it is not."""
    if rule.last is not None and day > rule.last:
        return None
    since = _next_after(rule, last)
    if since is None:
        return None
    since = max([since, *(p.until for p in put_off if last is None or p.on > last)])
    if rule.spans is not None:
        here = [start for start, end in rule.spans if start <= day <= end]
        if not here:
            return None
        since = max(since, *here)
    if since > day:
        return None
    return day if rule.every_days == 1 else since


def _next_after(rule: DueRule, last: date | None) -> date | None:
    if last is None or (rule.every_days is None and last < rule.first):
        return rule.first
    if rule.every_days is None:
        return None
    return max(rule.first, last + timedelta(days=rule.every_days))
