"""The routines of a logbook, and the set that is offered where there is none."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from growlog.records.change import Change
from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import KINDS
from growlog.records.problems import Problem, refuse
from growlog.records.routine import Routine, RoutineFor, RoutineWhen
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.words import say, say_count

ANSWERS = ("", "photo", *KINDS)  # what a routine may be done by


@dataclass(frozen=True)
class Offered:
    """A routine that most growers keep. fits: something that grows now has a use for it."""

    routine: Routine
    fits: bool


def routines_of(log: OpenLogbook) -> list[Routine]:
    """All routines by name, those that are switched off among them."""
    with log.unit() as unit:
        return sorted(unit.routines.all(), key=lambda r: (r.name.casefold(), r.id))


def new_routine(today: date) -> Routine:
    """An empty routine that begins today, not yet written."""
    return Routine(new_id(), "", every_days=1, from_day=today)


def starting_routines(habits: Iterable[FloweringHabit], today: date) -> list[Offered]:
    """The routines offered to a logbook that has none: common practice, no source. habits: of the crops that grow."""
    growing = set(habits)
    by_hand = FloweringHabit.SEPARATE in growing
    shaken = bool(growing & {FloweringHabit.PERFECT, FloweringHabit.NEEDS_ANOTHER})
    female, flowers = RoutineWhen.WHILE_FEMALES_OPEN, RoutineWhen.WHILE_FLOWERING
    daily = Routine("", "", every_days=1, from_day=today)

    pollinate = replace(daily, name=say("Pollinate"), entry_kind="pollination", when=female, in_the_morning=True)
    meters = replace(daily, name=say("Calibrate the meters"), entry_kind="calibration", every_days=30)
    found = [
        (replace(daily, name=say("Feed"), entry_kind="feed"), True),
        (replace(daily, name=say("Photo"), entry_kind="photo"), True),
        (pollinate, by_hand),
        (replace(daily, name=say("Shake the trusses"), entry_kind="pollination", when=flowers), shaken),
        (replace(daily, name=say("Clean up dropped flowers"), every_days=3, when=flowers), True),
        (replace(meters, who=RoutineFor.ROOM), True),
    ]
    return [Offered(replace(routine, id=new_id()), fits) for routine, fits in found]


def add_routines(log: OpenLogbook, routines: list[Routine]) -> Change:
    """Writes new routines as one change; RecordRefused with all that is wrong."""
    group = new_id()
    with log.unit() as unit:
        refuse([p for r in routines for p in _problems(r)])
        unit.add(group, *routines)
        unit.commit()
    title = say_count("New routine", "{n} new routines", len(routines))
    return Change(group, title, tuple(r.id for r in routines), None)


def change_routine(log: OpenLogbook, routine: Routine) -> Change:
    """Writes a changed routine; RecordRefused, or RecordMoved if it changed elsewhere."""
    group = new_id()
    with log.unit() as unit:
        refuse(_problems(routine))
        unit.change(group, routine)
        unit.commit()
    return Change(group, say("Change {name}", name=routine.name), (routine.id,), None)


def remove_routine(log: OpenLogbook, routine_id: str) -> Change:
    """Puts a routine into the bin."""
    group = new_id()
    with log.unit() as unit:
        routine = unit.routines.get(routine_id)
        unit.remove(group, routine)
        unit.commit()
    return Change(group, say("Remove {name}", name=routine.name), (routine_id,), None)


def _problems(routine: Routine) -> list[Problem]:
    known = routine.entry_kind in ANSWERS
    return routine.problems() + ([] if known else [Problem("entry_kind", say("Choose what it is done by."))])
