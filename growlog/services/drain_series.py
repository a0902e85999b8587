"""Drain share and drain-minus-feed EC of a crop by plant age, for lanes of the board."""

from dataclasses import dataclass
from datetime import date

from growlog.calculations.plant_age import age_on
from growlog.calculations.tank import drain_minus_feed, drain_share_percent, uptake_to_waste
from growlog.records.entry import Entry, Feed
from growlog.services.entries import entries_of_crop
from growlog.services.open_logbook import OpenLogbook
from growlog.words import say, show_number


@dataclass(frozen=True)
class DrainPoint:
    """A feed that drained. drain_share_percent: of what was given; ec_difference_ms_per_cm: drain less feed; uptake:
    the strength of what stayed, mS/cm. None: not measured. text: the same in words."""

    age: int
    day: date
    entry_id: str
    drain_share_percent: float | None
    ec_difference_ms_per_cm: float | None
    uptake_ec_ms_per_cm: float | None
    text: str


def drain_series(log: OpenLogbook, crop_id: str) -> list[DrainPoint]:
    """The points of a crop up to today, in order; feeds whose drain was not measured are left out."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        entries = [e for e in entries_of_crop(unit, crop) if e.day <= log.today()]
    return drain_points(entries, crop.day_zero)


def drain_points(entries: list[Entry], day_zero: date) -> list[DrainPoint]:
    """The same from entries read before."""
    points = [_point(e, e.detail, age_on(day_zero, e.day)) for e in entries if isinstance(e.detail, Feed)]
    return [p for p in points if p is not None]


def _point(entry: Entry, feed: Feed, age: int) -> DrainPoint | None:
    share = difference = uptake_ec = None
    if feed.volume_l and feed.drain_l is not None:
        share = drain_share_percent(feed.volume_l, feed.drain_l)
    if feed.ec_ms_per_cm is not None and feed.drain_ec_ms_per_cm is not None:
        difference = drain_minus_feed(feed.ec_ms_per_cm, feed.drain_ec_ms_per_cm)
        if feed.volume_l and feed.drain_l is not None:
            taken = uptake_to_waste(feed.volume_l, feed.ec_ms_per_cm, feed.drain_l, feed.drain_ec_ms_per_cm)
            uptake_ec = taken.ec_ms_per_cm if taken else None
    if share is None and difference is None:
        return None
    return DrainPoint(age, entry.day, entry.id, share, difference, uptake_ec, _text(share, difference))


def _text(share: float | None, difference: float | None) -> str:
    parts = []
    if share is not None:
        parts.append(say("drain {share} %", share=show_number(share, 0)))
    if difference is not None:
        sign = "+" if difference > 0 else "−" if difference < 0 else ""
        parts.append(say("EC {difference} mS/cm to the feed", difference=sign + show_number(abs(difference), 2)))
    return ", ".join(parts)
