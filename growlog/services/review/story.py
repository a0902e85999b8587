"""The story of a crop in photos: picked by plant age, or as the grower chose them."""

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from itertools import pairwise

from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.decision import ReviewPhoto
from growlog.records.problems import Problem, RecordRefused
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.photo_uses import DayPhoto, photos_of_crop
from growlog.services.review.model import StoryPhoto
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

FEWEST, MOST = 9, 15
_DAYS_A_MORE = 40  # one photo more for so many days past the first hundred and twenty
_NEAR_DAYS = 3  # so far from a milestone a photo may still stand for it
_EARLY_DAYS_COUNT_MORE = 0.8  # seedlings change fastest; the axis of the story is age to this power

Captions = Mapping[int, str]  # milestones in words by plant age


def usual_count(last_age: int) -> int:
    """How many photos tell a crop of so many days: 9 to 15. Common practice, no source."""
    return min(MOST, FEWEST + max(0, last_age - 120 + _DAYS_A_MORE - 1) // _DAYS_A_MORE)


def story_ages(ages: Sequence[int], wanted: Sequence[int], count: int) -> list[int]:
    """The ages that tell a story best, of those that have a photo.

    First and last; up to half of the rest next to a wanted age (at most 3 days after it, in the order of wanted, no two
    so near that one would do); then again and again the one nearest to the middle of the widest gap, early gaps counted
    as wider. Common practice, no source.
    """
    have = sorted(set(ages))
    if len(have) <= count:
        return have
    chosen = {have[0], have[-1]}
    apart = (have[-1] - have[0]) / (2 * count)
    for age in wanted:
        near = _next_after(have, age)
        if near is not None and 2 * len(chosen) <= count + 2 and _is_apart(near, chosen, apart):
            chosen.add(near)
    while len(chosen) < count:
        chosen.add(_into_widest_gap(have, sorted(chosen)))
    return sorted(chosen)


def story_of(
    unit: UnitOfWork, crop: Crop, last_age: int, captions: Captions, count: int | None
) -> tuple[StoryPhoto, ...]:
    """The photos of the story up to a plant age."""
    shown = [p for p in photos_of_crop(unit, crop.id) if (p.use.day - crop.day_zero).days <= last_age]
    chosen = _chosen(unit, crop.id, shown)
    if chosen:
        return _captioned([_photo(p, crop, chosen=True) for p in chosen], captions)
    leaders = _leaders(shown)
    by_age = {(p.use.day - crop.day_zero).days: p for p in leaders}
    ages = story_ages(list(by_age), list(captions), count or usual_count(last_age))
    return _captioned([_photo(by_age[age], crop, chosen=False) for age in ages], captions)


def story_choices(log: OpenLogbook, crop_id: str) -> list[StoryPhoto]:
    """Every photo of the crop to choose the story's from, by day; the leading one of each day first."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        shown = photos_of_crop(unit, crop_id)
        chosen = {p.use.id for p in _chosen(unit, crop_id, shown)}
    return [_photo(p, crop, chosen=p.use.id in chosen) for p in shown]


def choose_photos(log: OpenLogbook, crop_id: str, use_ids: Sequence[str]) -> Change:
    """Lets these photos tell the story, in the order of their age; RecordRefused for none, too many or others'."""
    wanted = list(dict.fromkeys(use_ids))
    if not 1 <= len(wanted) <= MOST:
        raise RecordRefused([Problem("photos", say("Choose 1 to {most} photos.", most=MOST))])
    group = new_id()
    with log.unit() as unit:
        own = {p.use.id: p.use.day for p in photos_of_crop(unit, crop_id)}
        if any(id_ not in own for id_ in wanted):
            raise RecordRefused([Problem("photos", say("One of the photos is no longer with this crop."))])
        ordered = sorted(wanted, key=lambda id_: (own[id_], wanted.index(id_)))
        _write(unit, group, crop_id, ordered)
        unit.commit()
    return Change(group, say("Choose photos for the review"), (crop_id,), frozenset({crop_id}))


def forget_choice(log: OpenLogbook, crop_id: str) -> Change | None:
    """Back to photos picked by plant age; None where none were chosen."""
    group = new_id()
    with log.unit() as unit:
        rows = unit.review_photos.all(crop_id=crop_id)
        for row in rows:
            unit.remove(group, row)
        unit.commit()
    title = say("Photos of the review by plant age")
    return Change(group, title, (crop_id,), frozenset({crop_id})) if rows else None


def _write(unit: UnitOfWork, group: str, crop_id: str, ordered: Sequence[str]) -> None:
    """The rows of the choice; a row that serves a photo already keeps serving it."""
    kept = {row.photo_use_id: row for row in unit.review_photos.all(crop_id=crop_id)}
    for row in kept.values():
        if row.photo_use_id not in ordered:
            unit.remove(group, row)
    for place, use_id in enumerate(ordered, start=1):
        known = kept.get(use_id)
        if known is None:
            unit.add(group, ReviewPhoto(new_id(), crop_id, use_id, place))
        elif known.place != place:
            unit.change(group, replace(known, place=place))


def _chosen(unit: UnitOfWork, crop_id: str, shown: Sequence[DayPhoto]) -> list[DayPhoto]:
    by_id = {p.use.id: p for p in shown}
    rows = sorted(unit.review_photos.all(crop_id=crop_id), key=lambda r: (r.place, r.id))
    return [by_id[r.photo_use_id] for r in rows if r.photo_use_id in by_id]


def _leaders(shown: Sequence[DayPhoto]) -> list[DayPhoto]:
    """The first photo of each day, which is the leading one."""
    return list({p.use.day: p for p in reversed(shown)}.values())[::-1]


def _photo(shown: DayPhoto, crop: Crop, *, chosen: bool) -> StoryPhoto:
    age = (shown.use.day - crop.day_zero).days
    return StoryPhoto(shown.use.id, shown.photo, age, shown.use.day, "", chosen)


def _captioned(photos: Sequence[StoryPhoto], captions: Captions) -> tuple[StoryPhoto, ...]:
    """Each milestone below the photo next to it; below a photo the milestone that comes first in the captions."""
    words: dict[int, str] = {}
    for age, text in captions.items():
        near = _next_after([p.age for p in photos], age)
        if near is not None:
            words.setdefault(near, text)
    return tuple(replace(p, caption=words.get(p.age, "")) for p in photos)


def _next_after(ages: Iterable[int], age: int) -> int | None:
    """The age next to a milestone and not before it: a photo taken before does not show it yet."""
    return min((a for a in ages if 0 <= a - age <= _NEAR_DAYS), default=None)


def _is_apart(age: int, chosen: set[int], days: float) -> bool:
    return all(abs(age - other) >= days for other in chosen)


def _into_widest_gap(have: Sequence[int], chosen: Sequence[int]) -> int:
    free = [a for a in have if a not in set(chosen)]
    best: tuple[float, int] = (-1.0, free[0])
    for low, high in pairwise(chosen):
        between = [a for a in free if low < a < high]
        if not between:
            continue
        first, last = _along(low), _along(high)
        middle = min(between, key=lambda a: (abs(_along(a) - (first + last) / 2), a))
        best = max(best, (last - first, middle), key=lambda b: b[0])
    return best[1]


def _along(age: int) -> float:
    return math.pow(max(age, 0), _EARLY_DAYS_COUNT_MORE)
