"""The list of what is due, gathered from its sources."""

from collections.abc import Callable, Iterable
from datetime import date, timedelta

from growlog.calculations.plant_age import age_on
from growlog.services.board import DueMark
from growlog.services.due.bulb_source import bulbs_to_change
from growlog.services.due.crop_source import packet_maturity, planned_clearing, treatment_intervals
from growlog.services.due.facts import DueFacts, due_facts
from growlog.services.due.feed_plan_source import feed_plan_steps
from growlog.services.due.item import DueItem
from growlog.services.due.routine_source import from_routines
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

Source = Callable[[UnitOfWork, DueFacts, date], Iterable[DueItem]]


def _of_facts(source: Callable[[DueFacts, date], Iterable[DueItem]]) -> Source:
    """A source that needs nothing beyond the facts."""

    def items(_unit: UnitOfWork, facts: DueFacts, until: date) -> Iterable[DueItem]:
        return source(facts, until)

    return items


# Another thing that falls due is another source here: it is handed the unit, the facts and the last day.
SOURCES: tuple[Source, ...] = (
    _of_facts(from_routines),
    _of_facts(packet_maturity),
    _of_facts(planned_clearing),
    _of_facts(treatment_intervals),
    bulbs_to_change,
    feed_plan_steps,
)


def due_items(log: OpenLogbook, from_day: date, until_day: date) -> list[DueItem]:
    """What is due from from_day, taken as today, to until_day; what waits since before stands on from_day.

    In the order of the days; of a day what is latest first, then what belongs to the morning, then by words. Only
    growing crops have anything due.
    """
    with log.unit() as unit:
        facts = due_facts(unit, from_day)
        found = [item for source in SOURCES for item in source(unit, facts, until_day)]
    return sorted(found, key=_order)


def due_marks(items: Iterable[DueItem], crop_id: str, day_zero: date, until_day: date) -> tuple[DueMark, ...]:
    """What the board of a growing crop shows ahead, the room's things among it.

    What comes every day is shown once: a row of dots would say nothing.
    """
    marks, daily = [], set()
    for item in items:
        if item.crop_id not in (crop_id, None) or item.due_day > until_day or item.key in daily:
            continue
        if item.is_daily:
            daily.add(item.key)
        late = say("{title}, late", title=item.title) if item.late_days else item.title
        marks.append(DueMark(age_on(day_zero, item.due_day), item.entry_kind, late))
    return tuple(marks)


def board_ahead(today: date, last_age: int) -> date:
    """How far ahead the board looks: a week, two for a crop that is old enough not to be squeezed by it."""
    return today + timedelta(days=min(14, max(7, last_age // 8)))


def _order(item: DueItem) -> tuple[date, int, bool, str, str, str]:
    return item.due_day, -item.late_days, not item.in_the_morning, item.title.casefold(), item.crop_name, item.key
