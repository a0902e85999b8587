"""A bush pattypan from sowing to clearing: leaves by thermal time, flowers by node, fruit by logistic growth."""

import math
import random
from dataclasses import dataclass, field, replace

from .climate import air_of
from .growth_curves import GOLDEN_ANGLE_DEG, growth, organ_chance, ramp
from .plant_state import Flower, FlowerForm, FlowerStage, Fruit, Leaf, PlantState, Species
from .scenario import CropPlan, light_on

BASE_C = 8.0  # summer squash; handbooks give 45 °F (from memory)
DEGREE_DAYS_PER_LEAF = 28.5
OVERGROWN_G = 150.0  # seedy and tough: a cull, common practice, no source
FIRST_LEAF_DEGREE_DAYS = 34.0  # from emergence


@dataclass(frozen=True)
class PattypanTraits:
    """How one cultivar differs from another."""

    leaf_width_cm: float
    stalk_length_cm: float
    first_male_age: int
    first_female_age: int
    last_female_age: int
    females_a_day: float
    males_a_day: float
    set_chance_early: float
    set_chance_late: float
    late_from_age: int
    pick_weight_g: float
    fruit_potential_g: float
    culls: tuple[tuple[int, str], ...]  # from the how-manieth pick on, and why
    visit_every_days: float
    training_ages: tuple[int, ...]
    mildew_age: int | None = None
    away_ages: tuple[int, ...] = ()
    no_pick_ages: tuple[int, ...] = ()  # inside a harvest interval


@dataclass
class FemaleFlower:
    """One female flower and what came of it."""

    number: int
    open_age: int
    azimuth_deg: float
    base_height_cm: float
    sets: bool
    pollinated: bool
    vigour: float
    weight_g: float = 0.0
    picked_age: int | None = None
    cull_cause: str = ""
    dropped_age: int | None = None

    def hanging(self, age: int) -> bool:
        """Whether a fruit or fruitlet of it hangs on the plant at this age (evening)."""
        gone = min(x for x in (self.picked_age, self.dropped_age, 10_000) if x is not None)
        return self.open_age <= age < gone


@dataclass
class MaleFlower:
    """One male flower; open on one morning."""

    number: int
    open_age: int
    azimuth_deg: float
    base_height_cm: float


@dataclass
class LeafLife:
    """One leaf from appearance to removal."""

    number: int
    appears_age: float
    azimuth_deg: float
    width_cm: float
    stalk_cm: float
    base_height_cm: float
    life_days: float
    removed_age: int | None = None


