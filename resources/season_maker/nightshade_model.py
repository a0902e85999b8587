"""Chilli and aubergine from sowing on: a main stem that forks, leaves along it, flowers at the forks."""

from collections.abc import Callable
from dataclasses import dataclass, field

from .growth_curves import GOLDEN_ANGLE_DEG, growth, organ_chance, ramp
from .plant_state import Flower, FlowerForm, FlowerStage, Fruit, Leaf, PlantState, Shoot
from .scenario import CropPlan, light_on


@dataclass(frozen=True)
class NightshadeTraits:
    """How the two nightshades differ."""

    stem_cm: float
    main_leaves: int
    days_per_leaf: float
    first_fork_age: int
    days_per_fork: float
    forks: int
    branch_cm: float
    branch_rise_deg: float
    leaf_width_cm: float
    stalk_cm: float
    flowers_at_fork: int
    first_flower_age: int
    set_chance: float
    ripe_after_days: int  # from flower
    fruit_weight_g: float
    first_pick_age: int
    visit_every_days: float
    leaf_life_days: float
    training: tuple[tuple[int, int, int], ...] = ()  # age, old leaves off, side shoots out
    cane_from_age: int | None = None
    culls: tuple[tuple[int, str], ...] = ()


@dataclass
class ShootLife:
    """A piece of stem between two forks."""

    number: int
    parent: int
    order: int
    appears_age: float
    azimuth_deg: float
    rise_deg: float
    length_cm: float
    radius_cm: float


@dataclass
class LeafOnShoot:
    """A leaf and where it stands."""

    number: int
    shoot: int
    along: float
    appears_age: float
    azimuth_deg: float
    width_cm: float
    removed_age: int | None = None


@dataclass
class ForkFlower:
    """A flower and what came of it."""

    number: int
    shoot: int
    open_age: int
    open_days: int
    azimuth_deg: float
    sets: bool
    full_weight_g: float
    ripe_after_days: int
    picked_age: int | None = None
    cull_cause: str = ""

    @property
    def dropped_age(self) -> int | None:
        """A flower that does not set falls within a week."""
        return None if self.sets else self.open_age + self.open_days + 3

    def weight_g(self, age: int) -> float:
        """Fresh weight at this age of the plant."""
        return self.full_weight_g * growth(max(0, age - self.open_age), 15, 4.2)


