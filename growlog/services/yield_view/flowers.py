"""A crop's flowers as its entries tell them: pollinated or seen open, tagged, and checked for set."""

from collections.abc import Iterable, Sequence
from datetime import date
from itertools import pairwise

from growlog.calculations.flower_records import Flowers, FlowerSource, SetCheck, TaggedFlower
from growlog.calculations.fruit_set import FlowerRecords
from growlog.calculations.plant_age import age_on
from growlog.calculations.yield_curve import PickPoint
from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import Entry, FlowerFate, FruitCheck, Pick, Pollination
from growlog.services.flower_tags import TagFate, TagStory, tag_stories

_SESSIONS_FOR_GAP = 4  # common practice, no source


def flower_records(day_zero: date, habit: FloweringHabit, entries: Sequence[Entry], as_of_age: int) -> FlowerRecords:
    """What is known of the flowers up to a plant age.

    Flowers pollinated by hand where any were written down, else those that fruit checks saw open; tagged ones, and
    their fruit, by themselves. Where nothing was picked for longer than ever before, a session found nothing.
    """
    pollinated = _counted(day_zero, ((e, _untagged(e)) for e in entries))
    seen = _counted(day_zero, ((e, _seen_open(e)) for e in entries))
    by_hand = bool(pollinated) and habit is not FloweringHabit.SETS_ALONE
    stories, _ = tag_stories(entries)
    sessions = sorted({age_on(day_zero, e.day) for e in entries if isinstance(e.detail, Pick)})
    return FlowerRecords(
        flowers=pollinated if by_hand else seen,
        picks=[
            *(_untagged_pick(day_zero, e, e.detail) for e in entries if isinstance(e.detail, Pick)),
            *_found_nothing(sessions, as_of_age),
        ],
        tags=[_followed(day_zero, story, sessions) for story in stories],
        checks=[c for e in entries if (c := _set_check(e)) is not None],
        source=FlowerSource.POLLINATED if by_hand else FlowerSource.SEEN_OPEN,
    )


def still_out(records: FlowerRecords) -> list[Flowers]:
    """All flowers that may still bring a pick: the counted ones, and tagged ones whose end was not seen."""
    hanging = [Flowers(t.flower_age, 1) for t in records.tags if t.picked_age is None and t.dropped_age is None]
    return sorted([*records.flowers, *hanging], key=lambda f: f.age)


def every_flower(records: FlowerRecords) -> list[Flowers]:
    """All flowers written down, tagged ones too, whatever became of them."""
    return sorted([*records.flowers, *(Flowers(t.flower_age, 1) for t in records.tags)], key=lambda f: f.age)


def _found_nothing(sessions: Sequence[int], as_of_age: int) -> list[PickPoint]:
    """Nobody writes down that nothing was ripe: a gap longer than any before says so, once there were four sessions."""
    if len(sessions) < _SESSIONS_FOR_GAP:
        return []
    longest = max(b - a for a, b in pairwise(sessions))
    last = as_of_age - longest
    return [PickPoint(last, 0, None)] if last > sessions[-1] else []


def _counted(day_zero: date, counts: Iterable[tuple[Entry, int]]) -> list[Flowers]:
    return [Flowers(age_on(day_zero, entry.day), count) for entry, count in counts if count > 0]


def _untagged(entry: Entry) -> int:
    detail = entry.detail
    return (detail.females_pollinated or 0) - len(detail.tags) if isinstance(detail, Pollination) else 0


def _seen_open(entry: Entry) -> int:
    return (entry.detail.females_open or 0) if isinstance(entry.detail, FruitCheck) else 0


def _untagged_pick(day_zero: date, entry: Entry, pick: Pick) -> PickPoint:
    """The pick without its tagged fruit, marketable ones taken away first."""
    tagged = len(pick.tagged)
    good = max(pick.fruit_count - tagged, 0)
    culled = max(pick.culled_count - max(tagged - pick.fruit_count, 0), 0)
    return PickPoint(age_on(day_zero, entry.day), good, None, culled)


def _set_check(entry: Entry) -> SetCheck | None:
    """What a check counted, without the tags that it names: those are followed by themselves."""
    detail = entry.detail
    if not isinstance(detail, FruitCheck) or (detail.fruit_set is None and detail.dropped is None):
        return None
    tagged = {fate: sum(t.fate is fate for t in detail.tags_seen) for fate in FlowerFate}
    return SetCheck(
        max((detail.fruit_set or 0) - tagged[FlowerFate.SET], 0),
        max((detail.dropped or 0) - tagged[FlowerFate.DROPPED], 0),
    )


def _followed(day_zero: date, story: TagStory, sessions: Sequence[int]) -> TaggedFlower:
    flower = age_on(day_zero, story.pollinated_on)
    end = None if story.ended_on is None else age_on(day_zero, story.ended_on)
    picked = end if story.fate is TagFate.PICKED else None
    dropped = end if story.fate is TagFate.DROPPED else None
    before = None if picked is None else max((s for s in sessions if flower < s < picked), default=None)
    return TaggedFlower(flower, picked, before, dropped)
