"""The grower's routines, and what was answered when something was due; the last day leaves a few things open."""

from datetime import date, timedelta

from growlog.records.routine import DueAnswer, DueOutcome, Routine, RoutineFor, RoutineWhen

from .identity import crop_id, identity
from .scenario import BOXROOM_GOLD, LAST_DAY

SINCE = BOXROOM_GOLD.sown
CLEAN_UP, SHAKE, METER = "Clean up dropped flowers", "Shake the trusses", "Read the electricity meter"


def routines() -> tuple[Routine, ...]:
    """What is done again and again since Boxroom Gold was sown."""
    females, flowering = RoutineWhen.WHILE_FEMALES_OPEN, RoutineWhen.WHILE_FLOWERING
    return (
        _routine("Feed", every_days=1, entry_kind="feed"),
        _routine("Photo", every_days=1, entry_kind="photo"),
        _routine("Pollinate", when=females, every_days=1, entry_kind="pollination", in_the_morning=True),
        _routine(CLEAN_UP, when=flowering, every_days=3),
        _of_crop(SHAKE, "Landing Light"),
        _of_crop(SHAKE, "Porch Violet"),
        _routine("Calibrate the meters", who=RoutineFor.ROOM, every_days=30, entry_kind="calibration"),
        _routine(METER, who=RoutineFor.ROOM, every_days=30, entry_kind="meter"),
    )


def due_answers() -> tuple[DueAnswer, ...]:
    """The answers of the last weeks; entries and photos answer the other routines by themselves."""
    found = [_answer(CLEAN_UP, "Landing Light", back, DueOutcome.DONE) for back in (24, 21, 18, 12, 9, 6, 3)]
    found += [_answer(CLEAN_UP, "Boxroom Gold", back, DueOutcome.DONE) for back in (24, 21, 18, 15, 12, 9, 6, 3)]
    found.append(_answer(CLEAN_UP, "Landing Light", 15, DueOutcome.LEFT_OUT, reason="none on the floor"))
    found.append(_answer(CLEAN_UP, "Porch Violet", 3, DueOutcome.PUT_OFF, until_back=1))
    found.append(_answer(CLEAN_UP, "Porch Violet", 1, DueOutcome.DONE))
    found += [_answer(f"{SHAKE}/Landing Light", "Landing Light", back, DueOutcome.DONE) for back in (5, 4, 2, 1)]
    return tuple(found)


def _routine(
    name: str, *, who: RoutineFor = RoutineFor.EACH_CROP, when: RoutineWhen = RoutineWhen.EVERY_DAYS,
    every_days: int, entry_kind: str = "", in_the_morning: bool = False,
) -> Routine:  # fmt: skip
    return Routine(
        identity("routine", name),
        name,
        who,
        when,
        every_days=every_days,
        from_day=SINCE,
        entry_kind=entry_kind,
        in_the_morning=in_the_morning,
    )


def _of_crop(name: str, crop: str) -> Routine:
    """Flowers that hold both need no more than a shake at noon."""
    return Routine(
        identity("routine", f"{name}/{crop}"),
        name,
        RoutineFor.CROP,
        RoutineWhen.WHILE_FLOWERING,
        crop_id(crop),
        every_days=1,
        from_day=SINCE,
        note="At noon, when the flowers are open",
    )


def _answer(
    routine: str, crop: str, days_back: int, outcome: DueOutcome, reason: str = "", until_back: int | None = None
) -> DueAnswer:
    """An answer so many days before the last day of the season."""
    day = _back(days_back)
    return DueAnswer(
        identity("due answer", routine, crop, day.isoformat()),
        f"routine:{identity('routine', routine)}:{crop_id(crop)}",
        day,
        outcome,
        crop_id(crop),
        None if until_back is None else _back(until_back),
        reason,
    )


def _back(days: int) -> date:
    return LAST_DAY - timedelta(days=days)