@dataclass
class PattypanLife:
    """The whole life of one plant; states and entries are read from it."""

    plan: CropPlan
    traits: PattypanTraits
    leaves: list[LeafLife] = field(default_factory=list)
    females: list[FemaleFlower] = field(default_factory=list)
    males: list[MaleFlower] = field(default_factory=list)
    weights_g: dict[tuple[int, int], float] = field(default_factory=dict)  # (female number, age)
    removals: dict[int, tuple[int, ...]] = field(default_factory=dict)  # age -> leaf numbers

    def state(self, age: int, evening: bool = False) -> PlantState:
        """What can be seen at this age: after the morning's work, or in the evening after the pick."""
        plan = self.plan
        since_emergence = age - plan.emerges_at_age
        return PlantState(
            crop=plan.name,
            species=Species.PATTYPAN,
            day=age,
            pot=plan.pot(age),
            emergence=ramp(since_emergence + 1, 0, 3.0),
            seed_leaf_cm=6.4 * growth(since_emergence + 2, 3.4, 1.5),
            seed_leaf_yellowing=ramp(since_emergence, 22, 34) * 1.25,
            stem_height_cm=_stem_height_cm(self.leaves, age),
            stem_radius_cm=0.28 + 1.15 * growth(max(0, since_emergence), 28, 8),
            leaves=tuple(self._leaf(leaf, age) for leaf in self._standing(age)),
            flowers=tuple(
                _by_evening(flower, evening) for flower in (*self._male_flowers(age), *self._female_flowers(age))
            ),
            fruits=tuple(self._fruits(age, evening)),
            stub_heights_cm=tuple(
                leaf.base_height_cm for leaf in self.leaves if leaf.removed_age is not None and leaf.removed_age <= age
            ),
            cane=bool(self.traits.training_ages) and age >= self.traits.training_ages[0],
        )

    def _standing(self, age: int) -> list[LeafLife]:
        return [
            leaf
            for leaf in self.leaves
            if leaf.appears_age <= age and (leaf.removed_age is None or age < leaf.removed_age)
        ]

    def _leaf(self, leaf: LeafLife, age: int) -> Leaf:
        lived = age - leaf.appears_age
        mildew_age = self.traits.mildew_age
        mildewed = mildew_age is not None and mildew_age in self.removals and leaf.number in self.removals[mildew_age]
        return Leaf(
            number=leaf.number,
            azimuth_deg=leaf.azimuth_deg,
            base_height_cm=leaf.base_height_cm,
            stalk_cm=leaf.stalk_cm * growth(lived + 1, 7.6, 2.2),
            blade_cm=leaf.width_cm * growth(lived + 1.5, 6.8, 2.0),
            expansion=growth(lived + 1, 7.5, 2.1),
            age_days=lived,
            yellowing=ramp(lived, leaf.life_days - 9, leaf.life_days + 6),
            mildew=ramp(age, (mildew_age or 0) - 4, (mildew_age or 0) + 1) if mildewed else 0.0,
        )

    def _male_flowers(self, age: int) -> list[Flower]:
        shown = []
        for male in self.males:
            if (stage := _flower_stage(age - male.open_age)) is not None:
                size = ramp(age - male.open_age, -8, 0)
                shown.append(Flower(male.number, FlowerForm.MALE, stage, male.azimuth_deg, male.base_height_cm, size))
        return shown

    def _female_flowers(self, age: int) -> list[Flower]:
        shown = []
        for female in self.females:
            stage = _flower_stage(age - female.open_age)
            if stage is not None and (age < female.open_age or female.hanging(age)):
                size = ramp(age - female.open_age, -9, 0)
                shown.append(
                    Flower(female.number, FlowerForm.FEMALE, stage, female.azimuth_deg, female.base_height_cm, size)
                )
        return shown

    def _fruits(self, age: int, evening: bool) -> list[Fruit]:
        shown = []
        for female in self.females:
            grown_days = age - female.open_age
            if grown_days >= 1 and _hangs(female, age) and not (evening and female.picked_age == age):
                weight_g = self.weights_g.get((female.number, age), 4.0)
                shown.append(
                    Fruit(
                        number=female.number,
                        azimuth_deg=female.azimuth_deg,
                        base_height_cm=female.base_height_cm,
                        across_cm=across_cm(weight_g),
                        weight_g=weight_g,
                        ripeness=ramp(grown_days, 0, 3),
                        failing=0.0 if female.sets else ramp(grown_days, 1, 4),
                    )
                )
        return shown


def across_cm(weight_g: float) -> float:
    """Width of a young pattypan of this weight: 85 g is about 7 cm across (common practice, no source)."""
    return 7.0 * math.cbrt(max(weight_g, 0.5) / 85.0)


def _by_evening(flower: Flower, evening: bool) -> Flower:
    """Squash flowers close before noon."""
    closing = evening and flower.stage is FlowerStage.OPEN
    return replace(flower, stage=FlowerStage.CLOSED) if closing else flower


def _hangs(female: FemaleFlower, age: int) -> bool:
    picked, dropped = female.picked_age, female.dropped_age
    return female.open_age <= age and (picked is None or age <= picked) and (dropped is None or age < dropped)


