"""The days on which a crop's feed plan moves to another mix or strength."""

from collections.abc import Iterator
from datetime import date

from growlog.services.due.crop_source import notice
from growlog.services.due.facts import DueFacts
from growlog.services.due.item import DueItem
from growlog.services.feed_plan import changes_of
from growlog.storage.unit_of_work import UnitOfWork


def feed_plan_steps(unit: UnitOfWork, facts: DueFacts, until: date) -> Iterator[DueItem]:
    """Each step of the plan on the day it begins."""
    for crop in facts.crops:
        for change in changes_of(unit, crop.crop):
            yield from notice(facts, crop, change.key, change.title, change.day, change.why, until)
