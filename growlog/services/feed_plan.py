"""The feed plan of a crop: which mix at which strength from which plant age."""

from dataclasses import dataclass
from datetime import date

from growlog.calculations.plant_age import age_on, day_at
from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.feed_plan import FeedStep
from growlog.records.problems import Problem, refuse
from growlog.records.recipe import Mix
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_number


@dataclass(frozen=True)
class PlannedFeed:
    """What the plan has for a day: the newest edition of the step's mix at a strength; volume_l: usual, None:
    unsaid."""

    step: FeedStep
    mix: Mix
    strength_percent: float
    volume_l: float | None


@dataclass(frozen=True)
class PlanChange:
    """A day on which the plan moves to another step, for the list of what is due."""

    title: str
    crop_id: str
    day: date
    why: str
    key: str


def new_step(crop_id: str, from_age: int, mix_id: str) -> FeedStep:
    """A step at full strength, not yet written."""
    return FeedStep(new_id(), crop_id, from_age, mix_id)


def steps_of(log: OpenLogbook, crop_id: str) -> list[FeedStep]:
    """The steps of a crop's plan by plant age."""
    with log.unit() as unit:
        return _steps(unit, crop_id)


def save_step(log: OpenLogbook, step: FeedStep) -> Change:
    """Writes a step, new or changed; RecordRefused, also for a second step from one age."""
    group = new_id()
    with log.unit() as unit:
        refuse(step.problems() + _standing_problems(unit, step))
        crop = unit.crops.get(step.crop_id)
        if unit.feed_steps.find(step.id) is None:
            unit.add(group, step)
        else:
            unit.change(group, step)
        unit.commit()
    return Change(group, say("Feed plan of {name}", name=crop.name), (step.id,), frozenset({crop.id}))


def remove_step(log: OpenLogbook, step_id: str) -> Change:
    """Takes a step out of the plan."""
    group = new_id()
    with log.unit() as unit:
        step = unit.feed_steps.get(step_id)
        crop = unit.crops.get(step.crop_id)
        unit.remove(group, step)
        unit.commit()
    return Change(group, say("Feed plan of {name}", name=crop.name), (step.id,), frozenset({crop.id}))


def planned_feed(log: OpenLogbook, crop_id: str, day: date) -> PlannedFeed | None:
    """What the plan has for a crop on a day: the default of the day's feed; None before its first step."""
    with log.unit() as unit:
        return planned_in(unit, crop_id, day)


def planned_in(unit: UnitOfWork, crop_id: str, day: date) -> PlannedFeed | None:
    """The same in an open unit."""
    age = age_on(unit.crops.get(crop_id).day_zero, day)
    begun = [s for s in _steps(unit, crop_id) if s.from_age <= age]
    if not begun:
        return None
    step = begun[-1]
    return PlannedFeed(step, _newest(unit, step.mix_id), step.strength_percent, step.volume_l)


def feed_plan_changes(log: OpenLogbook, from_day: date, until_day: date) -> list[PlanChange]:
    """The days in a span, both ends included, on which a growing crop's plan moves to another step."""
    with log.unit() as unit:
        found = [change for crop in unit.crops.all() if crop.growing for change in changes_of(unit, crop)]
    within = [change for change in found if from_day <= change.day <= until_day]
    return sorted(within, key=lambda change: (change.day, change.title))


def changes_of(unit: UnitOfWork, crop: Crop) -> list[PlanChange]:
    """All days on which a crop's plan moves to another step, in order."""
    return [_change(unit, crop, step) for step in _steps(unit, crop.id)]


def _change(unit: UnitOfWork, crop: Crop, step: FeedStep) -> PlanChange:
    mix, strength = _newest(unit, step.mix_id).name, show_number(step.strength_percent, 0)
    return PlanChange(
        title=say("Feed {mix} at {strength} % from now on", mix=mix, strength=strength),
        crop_id=crop.id,
        day=day_at(crop.day_zero, step.from_age),
        why=say("The feed plan says so from plant age {age}.", age=step.from_age),
        key=f"feed-plan:{step.id}:{crop.id}",
    )


def _steps(unit: UnitOfWork, crop_id: str) -> list[FeedStep]:
    return sorted(unit.feed_steps.all(crop_id=crop_id), key=lambda s: s.from_age)


def _newest(unit: UnitOfWork, mix_id: str) -> Mix:
    """The newest edition of a mix: a plan follows the mix as the grower improves it."""
    named = unit.mixes.get(mix_id)
    editions = [m for m in unit.mixes.all() if m.name.strip().casefold() == named.name.strip().casefold()]
    return max(editions, key=lambda m: m.edition, default=named)


def _standing_problems(unit: UnitOfWork, step: FeedStep) -> list[Problem]:
    others = [s for s in _steps(unit, step.crop_id) if s.id != step.id and s.from_age == step.from_age]
    if others:
        return [Problem("from_age", say("The plan has a step from this age already."))]
    if unit.mixes.find(step.mix_id) is None:
        return [Problem("mix_id", say("Choose a mix."))]
    return []
