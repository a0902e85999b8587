"""Tagged flowers: from the pollination that hung the tag to what became of the flower."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from enum import StrEnum
from statistics import median

from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.entry import (
    Entry,
    FlowerFate,
    FruitCheck,
    Owner,
    OwnerKind,
    Pick,
    Pollination,
    TaggedFruit,
    TagSeen,
)
from growlog.records.problems import Problem, RecordRefused, refuse
from growlog.services.entries import add_entries, own_entries
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.words import mark, say, show_day


class TagFate(StrEnum):
    """What became of a tagged flower; young means that nobody has seen more of it yet."""

    YOUNG = "young"
    SET = "set"
    DROPPED = "dropped"
    PICKED = "picked"

    @property
    def label(self) -> str:
        """The fate in words, to be translated where shown."""
        return _LABELS[self]


_LABELS = {
    TagFate.YOUNG: mark("too young to tell"),
    TagFate.SET: mark("set"),
    TagFate.DROPPED: mark("dropped"),
    TagFate.PICKED: mark("picked"),
}
_ENDED = (TagFate.DROPPED, TagFate.PICKED)


@dataclass(frozen=True)
class TagStory:
    """A tagged flower. pollinated_on: day 0 of its own; set_on, ended_on: None while not seen."""

    tag: str
    pollinated_on: date
    fate: TagFate = TagFate.YOUNG
    set_on: date | None = None
    ended_on: date | None = None
    weight_g: float | None = None

    @property
    def days_to_pick(self) -> int | None:
        """Days from pollination to pick, None where it was not picked."""
        if self.fate is not TagFate.PICKED or self.ended_on is None:
            return None
        return (self.ended_on - self.pollinated_on).days


@dataclass(frozen=True)
class TagBook:
    """The stories of a crop, the latest pollination first; loose: tags seen that no pollination hung."""

    crop: Crop
    stories: tuple[TagStory, ...]
    loose: tuple[str, ...]

    @property
    def hanging(self) -> tuple[TagStory, ...]:
        """Those whose end has not been seen."""
        return tuple(s for s in self.stories if s.fate not in _ENDED)

    @property
    def median_days_to_pick(self) -> float | None:
        """The median of the days from pollination to pick, None before the first."""
        days = [s.days_to_pick for s in self.stories if s.days_to_pick is not None]
        return float(median(days)) if days else None

    @property
    def next_tag(self) -> str:
        """The number after the highest that was used."""
        numbers = [int(s.tag) for s in self.stories if s.tag.isdigit()]
        return str(max(numbers, default=0) + 1)


@dataclass(frozen=True)
class TagOutcome:
    """What was seen of a tagged flower that day. weight_g: of a picked fruit, None if not weighed."""

    tag: str
    fate: TagFate
    weight_g: float | None = None


def tag_book(log: OpenLogbook, crop_id: str, up_to: date | None = None) -> TagBook:
    """The tagged flowers of a crop as the log stood at the end of a day, today if not given."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        entries = [e for e in own_entries(unit, [crop_id])[crop_id] if e.day <= (up_to or log.today())]
    stories, loose = tag_stories(entries)
    return TagBook(crop, tuple(sorted(stories, key=_latest_first)), loose)


def tag_stories(entries: Iterable[Entry]) -> tuple[list[TagStory], tuple[str, ...]]:
    """The stories told by entries, and tags that were seen without having been hung.

    A number may be hung again: what is seen belongs to the latest pollination with it that had not ended by then.
    """
    open_stories: dict[str, TagStory] = {}
    ended: list[TagStory] = []
    loose: list[str] = []
    for entry in sorted(entries, key=_in_order):
        for tag in entry.detail.tags if isinstance(entry.detail, Pollination) else ():
            if tag in open_stories:
                ended.append(open_stories[tag])
            open_stories[tag] = TagStory(tag, entry.day)
        for outcome in _outcomes(entry):
            story = open_stories.get(outcome.tag)
            if story is None:
                loose.append(outcome.tag)
                continue
            told = _told_on(story, outcome, entry.day)
            if told.fate in _ENDED:
                ended.append(told)
                del open_stories[outcome.tag]
            else:
                open_stories[outcome.tag] = told
    return ended + list(open_stories.values()), tuple(dict.fromkeys(loose))


def write_outcomes(log: OpenLogbook, crop_id: str, day: date, outcomes: Sequence[TagOutcome]) -> Change:
    """Writes what was seen of tagged flowers as one change: a fruit check, and a pick where fruit were picked.

    RecordRefused for a tag that does not hang that day, and with all else that is wrong.
    """
    hanging = {s.tag for s in tag_book(log, crop_id, day).hanging}
    refuse(Problem("tags", say("Tag {tag} does not hang on {day}.", tag=o.tag, day=show_day(day)))
           for o in outcomes if o.tag not in hanging)  # fmt: skip
    if not outcomes:
        raise RecordRefused([Problem("tags", say("Nothing is stated yet: say of one flower what became of it."))])
    owner = Owner(OwnerKind.CROP, crop_id)
    details = [d for d in (_check_of(outcomes), _pick_of(outcomes)) if d is not None]
    entries = [Entry(new_id(), owner, day, detail) for detail in details]
    return add_entries(log, entries, say("Tagged flowers on {day}", day=show_day(day)))


def _check_of(outcomes: Sequence[TagOutcome]) -> FruitCheck | None:
    fates = {TagFate.SET: FlowerFate.SET, TagFate.DROPPED: FlowerFate.DROPPED}
    seen = tuple(TagSeen(o.tag, fates[o.fate]) for o in outcomes if o.fate in fates)
    return FruitCheck(tags_seen=seen) if seen else None


def _pick_of(outcomes: Sequence[TagOutcome]) -> Pick | None:
    picked = [o for o in outcomes if o.fate is TagFate.PICKED]
    if not picked:
        return None
    weights = tuple(o.weight_g for o in picked if o.weight_g is not None)
    return Pick(len(picked), None, weights, (), tuple(TaggedFruit(o.tag, o.weight_g) for o in picked))


def _outcomes(entry: Entry) -> list[TagOutcome]:
    if isinstance(entry.detail, FruitCheck):
        return [TagOutcome(t.tag, TagFate(t.fate.value)) for t in entry.detail.tags_seen]
    if isinstance(entry.detail, Pick):
        return [TagOutcome(t.tag, TagFate.PICKED, t.weight_g) for t in entry.detail.tagged]
    return []


def _told_on(story: TagStory, outcome: TagOutcome, day: date) -> TagStory:
    if outcome.fate is TagFate.SET:
        return replace(story, fate=TagFate.SET, set_on=story.set_on or day)
    return replace(story, fate=outcome.fate, ended_on=day, weight_g=outcome.weight_g)


def _in_order(entry: Entry) -> tuple[date, int]:
    """On one day flowers are pollinated before they are looked at."""
    return entry.day, 0 if isinstance(entry.detail, Pollination) else 1


def _latest_first(story: TagStory) -> tuple[int, str]:
    return -story.pollinated_on.toordinal(), story.tag.zfill(8)
