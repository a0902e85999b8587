"""A feeding round: one feed for several crops or tanks, repeated for each or shared out, written as one change."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, time
from enum import StrEnum

from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.entry import Entry, Feed, Owner, OwnerKind
from growlog.records.problems import Problem, RecordRefused
from growlog.services.entries import add_entries
from growlog.services.feed_plan import PlannedFeed, planned_in
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.repeats import entries_of_owner, newest_edition
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import mark, say, show_day


class Sharing(StrEnum):
    """What a volume that is stated for all means for each."""

    EACH = "each"
    EQUALLY = "equally"
    BY_PLANTS = "by-plants"

    @property
    def label(self) -> str:
        """The way in words, to be translated where shown."""
        return _LABELS[self]


_LABELS = {
    Sharing.EACH: mark("each gets it"),
    Sharing.EQUALLY: mark("shared out equally"),
    Sharing.BY_PLANTS: mark("shared out by plants"),
}


@dataclass(frozen=True)
class RoundRow:
    """A crop or a tank that may be fed. last: its latest feed up to the day before, with its day; planned: what its
    plan has for the day. fed_before: how many feeds of that very day it has already."""

    owner: Owner
    name: str
    about: str
    plant_count: int
    last: Feed | None = None
    last_day: date | None = None
    planned: PlannedFeed | None = None
    fed_before: int = 0


def round_rows(log: OpenLogbook, day: date) -> list[RoundRow]:
    """The crops that stood on a day, then the tanks, each with its last feed."""
    with log.unit() as unit:
        crops = [c for c in unit.crops.all() if c.day_zero <= day and (c.cleared_on is None or c.cleared_on >= day)]
        rows = [_crop_row(unit, c, day) for c in sorted(crops, key=lambda c: (c.day_zero, c.name))]
        return rows + [_tank_row(unit, t.id, t.name, day) for t in unit.tanks.all()]


def mix_given_last(log: OpenLogbook, rows: Sequence[RoundRow]) -> str | None:
    """The newest edition of the mix that was given last to any of them; None where none was."""
    given = [(r.last_day, r.last.mix_id) for r in rows if r.last is not None and r.last_day and r.last.mix_id]
    if not given:
        return None
    return newest_edition(log, max(given)[1] or "")


def mix_for_round(log: OpenLogbook, rows: Sequence[RoundRow]) -> str | None:
    """The mix that a round begins with: that of the plans where they agree on one, else the mix given last."""
    planned = {row.planned.mix.id for row in rows if row.planned is not None}
    return planned.pop() if len(planned) == 1 else mix_given_last(log, rows)


def share_out(volume_l: float, sharing: Sharing, plant_counts: Sequence[int]) -> list[float]:
    """L for each of those fed. volume_l: 0 to 2000; plant_counts: each 0 or more (a tank counts as 1).

    Where no plant is alive, plants cannot share, and it is shared out equally. ValueError for a negative volume.
    """
    if volume_l < 0:
        raise ValueError(f"volume_l {volume_l:g} is outside 0 L and above")
    if sharing is Sharing.EACH:
        return [volume_l] * len(plant_counts)
    total = sum(plant_counts)
    if sharing is Sharing.EQUALLY or total == 0:
        return [volume_l / len(plant_counts)] * len(plant_counts)
    return [volume_l * count / total for count in plant_counts]


def round_entries(day: date, at: time | None, feeds: Sequence[tuple[Owner, Feed]]) -> list[Entry]:
    """The entries of a round, unwritten."""
    return [Entry(new_id(), owner, day, feed, at) for owner, feed in feeds]


def write_round(log: OpenLogbook, entries: Sequence[Entry]) -> Change:
    """Writes all feeds of a round as one change; RecordRefused with all that is wrong, and nothing is written then."""
    if not entries:
        raise RecordRefused([Problem("volume_l", say("Nobody is fed yet: fill in at least one row."))])
    return add_entries(log, list(entries), say("Feeding round on {day}", day=show_day(entries[0].day)))


def _crop_row(unit: UnitOfWork, crop: Crop, day: date) -> RoundRow:
    alive = [p for p in unit.plants.all(crop_id=crop.id) if p.from_day <= day and not (p.lost_on and p.lost_on < day)]
    owner = Owner(OwnerKind.CROP, crop.id)
    about = say("day {age}", age=(day - crop.day_zero).days)
    last, last_day, fed_before = _fed(unit, owner, day)
    return RoundRow(owner, crop.name, about, len(alive), last, last_day, planned_in(unit, crop.id, day), fed_before)


def _tank_row(unit: UnitOfWork, tank_id: str, name: str, day: date) -> RoundRow:
    owner = Owner(OwnerKind.TANK, tank_id)
    last, last_day, fed_before = _fed(unit, owner, day)
    return RoundRow(owner, name, say("tank"), 1, last, last_day, fed_before=fed_before)


def _fed(unit: UnitOfWork, owner: Owner, day: date) -> tuple[Feed | None, date | None, int]:
    """The last feed before a day, its day, and how many there are of the day itself."""
    feeds = [(e.day, e.detail) for e in entries_of_owner(unit, owner) if e.day <= day and isinstance(e.detail, Feed)]
    before = [pair for pair in feeds if pair[0] < day]
    last_day, feed = max(before, key=lambda pair: pair[0], default=(None, None))
    return feed, last_day, len(feeds) - len(before)
