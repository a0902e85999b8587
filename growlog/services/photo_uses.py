"""A photo's use on a crop's day: move it, let it lead, take it out; and its pictures."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from pathlib import Path

from growlog.photos.picture_problem import PictureProblem
from growlog.photos.previews import PreviewSize
from growlog.records.change import Change
from growlog.records.photo import Photo, PhotoUse
from growlog.records.problems import Problem, RecordRefused
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


@dataclass(frozen=True)
class DayPhoto:
    """A photo as a day shows it."""

    use: PhotoUse
    photo: Photo


def photos_of_crop(unit: UnitOfWork, crop_id: str) -> list[DayPhoto]:
    """All photos of a crop by day, the leading one of each day first."""
    uses = unit.photo_uses.all(crop_id=crop_id)
    photos = {p.id: p for p in unit.photos.all(removed=True, id=[u.photo_id for u in uses])} if uses else {}
    return [DayPhoto(u, photos[u.photo_id]) for u in sorted(uses, key=_order)]


def let_lead(log: OpenLogbook, use_id: str) -> Change:
    """Makes a photo the leading one of its day; the others stay behind it."""
    group = new_id()
    with log.unit() as unit:
        use = unit.photo_uses.get(use_id)
        for other in unit.photo_uses.all(crop_id=use.crop_id, day=use.day):
            if other.leads != (other.id == use.id):
                unit.change(group, replace(other, leads=other.id == use.id))
        unit.commit()
    return Change(group, say("Let a photo lead"), (use.id,), frozenset({use.crop_id}))


def move_photo(
    log: OpenLogbook, use_ids: Iterable[str], *, crop_id: str | None = None, day: date | None = None
) -> Change:
    """Puts photos on another crop or day; RecordRefused for a day before day 0 or in the future."""
    group = new_id()
    concerned: set[str] = set()
    with log.unit() as unit:
        moved = [unit.photo_uses.get(id_) for id_ in use_ids]
        for use in moved:
            target = replace(use, crop_id=crop_id or use.crop_id, day=day or use.day, leads=False)
            _check_day(unit, target, log.today())
            concerned |= {use.crop_id, target.crop_id}
            unit.change(group, target)
            _some_lead(unit, group, use.crop_id, use.day)
            _some_lead(unit, group, target.crop_id, target.day)
        unit.commit()
    return Change(group, say("Move a photo"), tuple(u.id for u in moved), frozenset(concerned))


def remove_photo(log: OpenLogbook, use_id: str) -> Change:
    """Takes a photo off its day (into the bin). The original file stays in the logbook."""
    group = new_id()
    with log.unit() as unit:
        use = unit.photo_uses.get(use_id)
        unit.remove(group, use)
        _some_lead(unit, group, use.crop_id, use.day)
        unit.commit()
    return Change(group, say("Remove a photo"), (use_id,), frozenset({use.crop_id}))


def small_picture(log: OpenLogbook, sha256: str) -> bytes | None:
    """The small preview as JPEG bytes, None if it must be made first (see sharp_picture)."""
    return log.previews.read(sha256, PreviewSize.SMALL)


def sharp_picture(log: OpenLogbook, photo: Photo) -> bytes | None:
    """The large preview as JPEG bytes, made again from the original if the cache lost it; None if that is gone."""
    found = log.previews.read(photo.sha256, PreviewSize.LARGE)
    if found is None and _rebuilt(log, photo):
        found = log.previews.read(photo.sha256, PreviewSize.LARGE)
    return found


def small_picture_of(log: OpenLogbook, photo: Photo) -> bytes | None:
    """The small preview, made again from the original if the cache lost it; None if that is gone."""
    found = small_picture(log, photo.sha256)
    if found is None and _rebuilt(log, photo):
        found = small_picture(log, photo.sha256)
    return found


def original_path(log: OpenLogbook, photo: Photo) -> Path:
    """Where the original lies."""
    return log.photo_folder.absolute(photo.path)


def _rebuilt(log: OpenLogbook, photo: Photo) -> bool:
    try:
        log.readers.rebuild_previews(log.photo_folder.absolute(photo.path), photo.sha256)
    except PictureProblem:
        return False
    return True


def _order(use: PhotoUse) -> tuple[date, bool, str, str]:
    return use.day, not use.leads, use.at.isoformat() if use.at else "", use.id


def _some_lead(unit: UnitOfWork, group: str, crop_id: str, day: date) -> None:
    uses = sorted(unit.photo_uses.all(crop_id=crop_id, day=day), key=_order)
    if uses and not any(u.leads for u in uses):
        unit.change(group, replace(uses[0], leads=True))


def _check_day(unit: UnitOfWork, use: PhotoUse, today: date) -> None:
    crop = unit.crops.get(use.crop_id)
    if use.day > today:
        raise RecordRefused([Problem("day", say("This day has not come yet."))])
    if use.day < crop.day_zero:
        sentence = say("This is before day 0 of {crop}, {day}.", crop=crop.name, day=crop.day_zero.isoformat())
        raise RecordRefused([Problem("day", sentence)])
