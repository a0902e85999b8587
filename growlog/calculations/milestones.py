"""Milestones of a crop at their plant ages, and how early or late it was against the packet and what is usual."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.calculations.plant_age import day_at
from growlog.calculations.yield_curve import PickPoint, first_pick_age
from growlog.words import mark, say, say_count, show_number

PEAK_DAYS = 7


class Milestone(StrEnum):
    """What a crop reaches once, in the usual order."""

    EMERGENCE = "emergence"
    FIRST_MALE = "first-male"
    FIRST_FEMALE = "first-female"
    FIRST_SET = "first-set"
    FIRST_PICK = "first-pick"
    PEAK_WEEK = "peak-week"
    LAST_PICK = "last-pick"


MILESTONE_WORDS = {
    Milestone.EMERGENCE: mark("emergence"),
    Milestone.FIRST_MALE: mark("first male flower"),
    Milestone.FIRST_FEMALE: mark("first female flower"),
    Milestone.FIRST_SET: mark("first fruit set"),
    Milestone.FIRST_PICK: mark("first pick"),
    Milestone.PEAK_WEEK: mark("peak week, from"),
    Milestone.LAST_PICK: mark("last pick"),
}


class CountedFrom(StrEnum):
    """What a packet counts its days from."""

    SOWING = "sowing"
    EMERGENCE = "emergence"
    TRANSPLANTING = "transplanting"


COUNTED_FROM_WORDS = {
    CountedFrom.SOWING: mark("sowing"),
    CountedFrom.EMERGENCE: mark("emergence"),
    CountedFrom.TRANSPLANTING: mark("transplanting"),
}


@dataclass(frozen=True)
class SeenAges:
    """Plant ages as noted, None where not: of what cannot be read from the picks."""

    emergence: int | None = None
    transplanting: int | None = None
    first_male: int | None = None
    first_female: int | None = None
    first_set: int | None = None


@dataclass(frozen=True)
class PeakWeek:
    """The seven days with most marketable yield, the earliest of equal ones."""

    start_age: int
    fruit_count: int
    weight_g: float


@dataclass(frozen=True)
class PacketComparison:
    """Days to first pick beside the packet's. late_days: below 0 for early; late_percent: of the packet's days."""

    counted_from: CountedFrom
    packet_days: int
    days: int
    late_days: int
    late_percent: float
    sentence: str
    figure: Figure


@dataclass(frozen=True)
class UsualRange:
    """A row of what is usual for a crop: days from what to what, and the source in words."""

    crop: str
    kind: str
    low_days: float
    high_days: float
    counted_from: str
    source: str


@dataclass(frozen=True)
class AgainstUsual:
    """A crop's days against a usual range. off_days: 0 within it, below 0 before it, above 0 after it."""

    usual: UsualRange
    days: int
    off_days: float
    sentence: str


def milestone_ages(seen: SeenAges, picks: Iterable[PickPoint]) -> dict[Milestone, int | None]:
    """The plant age of each milestone in days, None where it has not come or was not noted."""
    points = list(picks)
    peak = peak_week(points)
    return {
        Milestone.EMERGENCE: seen.emergence,
        Milestone.FIRST_MALE: seen.first_male,
        Milestone.FIRST_FEMALE: seen.first_female,
        Milestone.FIRST_SET: seen.first_set,
        Milestone.FIRST_PICK: first_pick_age(points),
        Milestone.PEAK_WEEK: None if peak is None else peak.start_age,
        Milestone.LAST_PICK: max((p.age for p in points if p.fruit_count), default=None),
    }


def peak_week(picks: Iterable[PickPoint]) -> PeakWeek | None:
    """The best seven days by count, of equal ones by weight, then the earliest; None before the first pick.

    Weights count as weighed. By definition; a week here begins on the day of a pick.
    """
    points = [p for p in picks if p.fruit_count]
    weeks = []
    for age in sorted({p.age for p in points}):
        week = [p for p in points if age <= p.age < age + PEAK_DAYS]
        weeks.append(PeakWeek(age, sum(p.fruit_count for p in week), sum(p.weight_g or 0.0 for p in week)))
    return max(weeks, key=lambda w: (w.fruit_count, w.weight_g, -w.start_age), default=None)


def first_flower_to_first_pick(seen: SeenAges, picks: Iterable[PickPoint]) -> int | None:
    """Days from the first female flower to the first marketable fruit; None without either, or out of order."""
    first = first_pick_age(picks)
    if first is None or seen.first_female is None or first < seen.first_female:
        return None
    return first - seen.first_female


