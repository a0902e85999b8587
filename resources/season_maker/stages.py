"""Growth stages as the grower sees them: two-digit BBCH codes with the meaning in our own words."""

from collections.abc import Callable

from .events import Event, StageSeen
from .nightshade_model import NightshadeLife
from .pattypan_model import PattypanLife
from .plant_state import FlowerForm, FlowerStage, PlantState
from .scenario import CropPlan
from .times import at_about

LEAF_CODES = {1: "11", 2: "12", 3: "13", 4: "14", 6: "16", 9: "19"}
FLOWER_CODES = {1: "61", 2: "62", 3: "63", 5: "65", 9: "69"}
FRUIT_CODES = {1: "71", 2: "72", 3: "73", 5: "75", 9: "79"}


def pattypan_stages(life: PattypanLife) -> list[Event]:
    """Stages of a cucurbit: leaves, female buds, open flowers, fruit of typical size."""
    seen = _leaf_stages(life.plan, life.state)
    females = sorted(female.open_age for female in life.females)
    seen |= {
        code: (age - 5, _ordinal(n) + " female flower bud")
        for n, code, age in _nth(females, {1: "51", 3: "53", 9: "59"})
    }
    opened = sorted([*females, *(male.open_age for male in life.males)])
    seen |= {code: (age, _ordinal(n) + " flower open") for n, code, age in _nth(opened, FLOWER_CODES)}
    grown = sorted(female.picked_age for female in life.females if female.picked_age is not None)
    seen |= {code: (age, _ordinal(n) + " fruit of its usual picking size") for n, code, age in _nth(grown, FRUIT_CODES)}
    return _written(life.plan, seen)


def nightshade_stages(life: NightshadeLife) -> list[Event]:
    """Stages of a fruiting nightshade: leaves, side shoots, buds, flowers, fruit, ripe colour."""
    last = life.plan.last_age
    seen = _leaf_stages(life.plan, life.state)
    branches = sorted(round(shoot.appears_age) + 2 for shoot in life.shoots[1:])
    seen |= {code: (age, _ordinal(n) + " side shoot visible") for n, code, age in _nth(branches, {1: "21", 2: "22"})}
    opened = sorted(flower.open_age for flower in life.flowers)
    seen |= {code: (age - 9, _ordinal(n) + " flower bud") for n, code, age in _nth(opened, {1: "51", 2: "52"})}
    seen |= {code: (age, _ordinal(n) + " flower open") for n, code, age in _nth(opened, FLOWER_CODES)}
    grown = sorted(flower.open_age + 32 for flower in life.flowers if flower.sets)
    seen |= {code: (age, _ordinal(n) + " fruit at its full size") for n, code, age in _nth(grown, FRUIT_CODES)}
    ripe = sorted(flower.open_age + flower.ripe_after_days for flower in life.flowers if flower.sets)
    share = {"81": 0.10, "82": 0.20, "83": 0.30, "85": 0.50}
    for code, part in share.items():
        count = max(1, round(part * len(ripe)))
        seen[code] = (ripe[count - 1], f"{round(100 * part)} % of the fruit show their ripe colour")
    return _written(life.plan, {code: what for code, what in seen.items() if what[0] <= last})


def _leaf_stages(plan: CropPlan, state_at: Callable[[int], PlantState]) -> dict[str, tuple[int, str]]:
    seen = {
        "00": (0, "dry seed, sown"),
        "07": (plan.emerges_at_age, "seed leaves break through"),
        "10": (plan.emerges_at_age + 3, "seed leaves fully open"),
    }
    for age in range(plan.emerges_at_age, min(plan.last_age, 80) + 1):
        unfolded = sum(1 for leaf in state_at(age).leaves if leaf.expansion > 0.35)
        for count, code in LEAF_CODES.items():
            if unfolded >= count and code not in seen:
                seen[code] = (age, _ordinal(count) + " true leaf unfolded")
    return seen


def _nth(ages: list[int], codes: dict[int, str]) -> list[tuple[int, str, int]]:
    return [(count, code, ages[count - 1]) for count, code in codes.items() if count <= len(ages)]


def _written(plan: CropPlan, seen: dict[str, tuple[int, str]]) -> list[Event]:
    return [
        StageSeen(
            crop=plan.name, day=plan.day(age), at=at_about(8, 20, plan.name, "stage", code), bbch=code, meaning=meaning
        )
        for code, (age, meaning) in sorted(seen.items(), key=lambda item: item[1][0])
        if 0 <= age <= plan.last_age
    ]


def _ordinal(count: int) -> str:
    return {1: "1st", 2: "2nd", 3: "3rd"}.get(count, f"{count}th")


def flowers_open(state: PlantState) -> int:
    """Open flowers that can bear fruit: male ones do not count."""
    open_now = [flower for flower in state.flowers if flower.stage is FlowerStage.OPEN]
    return sum(1 for flower in open_now if flower.form is not FlowerForm.MALE)
