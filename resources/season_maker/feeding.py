"""Feeds and drain of one crop: volumes follow leaf area, salt gathers in the medium until it is washed out."""

import random
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, time

from .events import Event, Feed, PlainWater
from .growth_curves import organ_chance, ramp
from .plant_state import PlantState
from .scenario import FULL_MIX, TAP_WATER_EC_MS_CM, WEAK_MIX, CropPlan, light_on

LITRES_PER_M2_LEAF = 1.9  # a day under full lamps
EVAPORATION_L = 0.04  # from a bare pot
DRAIN_SHARE = 0.20
WASH_FROM_EC = 2.85
MOST_AT_ONCE_L = 4.0  # more would only run through


@dataclass(frozen=True)
class FeedHabit:
    """When the grower starts, strengthens and how long the gaps are."""

    first_age: int
    full_mix_age: int
    longest_gap_d: int
    least_feed_l: float
    at: time


@dataclass
class _Pot:
    """What the medium remembers between feeds."""

    wanted_l: float = 0.0
    gap_d: int = 0
    salt_ms_cm: float = 0.10
    drain_ph: float = 6.05


def water_use_l(state: PlantState, day: date) -> float:
    """What plant and pot use on one day."""
    lamps = 0.55 + 0.45 * light_on(day).dimming_percent / 100
    fruit = sum(fruit.weight_g for fruit in state.fruits) * 0.00012
    small_pot = ramp(state.pot.rim_cm, 0, 22)
    return LITRES_PER_M2_LEAF * state.leaf_area_m2 * lamps + EVAPORATION_L * small_pot + fruit


def feeds(
    plan: CropPlan, habit: FeedHabit, state_at: Callable[[int], PlantState], away: frozenset[date]
) -> list[Event]:
    """All feeds and washings of one crop."""
    written: list[Event] = []
    pot, chance = _Pot(), organ_chance(plan.name, "feeding")
    for age in range(habit.first_age, plan.last_age + (0 if plan.cleared else 1)):
        day = plan.day(age)
        pot.wanted_l += water_use_l(state_at(age), day) / (1 - DRAIN_SHARE)
        pot.gap_d += 1
        due = pot.wanted_l >= habit.least_feed_l or pot.gap_d >= habit.longest_gap_d or age == habit.first_age
        if due and day not in away:
            written.append(_one_feed(plan, habit, pot, age, chance))
            pot.wanted_l, pot.gap_d = 0.0, 0
    return written


def _one_feed(plan: CropPlan, habit: FeedHabit, pot: _Pot, age: int, chance: random.Random) -> Event:
    volume_l = max(0.05, round(min(pot.wanted_l, MOST_AT_ONCE_L) * chance.uniform(0.95, 1.06) / 0.05) * 0.05)
    at = _near(habit.at, chance)
    drained = volume_l >= 0.45
    drain_l = round(volume_l * (DRAIN_SHARE + chance.gauss(0, 0.025)) / 0.05) * 0.05 if drained else None
    mix = FULL_MIX if age >= habit.full_mix_age else WEAK_MIX
    drain_ec = mix.ec_ms_cm + 0.08 + pot.salt_ms_cm + chance.gauss(0, 0.03)
    day = plan.day(age)
    if drained and drain_ec > WASH_FROM_EC:
        pot.salt_ms_cm = 0.06
        return PlainWater(
            crop=plan.name,
            day=day,
            at=at,
            labour_min=6,
            volume_l=round(volume_l * 1.6, 1),
            ec_ms_cm=TAP_WATER_EC_MS_CM,
            drain_l=round(volume_l * 0.8, 1),
            drain_ec_ms_cm=round(drain_ec - 0.55, 2),
            note="Salt washed out of the coir",
        )
    pot.salt_ms_cm += 0.0135 if drained else 0.004
    pot.drain_ph = min(6.5, max(5.8, pot.drain_ph + chance.gauss(0.004, 0.03)))
    return Feed(
        crop=plan.name,
        day=day,
        at=at,
        labour_min=2 + round(volume_l),
        mix=mix.name,
        dose_a_ml_per_l=mix.dose_a_ml_per_l,
        dose_b_ml_per_l=mix.dose_b_ml_per_l,
        volume_l=round(volume_l, 2),
        ec_ms_cm=round(mix.ec_ms_cm + chance.gauss(0, 0.025), 2),
        ph=round(5.85 + chance.gauss(0, 0.06), 1),
        drain_l=None if drain_l is None else round(drain_l, 2),
        drain_ec_ms_cm=round(drain_ec, 2) if drained else None,
        drain_ph=round(pot.drain_ph, 1) if drained else None,
    )


def _near(at: time, chance: random.Random) -> time:
    minutes = at.hour * 60 + at.minute + round(chance.gauss(0, 6))
    return time(minutes // 60, minutes % 60)
