"""Routines for tests, and what of them is due."""

from datetime import date, timedelta

from growlog.records.routine import Routine, RoutineFor, RoutineWhen
from growlog.services.due import DueItem, add_routines, due_items, new_routine
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import TODAY

LONG_AGO = date(2025, 8, 1)


def day(number: int) -> date:
    """A day so many days after today."""
    return TODAY + timedelta(days=number)


def keep(
    log: OpenLogbook,
    name: str,
    kind: str = "",
    every_days: int | None = 1,
    when: RoutineWhen = RoutineWhen.EVERY_DAYS,
    who: RoutineFor = RoutineFor.EACH_CROP,
    from_day: date | None = LONG_AGO,
    at_age: int | None = None,
    **more: object,
) -> Routine:
    """A written routine."""
    made = Routine(
        new_routine(TODAY).id, name, who, when, every_days=every_days, from_day=from_day, at_age=at_age,
        entry_kind=kind, **more,  # type: ignore[arg-type]
    )  # fmt: skip
    add_routines(log, [made])
    return made


def today_of(log: OpenLogbook) -> list[DueItem]:
    """What is due today."""
    return due_items(log, TODAY, TODAY)


def titles(log: OpenLogbook, on: date = TODAY) -> list[str]:
    """The titles of what is due on a day."""
    return [item.title for item in due_items(log, TODAY, on) if item.due_day == on]