def _flower_stage(days_since_open: int) -> FlowerStage | None:
    if -6 <= days_since_open < 0:
        return FlowerStage.BUD
    if days_since_open == 0:
        return FlowerStage.OPEN
    if days_since_open == 1:
        return FlowerStage.CLOSED
    return FlowerStage.WITHERED if days_since_open == 2 else None


def _stem_height_cm(leaves: list[LeafLife], age: float) -> float:
    return 4.2 + sum(
        leaf_internode_cm(leaf.number) * growth(age - leaf.appears_age, 6, 2)
        for leaf in leaves
        if leaf.appears_age <= age
    )


def leaf_internode_cm(number: int) -> float:
    """Length of the piece of stem below a leaf, full grown."""
    return 0.35 + 0.25 * ramp(number, 4, 16)


def live(plan: CropPlan, traits: PattypanTraits) -> PattypanLife:
    """Let one plant live from sowing to its last day."""
    life = PattypanLife(plan, traits)
    _appear_leaves(life)
    _train(life)
    _open_males(life)
    _open_females(life)
    _fill_fruit(life)
    return life


def _appear_leaves(life: PattypanLife) -> None:
    plan, degree_days, number = life.plan, 0.0, 0
    height_cm = 3.6
    for age in range(plan.emerges_at_age, plan.last_age + 1):
        gained = max(0.0, air_of(plan.day(age)).mean_c - BASE_C)
        dimmed = 0.85 if light_on(plan.day(age)).dimming_percent < 100 else 1.0
        degree_days += gained * dimmed
        while degree_days >= FIRST_LEAF_DEGREE_DAYS + DEGREE_DAYS_PER_LEAF * number:
            height_cm += leaf_internode_cm(number)
            life.leaves.append(_new_leaf(life, number, age, height_cm))
            number += 1


def _new_leaf(life: PattypanLife, number: int, age: int, height_cm: float) -> LeafLife:
    chance = organ_chance(life.plan.name, "leaf", number)
    young = 0.46 + 0.54 * ramp(number, 0, 8)
    late = 1.0 - 0.22 * ramp(age, 70, 110)
    return LeafLife(
        number=number,
        appears_age=age + chance.random() * 0.8,
        azimuth_deg=(number * GOLDEN_ANGLE_DEG + chance.gauss(0, 9) + 40) % 360,
        width_cm=life.traits.leaf_width_cm * young * late * chance.uniform(0.92, 1.06),
        stalk_cm=life.traits.stalk_length_cm * (0.30 + 0.70 * ramp(number, 0, 10)) * chance.uniform(0.9, 1.08),
        base_height_cm=height_cm,
        life_days=46 + chance.gauss(0, 4) + 12 * ramp(number, 6, 20),
    )


def _train(life: PattypanLife) -> None:
    """Oldest leaves first; the leaves with mildew all at once."""
    rounds = [(age, 2) for age in life.traits.training_ages]
    if life.traits.mildew_age is not None:
        rounds.append((life.traits.mildew_age, 4))
    for age, count in sorted(rounds):
        standing = [leaf for leaf in life._standing(age) if age - leaf.appears_age > 12]
        going = sorted(standing, key=lambda leaf: leaf.appears_age)[:count]
        for leaf in going:
            leaf.removed_age = age
        life.removals[age] = tuple(leaf.number for leaf in going)


def _node_height_cm(life: PattypanLife, age: float) -> float:
    """Flowers open at nodes formed some time ago: their height on the stem."""
    there = [leaf.base_height_cm for leaf in life.leaves if leaf.appears_age <= age - 14]
    return there[-1] if there else 4.0


def _open_males(life: PattypanLife) -> None:
    traits, chance, number = life.traits, organ_chance(life.plan.name, "males"), 0
    for age in range(traits.first_male_age, life.plan.last_age + 1):
        rate = traits.males_a_day * (0.35 + 0.65 * ramp(age, traits.first_male_age, traits.first_male_age + 12))
        rate *= 1 - 0.5 * ramp(age, 92, 112)
        count = 1 if age == traits.first_male_age else _count_near(rate, chance)
        for _ in range(count):
            azimuth = (number * 97.0 + chance.gauss(0, 14)) % 360
            height_cm = max(3.0, _node_height_cm(life, age) + chance.uniform(-2.5, 1.0))
            life.males.append(MaleFlower(number, age, azimuth, height_cm))
            number += 1


