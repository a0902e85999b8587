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
from growlog.storage.problems import RecordMissing
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, say_count, show_day


@dataclass(frozen=True)
class DayPhoto:
    """A photo as a day shows it."""

    use: PhotoUse
    photo: Photo


def photos_of_crop(unit: UnitOfWork, crop_id: str, until: date | None = None) -> list[DayPhoto]:
    """The photos of a crop by day, up to a day where one is said; the leading one of each day first."""
    uses = [u for u in unit.photo_uses.all(crop_id=crop_id) if until is None or u.day <= until]
    photos = {p.id: p for p in unit.photos.all(removed=True, id=[u.photo_id for u in uses])} if uses else {}
    return [DayPhoto(u, photos[u.photo_id]) for u in sorted(uses, key=_order)]


def let_lead(log: OpenLogbook, use_id: str) -> Change:
    """Makes a photo the leading one of its day; the others stay behind it."""
    group = new_id()
    with log.unit() as unit:
        use = _shown(unit, use_id)
        for other in unit.photo_uses.all(crop_id=use.crop_id, day=use.day):
            if other.leads != (other.id == use.id):
                unit.change(group, replace(other, leads=other.id == use.id))
        unit.commit()
    return Change(group, say("Let a photo lead"), (use.id,), frozenset({use.crop_id}))


def move_photo(
    log: OpenLogbook, use_ids: Iterable[str], *, crop_id: str | None = None, day: date | None = None
) -> Change:
    """Puts photos on another crop or day; RecordRefused for a day before day 0 or in the future, or for a photo
    that the other crop has already."""
    group = new_id()
    touched: set[tuple[str, date]] = set()
    with log.unit() as unit:
        uses = [_shown(unit, id_) for id_ in use_ids]
        for use in uses:
            target = replace(use, crop_id=crop_id or use.crop_id, day=day or use.day, leads=False)
            touched |= {(use.crop_id, use.day), (target.crop_id, target.day)}
            if (target.crop_id, target.day) == (use.crop_id, use.day):
                continue
            _check_day(unit, target, log.today())
            _check_not_there(unit, target)
            unit.change(group, target)
        for touched_crop, touched_day in sorted(touched):
            one_leads(unit, group, touched_crop, touched_day)
        unit.commit()
    title = say_count("Move {n} photo", "Move {n} photos", len(uses))
    return Change(group, title, tuple(u.id for u in uses), frozenset(crop for crop, _ in touched))


def remove_photo(log: OpenLogbook, use_id: str) -> Change:
    """Takes a photo off its day (into the bin). The original file stays in the logbook."""
    group = new_id()
    with log.unit() as unit:
        use = _shown(unit, use_id)
        unit.remove(group, use)
        one_leads(unit, group, use.crop_id, use.day)
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


def small_picture_made(log: OpenLogbook, sha256: str) -> bytes | None:
    """The small preview of a photo of the logbook by its hash, made again if need be; not for the window's thread."""
    found = small_picture(log, sha256)
    if found is not None:
        return found
    with log.unit() as unit:
        photos = unit.photos.all(removed=True, sha256=sha256)
    return small_picture_of(log, photos[0]) if photos else None


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


def one_leads(unit: UnitOfWork, group: str, crop_id: str, day: date) -> None:
    """Sees to it that exactly one photo of a crop's day leads, if the day has any: the earliest of those that do."""
    uses = sorted(unit.photo_uses.all(crop_id=crop_id, day=day), key=_order)
    for use in uses:
        if use.leads != (use.id == uses[0].id):
            unit.change(group, replace(use, leads=not use.leads))


def _shown(unit: UnitOfWork, use_id: str) -> PhotoUse:
    use = unit.photo_uses.get(use_id)
    if use.removed_at is not None:
        raise RecordMissing(say("That photo was taken off its day in the meantime."))
    return use


def _check_not_there(unit: UnitOfWork, target: PhotoUse) -> None:
    there = [u for u in unit.photo_uses.all(photo_id=target.photo_id, crop_id=target.crop_id) if u.id != target.id]
    if there:
        sentence = say("This photo is already there, on {day}.", day=show_day(there[0].day))
        raise RecordRefused([Problem("crop_id", sentence)])


def _check_day(unit: UnitOfWork, use: PhotoUse, today: date) -> None:
    crop = unit.crops.get(use.crop_id)
    if use.day > today:
        raise RecordRefused([Problem("day", say("This day has not come yet."))])
    if use.day < crop.day_zero:
        sentence = say("This is before day 0 of {crop}, {day}.", crop=crop.name, day=show_day(crop.day_zero))
        raise RecordRefused([Problem("day", sentence)])
