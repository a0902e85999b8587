"""Puts the season together: four lives, what was written about them, and which photos were taken."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, time, timedelta

from .cultivars import GOLD_TRAITS, LANDING_TRAITS, PORCH_TRAITS, ROUND_TRAITS
from .diary_nightshade import nightshade_entries
from .diary_pattypan import pattypan_entries
from .diary_room import room_entries
from .events import Event
from .feeding import FeedHabit
from .nightshade_model import NightshadeLife, live_nightshade
from .notes import NOTES
from .pattypan_model import PattypanLife, live
from .photo_plan import PhotoPlan, plan_photos
from .scenario import (
    BOXROOM_GOLD,
    LANDING_LIGHT,
    LAST_DAY,
    LIGHT_STEPS,
    PORCH_VIOLET,
    ROOM,
    SKYLIGHT_ROUND,
    CropPlan,
    LightStep,
    Room,
)

AWAY = frozenset(BOXROOM_GOLD.day(age) for age in GOLD_TRAITS.away_ages)


@dataclass(frozen=True)
class CropSeason:
    """One crop: its fixed points, its modelled life, its entries and its photos."""

    plan: CropPlan
    life: PattypanLife | NightshadeLife
    events: tuple[Event, ...]
    photos: tuple[PhotoPlan, ...]


@dataclass(frozen=True)
class Season:
    """The whole demo season. leaf_area_m2: of all plants that stood on each of its days."""

    room: Room
    light_steps: tuple[LightStep, ...]
    crops: tuple[CropSeason, ...]
    room_events: tuple[Event, ...]
    leaf_area_m2: Mapping[date, float]


def make_season() -> Season:
    """The season; the same on every run."""
    gold, skylight = live(BOXROOM_GOLD, GOLD_TRAITS), live(SKYLIGHT_ROUND, ROUND_TRAITS)
    landing, porch = live_nightshade(LANDING_LIGHT, LANDING_TRAITS), live_nightshade(PORCH_VIOLET, PORCH_TRAITS)
    crops = (
        _pattypan(gold, FeedHabit(8, 30, 2, 0.22, time(8, 20))),
        _pattypan(skylight, FeedHabit(9, 28, 2, 0.30, time(8, 10))),
        _nightshade(landing, FeedHabit(14, 60, 3, 0.28, time(8, 45))),
        _nightshade(porch, FeedHabit(13, 42, 3, 0.30, time(8, 52))),
    )
    area = _leaf_area((gold, skylight, landing, porch))
    return Season(ROOM, LIGHT_STEPS, crops, tuple(room_entries(area.__getitem__, AWAY)), area)


def _pattypan(life: PattypanLife, habit: FeedHabit) -> CropSeason:
    events = pattypan_entries(life, habit, NOTES[life.plan.name], AWAY)
    return CropSeason(life.plan, life, tuple(events), plan_photos(life.plan, AWAY))


def _nightshade(life: NightshadeLife, habit: FeedHabit) -> CropSeason:
    events = nightshade_entries(life, habit, NOTES[life.plan.name], AWAY)
    return CropSeason(life.plan, life, tuple(events), plan_photos(life.plan, AWAY))


def _leaf_area(lives: tuple[PattypanLife | NightshadeLife, ...]) -> dict[date, float]:
    def on(day: date) -> float:
        standing = [life for life in lives if life.plan.sown <= day <= life.plan.ends]
        return sum(life.state((day - life.plan.sown).days).leaf_area_m2 for life in standing)

    first = LIGHT_STEPS[0].from_day
    return {day: on(day) for n in range((LAST_DAY - first).days + 1) if (day := first + timedelta(days=n))}