def _open_females(life: PattypanLife) -> None:
    traits, chance, number = life.traits, organ_chance(life.plan.name, "females"), 0
    carried = 0.0
    for age in range(traits.first_female_age, traits.last_female_age + 1):
        carried += traits.females_a_day * chance.choice((0.0, 0.5, 1.0, 1.0, 1.5, 2.0))
        if age == traits.first_female_age:
            carried = 1.0
        while carried >= 1.0:
            carried -= 1.0
            life.females.append(_new_female(life, number, age, chance))
            number += 1


def _new_female(life: PattypanLife, number: int, age: int, chance: random.Random) -> FemaleFlower:
    traits = life.traits
    set_chance = traits.set_chance_early if age < traits.late_from_age else traits.set_chance_late
    males_open = any(male.open_age == age for male in life.males)
    missed = age in traits.away_ages or not males_open
    return FemaleFlower(
        number=number,
        open_age=age,
        azimuth_deg=(-118 + (number * 0.618034 % 1.0) * 236) % 360,
        base_height_cm=max(2.6, _node_height_cm(life, age) + chance.uniform(-1.2, 0.8)),
        pollinated=life.plan.by_hand and not missed,
        sets=chance.random() < set_chance and not (life.plan.by_hand and missed),
        vigour=chance.uniform(0.86, 1.14),
    )


def _count_near(rate: float, chance: random.Random) -> int:
    return max(0, round(rate + chance.gauss(0, 0.9)))


def _fill_fruit(life: PattypanLife) -> None:
    """Day by day: fruit swell, fewer at once swell faster, the grower picks on visiting days."""
    traits, plan = life.traits, life.plan
    chance = organ_chance(plan.name, "fruit")
    next_visit, picks = traits.first_female_age + 6.0, 0
    for age in range(traits.first_female_age, plan.last_age + 1):
        growing = [f for f in life.females if f.open_age <= age and f.picked_age is None and f.dropped_age is None]
        load = sum(1 for f in growing if f.sets and age - f.open_age >= 2)
        for female in growing:
            _swell(life, female, age, load)
        last = age == plan.last_age - 1
        if (age >= next_visit or last) and age not in (*traits.away_ages, *traits.no_pick_ages):
            picks = _pick_ripe(life, growing, age, picks, last)
            next_visit = age + traits.visit_every_days + chance.choice((-1, 0, 0, 1))


def _swell(life: PattypanLife, female: FemaleFlower, age: int, load: int) -> None:
    days = age - female.open_age
    start_g = 4.0 * female.vigour
    if days == 0 or female.weight_g == 0.0:
        female.weight_g = start_g
    elif female.sets:
        ceiling_g = life.traits.fruit_potential_g * female.vigour
        rate = 0.80 / (1 + 0.035 * max(0, load - 1))
        female.weight_g += rate * female.weight_g * (1 - female.weight_g / ceiling_g)
    else:
        female.weight_g = start_g * (1 + 0.25 * min(days, 2))
        if days >= 4:
            female.dropped_age = age
    life.weights_g[female.number, age] = female.weight_g


def _pick_ripe(life: PattypanLife, growing: list[FemaleFlower], age: int, picks: int, last: bool) -> int:
    least_g = life.traits.pick_weight_g * (0.8 if not last else 0.55)
    for female in growing:
        if female.sets and age - female.open_age >= 5 and female.weight_g >= least_g:
            female.picked_age = age
            picks += 1
            overgrown = female.weight_g > OVERGROWN_G
            female.cull_cause = "overgrown" if overgrown else dict(life.traits.culls).get(picks, "")
    return picks
