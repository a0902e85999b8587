"""The entries of a pattypan: pollination, picks, training, fruit checks, the mildew and its treatment, notes."""

from datetime import date, time

from .events import (
    Cleared,
    Event,
    FruitCheck,
    NoteWritten,
    Pick,
    PickedFruit,
    PlantReading,
    Pollination,
    ProblemSeen,
    Tasting,
    Training,
    Treatment,
)
from .feeding import FeedHabit, feeds
from .growth_curves import organ_chance
from .pattypan_model import FemaleFlower, PattypanLife
from .stages import flowers_open, pattypan_stages
from .times import at_about

TREATMENT_AFTER_DAYS = 1
HARVEST_INTERVAL_D = 1
RE_ENTRY_H = 4.0


def pattypan_entries(life: PattypanLife, habit: FeedHabit, notes: dict[int, str], away: frozenset[date]) -> list[Event]:
    """Everything written about one pattypan crop."""
    written = [
        *pattypan_stages(life),
        *feeds(life.plan, habit, life.state, away),
        *_pollinations(life),
        *_picks(life),
        *_trainings(life),
        *_checks(life),
        *_readings(life),
        *_mildew(life),
        *_notes(life, notes),
    ]
    kept = [event for event in written if event.day not in away]
    return sorted(kept, key=lambda event: (event.day, event.at))


def _pollinations(life: PattypanLife) -> list[Event]:
    written: list[Event] = []
    for age in sorted({female.open_age for female in life.females if female.pollinated}):
        open_now = [female for female in life.females if female.open_age == age]
        done = tuple(female.number for female in open_now if female.pollinated)
        males = sum(1 for male in life.males if male.open_age == age)
        with_male = organ_chance(life.plan.name, "method", age).random() < 0.18
        written.append(
            Pollination(
                crop=life.plan.name,
                day=life.plan.day(age),
                at=at_about(7, 55, life.plan.name, "pollination", age, spread_min=11),
                labour_min=3 + 2 * len(done),
                females_pollinated=len(done),
                females_open=len(open_now),
                males_open=males,
                method="male flower" if with_male else "brush",
                flower_numbers=done,
            )
        )
    return written


def _picks(life: PattypanLife) -> list[Event]:
    written: list[Event] = []
    for age in sorted({female.picked_age for female in life.females if female.picked_age is not None}):
        fruit = tuple(_picked(life, female) for female in life.females if female.picked_age == age)
        written.append(
            Pick(
                crop=life.plan.name,
                day=life.plan.day(age),
                at=at_about(18, 15, life.plan.name, "pick", age),
                labour_min=3 + len(fruit),
                fruit=fruit,
            )
        )
    return written


def _picked(life: PattypanLife, female: FemaleFlower) -> PickedFruit:
    return PickedFruit(
        flower_number=female.number,
        flower_day=life.plan.day(female.open_age),
        weight_g=float(round(female.weight_g)),
        culled=female.cull_cause,
    )


def _trainings(life: PattypanLife) -> list[Event]:
    written: list[Event] = []
    for order, age in enumerate(sorted(life.removals)):
        sick = age == life.traits.mildew_age
        gone = life.removals[age]
        written.append(
            Training(
                crop=life.plan.name,
                day=life.plan.day(age),
                at=at_about(8, 32, life.plan.name, "training", age),
                labour_min=9 if sick else 5,
                old_leaves_removed=len(gone),
                tied=not sick and order % 2 == 0,
                leaf_numbers=gone,
                note="Leaves with mildew bagged and taken out of the room" if sick else "",
            )
        )
    return written


def _checks(life: PattypanLife) -> list[Event]:
    written: list[Event] = []
    since = life.traits.first_female_age - 1
    for age in range(life.traits.first_female_age + 5, life.plan.last_age, 7):
        if age in life.traits.away_ages:
            continue
        known = [f for f in life.females if since < f.open_age + 3 <= age]
        dropped = [f for f in life.females if f.dropped_age is not None and since < f.dropped_age <= age]
        written.append(
            FruitCheck(
                crop=life.plan.name,
                day=life.plan.day(age),
                at=at_about(8, 40, life.plan.name, "check", age),
                labour_min=4,
                flowers_open=flowers_open(life.state(age)),
                set_fruit=sum(1 for f in known if f.sets),
                dropped=len(dropped),
                thinned=0,
                hanging=sum(1 for f in life.females if f.sets and f.open_age + 3 <= age and f.hanging(age - 1)),
                flowers_set=tuple(f.number for f in known if f.sets and f.hanging(age - 1)),
                flowers_dropped=tuple(f.number for f in dropped),
            )
        )
        since = age
    return written


def _readings(life: PattypanLife) -> list[Event]:
    written: list[Event] = []
    for age in range(life.plan.emerges_at_age + 4, life.plan.last_age, 3 if life.plan.by_hand else 4):
        state = life.state(age)
        tallest = max(
            (leaf.base_height_cm + 0.94 * leaf.stalk_cm for leaf in state.leaves), default=state.stem_height_cm
        )
        written.append(
            PlantReading(
                crop=life.plan.name,
                day=life.plan.day(age),
                at=at_about(19, 35, life.plan.name, "height", age),
                labour_min=1,
                height_cm=float(round(tallest)),
                leaves=sum(1 for leaf in state.leaves if leaf.expansion > 0.35),
            )
        )
    return written


def _mildew(life: PattypanLife) -> list[Event]:
    age = life.traits.mildew_age
    if age is None:
        return []
    plan = life.plan
    return [
        ProblemSeen(
            crop=plan.name,
            day=plan.day(age),
            at=time(8, 12),
            labour_min=3,
            problem="powdery mildew",
            where="upper side of the four oldest leaves",
            share_percent=10,
            note="White spots since about three days; nights stay damp",
        ),
        Treatment(
            crop=plan.name,
            day=plan.day(age + TREATMENT_AFTER_DAYS),
            at=time(21, 0),
            labour_min=12,
            substance="potassium bicarbonate",
            dose_g_per_l=5.0,
            volume_l=0.6,
            re_entry_h=RE_ENTRY_H,
            harvest_interval_d=HARVEST_INTERVAL_D,
            note="Both sides of all leaves; dose and intervals as the label says; lamps off, door shut until morning",
        ),
        NoteWritten(
            crop=plan.name, day=plan.day(age + 8), at=time(8, 15), note="No new spots; the mildew has not spread"
        ),
    ]


def _notes(life: PattypanLife, notes: dict[int, str]) -> list[Event]:
    plan = life.plan
    written: list[Event] = [
        NoteWritten(crop=plan.name, day=plan.day(age), at=at_about(20, 10, plan.name, "note", age), note=text)
        for age, text in notes.items()
    ]
    first_pick = min(f.picked_age for f in life.females if f.picked_age is not None)
    good = "very good" if plan.by_hand else "good"
    written.append(
        Tasting(
            crop=plan.name,
            day=plan.day(first_pick + 6),
            at=time(19, 45),
            taste=good,
            keeping="fair" if plan.by_hand else "good",
            note="Nutty, firm; a slice tasted raw first, not bitter",
        )
    )
    if plan.cleared:
        written.append(
            Cleared(
                crop=plan.name,
                day=plan.ends,
                at=time(14, 30),
                labour_min=35,
                reason="few females left, next plants wait",
            )
        )
    return written