@dataclass
class NightshadeLife:
    """The whole life of one plant; states and entries are read from it."""

    plan: CropPlan
    traits: NightshadeTraits
    shoots: list[ShootLife] = field(default_factory=list)
    leaves: list[LeafOnShoot] = field(default_factory=list)
    flowers: list[ForkFlower] = field(default_factory=list)

    def state(self, age: int, evening: bool = False) -> PlantState:
        """What can be seen at this age: before the day's pick, or in the evening after it."""
        since = age - self.plan.emerges_at_age
        main = self._shoot(self.shoots[0], age)
        height_cm = main.length_cm + sum(
            0.7 * growth(age - s.appears_age, 8, 2.6) * s.length_cm
            for s in self.shoots[1:]
            if s.appears_age <= age and s.number == min(x.number for x in self.shoots if x.order == s.order)
        )
        return PlantState(
            crop=self.plan.name,
            species=self.plan.species,
            day=age,
            pot=self.plan.pot(age),
            emergence=ramp(since + 1, 0, 4.0),
            seed_leaf_cm=2.6 * growth(since + 2, 4, 1.6),
            seed_leaf_yellowing=ramp(since, 30, 44) * 1.25,
            stem_height_cm=height_cm,
            stem_radius_cm=main.radius_cm,
            leaves=tuple(self._leaf(leaf, age) for leaf in self.leaves if self._stands(leaf, age)),
            flowers=tuple(self._flowers_seen(age)),
            fruits=tuple(self._fruits_seen(age, evening)),
            shoots=tuple(self._shoot(shoot, age) for shoot in self.shoots if shoot.appears_age <= age),
            cane=self.traits.cane_from_age is not None and age >= self.traits.cane_from_age,
        )

    def _stands(self, leaf: LeafOnShoot, age: int) -> bool:
        return leaf.appears_age <= age and (leaf.removed_age is None or age < leaf.removed_age)

    def _shoot(self, shoot: ShootLife, age: int) -> Shoot:
        lived = age - shoot.appears_age
        part = _main_stem_part(self, age) if shoot.number == 0 else growth(lived, 8, 2.6)
        thick = growth(max(0.0, lived), 34, 12)
        return Shoot(
            number=shoot.number,
            parent=shoot.parent,
            azimuth_deg=shoot.azimuth_deg,
            rise_deg=shoot.rise_deg,
            length_cm=max(0.4, shoot.length_cm * part),
            radius_cm=shoot.radius_cm * (0.30 + 0.70 * thick),
            woodiness=ramp(lived, 40, 100) if shoot.order < 2 else 0.0,
        )

    def _leaf(self, leaf: LeafOnShoot, age: int) -> Leaf:
        lived = age - leaf.appears_age
        part = growth(lived + 1, 9, 2.6)
        along = leaf.along if leaf.shoot else min(1.0, leaf.along / max(_main_stem_part(self, age), 0.05))
        return Leaf(
            number=leaf.number,
            azimuth_deg=leaf.azimuth_deg,
            base_height_cm=0.0,
            stalk_cm=self.traits.stalk_cm * (0.35 + 0.65 * leaf.width_cm / self.traits.leaf_width_cm) * part,
            blade_cm=leaf.width_cm * part,
            expansion=part,
            age_days=lived,
            yellowing=ramp(lived, self.traits.leaf_life_days, self.traits.leaf_life_days + 22),
            shoot=leaf.shoot,
            along_shoot=along,
        )

    def _flowers_seen(self, age: int) -> list[Flower]:
        seen = []
        for flower in self.flowers:
            if self.shoots[flower.shoot].appears_age > age:
                continue
            days = age - flower.open_age
            if (stage := _stage(days, flower.open_days)) is not None:
                size = ramp(days, -11, 0)
                seen.append(Flower(flower.number, FlowerForm.BOTH, stage, flower.azimuth_deg, 0.0, size, flower.shoot))
        return seen

    def _fruits_seen(self, age: int, evening: bool) -> list[Fruit]:
        seen = []
        for flower in self.flowers:
            days = age - flower.open_age
            gone = flower.picked_age is not None and age + evening > flower.picked_age
            if flower.sets and days >= flower.open_days + 2 and not gone:
                weight_g = flower.weight_g(age)
                across = 1.75 * (max(weight_g, 0.05) / 6.0) ** (1 / 3)
                ripe = ramp(days, flower.ripe_after_days - 9, flower.ripe_after_days - 1)
                seen.append(Fruit(flower.number, flower.azimuth_deg, 0.0, across, weight_g, ripe, 0.0, flower.shoot))
        return seen


def _stage(days: int, open_days: int) -> FlowerStage | None:
    if -11 <= days < 0:
        return FlowerStage.BUD
    if 0 <= days < open_days:
        return FlowerStage.OPEN
    return FlowerStage.WITHERED if open_days <= days < open_days + 2 else None


def _main_stem_part(life: NightshadeLife, age: int) -> float:
    """The main stem lengthens leaf by leaf until the first fork."""
    start = life.plan.emerges_at_age
    risen = [growth(max(0.0, age + 1 - leaf.appears_age), 6, 2.2) for leaf in life.leaves if leaf.shoot == 0]
    return 0.10 * ramp(age, start - 1, start + 4) + 0.90 * sum(risen) / len(risen)


def live_nightshade(plan: CropPlan, traits: NightshadeTraits) -> NightshadeLife:
    """Let one plant live from sowing to its last day."""
    life = NightshadeLife(plan, traits)
    life.shoots.append(
        ShootLife(0, -1, 0, plan.emerges_at_age - 1, 20, 87, traits.stem_cm, 0.075 * traits.stem_cm**0.62)
    )
    _appear_main_leaves(life)
    _fork(life)
    _open_flowers(life)
    _train(life)
    _pick(life)
    return life


def _appear_main_leaves(life: NightshadeLife) -> None:
    traits, plan = life.traits, life.plan
    age = plan.emerges_at_age + 3.0
    for number in range(traits.main_leaves):
        chance = organ_chance(plan.name, "leaf", number)
        size = 0.34 + 0.66 * ramp(number, 0, 5)
        along = 0.16 + 0.82 * (number + 1) / traits.main_leaves
        azimuth = (number * GOLDEN_ANGLE_DEG + chance.gauss(0, 10) + 60) % 360
        life.leaves.append(
            LeafOnShoot(
                number, 0, min(along, 1.0), age, azimuth, traits.leaf_width_cm * size * chance.uniform(0.92, 1.05)
            )
        )
        slow = 1.35 if light_on(plan.day(int(age))).dimming_percent < 100 else 1.0
        age += traits.days_per_leaf * slow