def against_packet(
    packet_days: int, counted_from: CountedFrom, seen: SeenAges, picks: Iterable[PickPoint], day_zero: date
) -> PacketComparison | None:
    """Days to the first pick from what the packet counts from, and how early or late that is.

    packet_days: 1 to 400. None where there is no pick yet or the day the packet counts from was not noted.
    ValueError outside the range. By definition: a packet's 55 days and a first pick on day 36 are 19 days, 35 %, early.
    """
    if not 1 <= packet_days <= 400:
        raise ValueError(f"packet_days {packet_days} is outside 1 to 400 d")
    start = _start_age(counted_from, seen)
    first = first_pick_age(picks)
    if start is None or first is None:
        return None
    days = first - start
    late = days - packet_days
    percent = 100 * late / packet_days
    figure = _packet_figure(packet_days, counted_from, (start, first), late, day_zero)
    return PacketComparison(counted_from, packet_days, days, late, percent, _early_or_late(late, percent), figure)


_OF_WHAT = {"flower to harvest": mark("From flower to pick"), "days to maturity": mark("To the first pick")}


def against_usual(days: int, usual: UsualRange) -> AgainstUsual:
    """A crop's days against what is usual, in a sentence with the source."""
    off = days - min(max(float(days), usual.low_days), usual.high_days)
    low, high = (show_number(v, 0 if v == int(v) else 1) for v in (usual.low_days, usual.high_days))
    if off == 0:
        words = say("{days} days are within the usual {low} to {high}", days=days, low=low, high=high)
    elif off < 0:
        words = say("{days} days are fewer than the usual {low} to {high}", days=days, low=low, high=high)
    else:
        words = say("{days} days are more than the usual {low} to {high}", days=days, low=low, high=high)
    of_what = say(_OF_WHAT.get(usual.kind, usual.kind))
    sentence = say("{of_what}: {words} ({crop}, from {start}; {source}).", of_what=of_what, words=words,
                   crop=usual.crop, start=usual.counted_from, source=usual.source)  # fmt: skip
    return AgainstUsual(usual, days, off, sentence)


def usual_for(crop: str, kind: str, rows: Sequence[UsualRange]) -> list[UsualRange]:
    """The rows of a crop's kind of range. The crop's name is matched without its part after a comma or bracket."""
    wanted = _plain(crop)
    return [row for row in rows if row.kind == kind and _plain(row.crop) == wanted]


def explain_milestone(which: Milestone, age: int, day_zero: date) -> Figure:
    """The plant age of a milestone with its explanation."""
    day = day_at(day_zero, age)
    given = (Input("sown", day_zero.isoformat(), "", day_zero), Input(which.value, day.isoformat(), "", day))
    method = say("Whole civil days since sowing; the day of sowing is day 0.")
    if which is Milestone.PEAK_WEEK:
        method = say("The seven days with most marketable fruit, of equal ones with most weight, then the earliest.")
    return Figure(f"milestone-{which.value}", age, "d", given, method, DEFINITION, Sure.PUBLISHED, as_of=day)


def _plain(crop: str) -> str:
    return crop.lower().split(",")[0].split("(")[0].strip()


def _start_age(counted_from: CountedFrom, seen: SeenAges) -> int | None:
    if counted_from is CountedFrom.SOWING:
        return 0
    return seen.emergence if counted_from is CountedFrom.EMERGENCE else seen.transplanting


def _early_or_late(late: int, percent: float) -> str:
    if late == 0:
        return say("On the packet's day.")
    shown = show_number(abs(percent), 0)
    if late < 0:
        return say_count("{n} day, {percent} %, early.", "{n} days, {percent} %, early.", -late, percent=shown)
    return say_count("{n} day, {percent} %, late.", "{n} days, {percent} %, late.", late, percent=shown)


def _packet_figure(
    packet_days: int, counted_from: CountedFrom, ages: tuple[int, int], late: int, day_zero: date
) -> Figure:
    start, first = (day_at(day_zero, age) for age in ages)
    given = (
        Input("packet", packet_days, "d"),
        Input(counted_from.value, start.isoformat(), "", start),
        Input("first pick", first.isoformat(), "", first),
    )
    method = say(
        "Days from {start} to the first marketable fruit, less the packet's days; per cent of the packet's days.",
        start=say(COUNTED_FROM_WORDS[counted_from]),
    )
    return Figure("against-packet", late, "d", given, method, DEFINITION, Sure.PUBLISHED, as_of=first)
