"""The steps of a room's light programme."""

from dataclasses import dataclass
from datetime import date

from growlog.records.change import Change
from growlog.records.display import fixed
from growlog.records.light_plan import LightStep
from growlog.records.problems import Problem, refuse
from growlog.services.climate.days import remake_days
from growlog.services.light.checks import step_questions
from growlog.services.light.statements import step_day
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day


@dataclass(frozen=True)
class LightStepView:
    """A step and the day on which it starts; day None: its crop never stood in the room at that age."""

    step: LightStep
    day: date | None
    label: str


def light_steps_of(log: OpenLogbook, room_id: str) -> list[LightStepView]:
    """The steps of a room in the order of their days, those without one last."""
    with log.unit() as unit:
        names = {c.id: c.name for c in unit.crops.all(removed=True)}
        views = [
            LightStepView(s, step_day(unit, s), _label(s, names.get(s.crop_id or "", "")))
            for s in unit.light_steps.all(room_id=room_id)
        ]
    return sorted(views, key=lambda v: (v.day or date.max, v.step.id))


def new_step(room_id: str, day: date) -> LightStep:
    """A step from a day on, not yet written."""
    return LightStep(new_id(), room_id, day)


def check_step(log: OpenLogbook, step: LightStep) -> list[Problem]:
    """All problems and questions of a step, its room's lamps and floor among them. Writes nothing."""
    with log.unit() as unit:
        day = step_day(unit, step) or log.today()
        return step.problems() + _standing_problems(unit, step) + step_questions(unit, step, day)


def save_step(log: OpenLogbook, step: LightStep) -> Change:
    """Writes a step, new or changed; RecordRefused where another starts with it, or a lamp is not of the room."""
    group = new_id()
    with log.unit() as unit:
        refuse(step.problems() + _standing_problems(unit, step))
        before = unit.light_steps.find(step.id)
        if before is None:
            unit.add(group, step)
        else:
            unit.change(group, step)
        remake_days(unit, step, before)
        unit.commit()
    return Change(group, say("Plan the light"), (step.id,), None)


def remove_step(log: OpenLogbook, step: LightStep) -> Change:
    """Puts a step into the bin."""
    group = new_id()
    with log.unit() as unit:
        unit.remove(group, step)
        remake_days(unit, step)
        unit.commit()
    return Change(group, say("Take a step out of the light programme"), (step.id,), None)


def _standing_problems(unit: UnitOfWork, step: LightStep) -> list[Problem]:
    found = []
    for other in unit.light_steps.all(room_id=step.room_id):
        same = (other.from_day, other.crop_id, other.from_age) == (step.from_day, step.crop_id, step.from_age)
        if same and other.id != step.id:
            found.append(Problem("from_day", say("There is a step from there on already. Change that one.")))
    known = {lamp.id for lamp in unit.lamps.all(room_id=step.room_id)}
    if set(step.lamp_ids) - known:
        found.append(Problem("lamp_ids", say("A lamp of this step is not in the room.")))
    return found


def _label(step: LightStep, crop_name: str) -> str:
    hours = fixed(step.photoperiod_h, 0 if step.photoperiod_h % 1 == 0 else 2, "h")
    if step.from_day is not None:
        return say("{hours} from {day} on", hours=hours, day=show_day(step.from_day))
    return say("{hours} from day {age} of {crop} on", hours=hours, age=step.from_age, crop=crop_name)
