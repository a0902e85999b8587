"""Bulbs that reach their rated life by the light programme."""

from collections.abc import Iterator
from datetime import date

from growlog.calculations.due import DueRule, due_days
from growlog.records.display import fixed
from growlog.services.due.facts import DueFacts
from growlog.services.due.item import DueItem
from growlog.services.light.bulbs import room_bulbs
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


def bulbs_to_change(unit: UnitOfWork, facts: DueFacts, until: date) -> Iterator[DueItem]:
    """A bulb on the day on which it has its rated hours; a new bulb's day in the lamp answers it for good."""
    for room in unit.rooms.all():
        for bulb in room_bulbs(unit, room.id, facts.today):
            if bulb.due_on is None or bulb.due_on > until or bulb.rated_life_h is None:
                continue
            key = f"bulb:{bulb.lamp.id}"
            title = say("Change the bulb of {lamp}", lamp=bulb.lamp.name)
            why = say(
                "It burned {hours} of the {life} that its maker rates, by the light programme of {room}.",
                hours=fixed(bulb.hours_so_far, 0, "h"), life=fixed(bulb.rated_life_h, 0, "h"), room=room.name,
            )  # fmt: skip
            rule = DueRule(bulb.due_on)
            for due in due_days(rule, facts.answered_days(key), facts.put_off(key), facts.today, until):
                yield DueItem(key, title, None, "", due.day, due.since, why, late_days=due.late_days)
