"""The milestones of a crop as noted and picked, against its packet and what is usual."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date

from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.calculations.milestones import (
    MILESTONE_WORDS,
    AgainstUsual,
    CountedFrom,
    Milestone,
    PacketComparison,
    SeenAges,
    against_packet,
    against_usual,
    explain_milestone,
    first_flower_to_first_pick,
    milestone_ages,
)
from growlog.calculations.not_yet import NotYet
from growlog.calculations.plant_age import age_on, day_at
from growlog.calculations.yield_curve import PickPoint, first_pick_age
from growlog.records.crop import Crop
from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import Entry, FlowerFate, FruitCheck, Pollination
from growlog.services.crops import first_flower_day
from growlog.services.yield_view.season import CropSeason
from growlog.services.yield_view.usual_days import FLOWER_TO_HARVEST, TO_MATURITY, usual_ranges
from growlog.words import mark, say

_FIRST_FLOWER = mark("first flower")


@dataclass(frozen=True)
class MilestoneSeen:
    """A milestone in words at its plant age and day, with its explanation; age None where it was not seen yet."""

    which: Milestone
    words: str
    age: int | None
    day: date | None
    figure: Figure | None


@dataclass(frozen=True)
class Maturity:
    """How early or late the crop was. packet: or why it cannot be told. flower_to_pick: days, None without both.

    usual: each published range of the species with the crop's own days held against it.
    """

    packet: PacketComparison | NotYet
    flower_to_pick: int | None
    usual: tuple[AgainstUsual, ...]
    flower_to_pick_figure: Figure | None


def milestones_seen(season: CropSeason) -> tuple[MilestoneSeen, ...]:
    """All milestones in their usual order; male flowers only where the crop bears flowers apart."""
    ages = milestone_ages(seen_ages(season), season.points)
    if season.crop.first_pick_on is not None:
        ages[Milestone.FIRST_PICK] = age_on(season.day_zero, season.crop.first_pick_on)
    separate = season.cultivar.habit is FloweringHabit.SEPARATE
    return tuple(
        _seen(which, age, season, separate) for which, age in ages.items()
        if separate or which is not Milestone.FIRST_MALE
    )  # fmt: skip


def maturity(season: CropSeason) -> Maturity:
    """The crop's days against the packet's and the usual ones."""
    seen, picks = seen_ages(season), first_picks(season)
    days = first_flower_to_first_pick(seen, picks)
    return Maturity(_packet(season, seen, picks), days, _usual(season, seen, days, picks),
                    None if days is None else _flower_figure(season, seen, days))  # fmt: skip


def seen_ages(season: CropSeason) -> SeenAges:
    """What was noted, as plant ages."""
    crop, entries = season.crop, season.entries
    first_flower = crop.first_flower_on or first_flower_day(entries)
    male = _first(entries, lambda d: isinstance(d, Pollination) and bool(d.males_open))
    female = _first(entries, _shows_female)
    if season.cultivar.habit is not FloweringHabit.SEPARATE:
        male, female = None, first_flower
    return SeenAges(
        *(_age(crop, day) for day in (crop.emerged_on, crop.transplanted_on, male, female, _first(entries, _shows_set)))
    )


def first_picks(season: CropSeason) -> Sequence[PickPoint]:
    """The picks, or the first one alone where its day was typed."""
    typed = season.crop.first_pick_on
    return season.points if typed is None else [PickPoint(age_on(season.day_zero, typed), 1, None)]


def _seen(which: Milestone, age: int | None, season: CropSeason, separate: bool) -> MilestoneSeen:
    words = say(MILESTONE_WORDS[which])
    if which is Milestone.FIRST_FEMALE and not separate:
        words = say(_FIRST_FLOWER)
    if age is None:
        return MilestoneSeen(which, words, None, None, None)
    return MilestoneSeen(
        which, words, age, day_at(season.day_zero, age), explain_milestone(which, age, season.day_zero)
    )


def _packet(season: CropSeason, seen: SeenAges, picks: Sequence[PickPoint]) -> PacketComparison | NotYet:
    days, crop = season.cultivar.packet_days, season.crop
    if days is None:
        return NotYet(say("The packet's days to maturity are not stated with the cultivar."))
    counted_from = CountedFrom(season.cultivar.packet_counts_from.value)
    if counted_from is CountedFrom.SOWING and crop.sown_on != season.day_zero:
        return NotYet(say("The packet counts from sowing, but this crop's plant age does not."))
    found = against_packet(days, counted_from, seen, picks, season.day_zero)
    if found is not None:
        return found
    if first_pick_age(picks) is None:
        culled = any(p.culled_count for p in picks)
        return NotYet(say("All fruit picked so far was culled.") if culled else say("Nothing was picked yet."))
    return NotYet(say("The day from which the packet counts was not noted."))


def _usual(
    season: CropSeason, seen: SeenAges, flower_to_pick: int | None, picks: Sequence[PickPoint]
) -> tuple[AgainstUsual, ...]:
    species, found = season.cultivar.species, []
    if flower_to_pick is not None:
        found += [against_usual(flower_to_pick, row) for row in usual_ranges(species, FLOWER_TO_HARVEST)]
    first = first_pick_age(picks)
    starts = {"sowing": 0 if season.crop.sown_on == season.day_zero else None, "transplanting": seen.transplanting}
    for row in usual_ranges(species, TO_MATURITY) if first is not None else ():
        start = starts.get(row.counted_from)
        if first is not None and start is not None:
            found.append(against_usual(first - start, row))
    return tuple(found)


def _flower_figure(season: CropSeason, seen: SeenAges, days: int) -> Figure:
    flower = day_at(season.day_zero, seen.first_female or 0)
    pick = day_at(season.day_zero, (seen.first_female or 0) + days)
    given = (Input("first flower", flower.isoformat(), "", flower), Input("first pick", pick.isoformat(), "", pick))
    method = say("Days from the first female flower, or the first flower of any where they are alike, to the first "
                 "marketable fruit.")  # fmt: skip
    return Figure("first-flower-to-first-pick", days, "d", given, method, DEFINITION, Sure.PUBLISHED,
                  as_of=season.as_of)  # fmt: skip


def _first(entries: Sequence[Entry], shows: Callable[[object], bool]) -> date | None:
    return min((e.day for e in entries if shows(e.detail)), default=None)


def _shows_female(detail: object) -> bool:
    if isinstance(detail, Pollination):
        return bool(detail.females_pollinated)
    return isinstance(detail, FruitCheck) and bool(detail.females_open)


def _shows_set(detail: object) -> bool:
    if not isinstance(detail, FruitCheck):
        return False
    return bool(detail.fruit_set or detail.hanging) or any(t.fate is FlowerFate.SET for t in detail.tags_seen)


def _age(crop: Crop, day: date | None) -> int | None:
    return None if day is None else age_on(crop.day_zero, day)
