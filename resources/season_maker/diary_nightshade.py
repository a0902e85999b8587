"""The entries of chilli and aubergine: potting on, training, picks, fruit checks, readings, notes."""

from datetime import date, time

from .events import Event, FruitCheck, NoteWritten, Pick, PickedFruit, PlantReading, PottingOn, Tasting, Training
from .feeding import FeedHabit, feeds
from .nightshade_model import NightshadeLife
from .scenario import MIDDLE_POT, SMALL_POT
from .stages import flowers_open, nightshade_stages
from .times import at_about


def nightshade_entries(
    life: NightshadeLife, habit: FeedHabit, notes: dict[int, str], away: frozenset[date]
) -> list[Event]:
    """Everything written about one chilli or aubergine crop."""
    written = [
        *nightshade_stages(life),
        *feeds(life.plan, habit, life.state, away),
        *_potting(life),
        *_trainings(life),
        *_picks(life),
        *_checks(life),
        *_readings(life),
        *_notes(life, notes),
    ]
    kept = [event for event in written if event.day not in away and event.day <= life.plan.ends]
    return sorted(kept, key=lambda event: (event.day, event.at))


def _potting(life: NightshadeLife) -> list[Event]:
    plan = life.plan
    assert plan.transplanted_at_age is not None
    return [
        PottingOn(
            crop=plan.name,
            day=plan.day(plan.transplanted_at_age),
            at=time(10, 40),
            labour_min=15,
            from_volume_l=SMALL_POT.volume_l,
            to_volume_l=MIDDLE_POT.volume_l,
            medium="coir",
        )
    ]


def _trainings(life: NightshadeLife) -> list[Event]:
    return [
        Training(
            crop=life.plan.name,
            day=life.plan.day(age),
            at=at_about(8, 50, life.plan.name, "training", age),
            labour_min=4,
            old_leaves_removed=leaves,
            side_shoots_removed=shoots,
            tied=age == life.traits.cane_from_age,
            leaf_numbers=tuple(leaf.number for leaf in life.leaves if leaf.removed_age == age),
        )
        for age, leaves, shoots in life.traits.training
        if age <= life.plan.last_age
    ]


def _picks(life: NightshadeLife) -> list[Event]:
    written: list[Event] = []
    for age in sorted({flower.picked_age for flower in life.flowers if flower.picked_age is not None}):
        fruit = tuple(
            PickedFruit(
                flower_number=flower.number,
                flower_day=life.plan.day(flower.open_age),
                weight_g=round(flower.weight_g(age), 1),
                culled=flower.cull_cause,
            )
            for flower in life.flowers
            if flower.picked_age == age
        )
        at = at_about(18, 35, life.plan.name, "pick", age)
        written.append(
            Pick(crop=life.plan.name, day=life.plan.day(age), at=at, labour_min=2 + len(fruit) // 2, fruit=fruit)
        )
    return written


def _checks(life: NightshadeLife) -> list[Event]:
    written: list[Event] = []
    since = life.traits.first_flower_age - 1
    for age in range(life.traits.first_flower_age + 6, life.plan.last_age + 1, 7):
        known = [f for f in life.flowers if since < f.open_age + 8 <= age]
        dropped = [f for f in life.flowers if f.dropped_age is not None and since < f.dropped_age <= age]
        hanging = [
            f
            for f in life.flowers
            if f.sets and f.open_age + 8 <= age and (f.picked_age is None or f.picked_age >= age)
        ]
        written.append(
            FruitCheck(
                crop=life.plan.name,
                day=life.plan.day(age),
                at=at_about(9, 0, life.plan.name, "check", age),
                labour_min=3,
                flowers_open=flowers_open(life.state(age)),
                set_fruit=sum(1 for f in known if f.sets),
                dropped=len(dropped),
                thinned=0,
                hanging=len(hanging),
            )
        )
        since = age
    return written


def _readings(life: NightshadeLife) -> list[Event]:
    return [
        PlantReading(
            crop=life.plan.name,
            day=life.plan.day(age),
            at=at_about(19, 42, life.plan.name, "height", age),
            labour_min=1,
            height_cm=round(state.stem_height_cm, 1),
            leaves=sum(1 for leaf in state.leaves if leaf.expansion > 0.35),
        )
        for age in range(life.plan.emerges_at_age + 5, life.plan.last_age + 1, 4)
        for state in (life.state(age),)
    ]


def _notes(life: NightshadeLife, notes: dict[int, str]) -> list[Event]:
    plan = life.plan
    written: list[Event] = [
        NoteWritten(crop=plan.name, day=plan.day(age), at=at_about(20, 14, plan.name, "note", age), note=text)
        for age, text in notes.items()
    ]
    picked = [flower.picked_age for flower in life.flowers if flower.picked_age is not None]
    if picked:
        written.append(
            Tasting(
                crop=plan.name,
                day=plan.day(min(picked) + 6),
                at=time(19, 50),
                taste="good",
                note="Fruity, medium hot; gloves on to cut it",
            )
        )
    return written