def _fork(life: NightshadeLife) -> None:
    traits, plan = life.traits, life.plan
    ends = [life.shoots[0]]
    for order in range(1, traits.forks + 1):
        grown = []
        for parent in ends:
            turn = organ_chance(plan.name, "fork", parent.number)
            swing = turn.uniform(58, 92)
            for side in (-1, 1):
                if order >= 3 and turn.random() < 0.14:
                    continue  # a weak arm stays asleep
                grown.append(_branch(life, parent, order, swing * side))
        ends = grown


def _branch(life: NightshadeLife, parent: ShootLife, order: int, swing: float) -> ShootLife:
    traits, number = life.traits, len(life.shoots)
    chance = organ_chance(life.plan.name, "branch", number)
    base = 80.0 if parent.number == 0 else parent.azimuth_deg
    azimuth = base + (swing if order > 1 else (0 if swing < 0 else 180) + chance.uniform(-20, 20)) * (
        1.0 if order != 2 else 0.9
    )
    shoot = ShootLife(
        number=number,
        parent=parent.number,
        order=order,
        appears_age=traits.first_fork_age + traits.days_per_fork * (order - 1) + chance.uniform(-1.5, 2.0),
        azimuth_deg=azimuth % 360,
        rise_deg=traits.branch_rise_deg + chance.gauss(0, 7),
        length_cm=traits.branch_cm * 0.90 ** (order - 1) * chance.uniform(0.85, 1.15),
        radius_cm=life.shoots[0].radius_cm * 0.74**order,
    )
    life.shoots.append(shoot)
    for along, size in ((0.5, 0.72), (1.0, 0.92)):
        leaf_number = len(life.leaves)
        look = organ_chance(life.plan.name, "leaf", leaf_number)
        width = traits.leaf_width_cm * size * 0.95 ** (order - 1) * look.uniform(0.85, 1.1)
        side = shoot.azimuth_deg + look.choice((-1, 1)) * look.uniform(20, 85)
        life.leaves.append(LeafOnShoot(leaf_number, number, along, shoot.appears_age + 3 * along, side % 360, width))
    return shoot


def _open_flowers(life: NightshadeLife) -> None:
    traits = life.traits
    for shoot in life.shoots:
        for place in range(traits.flowers_at_fork):
            chance = organ_chance(life.plan.name, "flower", shoot.number, place)
            if shoot.number == 0:
                open_age = traits.first_flower_age + 4 * place
            else:
                open_age = round(
                    traits.first_flower_age + shoot.order * traits.days_per_fork + 3 * place + chance.uniform(-2, 2)
                )
                open_age = max(open_age, traits.first_flower_age + 2, round(shoot.appears_age) + 6)
            life.flowers.append(
                ForkFlower(
                    number=len(life.flowers),
                    shoot=shoot.number,
                    open_age=open_age,
                    open_days=4,
                    azimuth_deg=(shoot.azimuth_deg + (70 if shoot.number else 0) + 150 * place + chance.gauss(0, 20))
                    % 360,
                    sets=chance.random() < traits.set_chance,
                    full_weight_g=traits.fruit_weight_g * chance.uniform(0.78, 1.22),
                    ripe_after_days=traits.ripe_after_days + chance.randint(0, 5),
                )
            )


def _train(life: NightshadeLife) -> None:
    for age, count, _ in life.traits.training:
        old = sorted(
            (leaf for leaf in life.leaves if life._stands(leaf, age) and leaf.shoot == 0),
            key=lambda leaf: leaf.appears_age,
        )
        for leaf in old[:count]:
            leaf.removed_age = age


def _pick(life: NightshadeLife) -> None:
    traits, visit, picks = life.traits, float(life.traits.first_pick_age), 0
    is_ripe: Callable[[ForkFlower, int], bool] = lambda f, age: f.sets and age - f.open_age >= f.ripe_after_days  # noqa: E731
    for age in range(traits.first_pick_age, life.plan.last_age + 1):
        if age < visit:
            continue
        ripe = [f for f in life.flowers if f.picked_age is None and is_ripe(f, age)]
        for flower in ripe:
            picks += 1
            flower.picked_age = age
            flower.cull_cause = dict(traits.culls).get(picks, "")
        if ripe:
            visit = age + traits.visit_every_days
