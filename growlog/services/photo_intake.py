"""Photo intake: look at files, say what will happen to each, take them in."""

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date, datetime, time, timedelta
from enum import StrEnum
from pathlib import Path

from growlog.photos.picture_problem import PictureProblem
from growlog.photos.picture_search import expand
from growlog.photos.survey import SurveyedPicture
from growlog.records.change import Change
from growlog.records.crop import Crop
from growlog.records.file_names import keepable
from growlog.records.photo import CaptureTime, DateSource, Photo, PhotoUse
from growlog.services.open_logbook import LogbookNotWritable, OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, say_count, show_day

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]


class Outcome(StrEnum):
    """What will happen, or happened, to a file."""

    NEW = "new"  # goes in
    QUESTIONED = "questioned"  # goes in unless the grower says no: its day is doubtful
    DUPLICATE = "duplicate"  # the same bytes are there already, on this crop and day
    WAITING = "waiting"  # wants a crop or a date
    REFUSED = "refused"  # is no picture, or could not be read or written


@dataclass(frozen=True)
class IntakeItem:
    """One file in the intake tray. sha256 finds its small picture. reason: one sentence, "" if all is plain."""

    path: Path
    picture: SurveyedPicture | None
    crop_id: str | None
    day: date | None
    at: time | None
    source: DateSource
    outcome: Outcome
    reason: str = ""

    @property
    def sha256(self) -> str | None:
        """The content's hash, None for what is no picture."""
        return None if self.picture is None else self.picture.sha256

    @property
    def goes_in(self) -> bool:
        """Whether confirming writes it."""
        return self.outcome in (Outcome.NEW, Outcome.QUESTIONED)


def look_at(
    log: OpenLogbook,
    paths: Iterable[Path],
    crop_id: str | None,
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> Iterator[IntakeItem]:
    """An item for each file, in order, as it is read. Writes nothing but previews."""
    found = expand(list(paths))
    for path, problem in found.problems:
        yield _refused(path, problem)
    for path, result in log.readers.survey(found.files, on_progress, cancelled):
        yield _refused(path, result) if isinstance(result, PictureProblem) else _surveyed(result, crop_id)


def judge(log: OpenLogbook, items: list[IntakeItem]) -> list[IntakeItem]:
    """The items with what will happen to each now: duplicates in the logbook and in the tray, doubtful days."""
    with log.unit() as unit:
        crops = {c.id: c for c in unit.crops.all()}
        hashes = [i.sha256 for i in items if i.sha256]
        photos = {p.sha256: p.id for p in unit.photos.all(removed=True, sha256=hashes)} if hashes else {}
        uses = {(u.photo_id, u.crop_id): u for u in unit.photo_uses.all(photo_id=list(photos.values()))}
    judged, in_tray = [], set[tuple[str, str | None]]()
    for item in items:
        key = (item.sha256 or "", item.crop_id)
        use = uses.get((photos.get(item.sha256 or "", ""), item.crop_id or ""))
        judged.append(_judged(item, crops, use, key in in_tray, log.today()))
        if item.picture is not None:
            in_tray.add(key)
    return judged


def with_day(item: IntakeItem, day: date, at: time | None = None) -> IntakeItem:
    """The item with a day that the grower typed."""
    return replace(item, day=day, at=at or item.at, source=DateSource.TYPED)


def with_crop(item: IntakeItem, crop_id: str) -> IntakeItem:
    """The item on another crop."""
    return replace(item, crop_id=crop_id)


def shifted(item: IntakeItem, by: timedelta) -> IntakeItem:
    """The item with a wrong camera clock put right by an interval; what has no time moves by whole days."""
    if item.day is None:
        return item
    moment = datetime.combine(item.day, item.at or time(12)) + by
    return replace(item, day=moment.date(), at=moment.time() if item.at else None, source=DateSource.TYPED)


def take_in(
    log: OpenLogbook,
    items: list[IntakeItem],
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> tuple[list[IntakeItem], Change | None]:
    """Copies each file that goes in, then writes its rows; one undoable change for all of them.

    Returns the items with what happened to each, and the change (None if nothing went in). A file that cannot
    be copied is refused with its sentence, the others go in; once cancelled, what was copied by then goes in.
    What is in the logbook by now, or lost its crop, stays out. LogbookNotWritable before anything is copied.
    """
    if not log.writable:
        raise LogbookNotWritable(say("This logbook is open for reading only, so nothing can be written to it."))
    group = new_id()
    done: list[IntakeItem] = []
    rows: list[tuple[Photo, PhotoUse]] = []
    judged = iter(judge(log, [i for i in items if i.goes_in]))
    now = [next(judged) if i.goes_in else i for i in items]
    going = [i for i in now if i.goes_in]
    looked_at = 0
    with log.unit() as unit:
        crops = {c.id: c for c in unit.crops.all()}
        known = _known_photos(unit, going)
        for item in now:
            if not item.goes_in or (cancelled is not None and cancelled()):
                done.append(item)
                continue
            result, pair = _copied(log, item, crops[item.crop_id or ""], known)
            done.append(result)
            rows += [pair] if pair else []
            looked_at += 1
            if on_progress is not None:
                on_progress(looked_at, len(going))
        if not rows:
            return done, None
        _write(unit, group, rows)
        unit.commit()
    title = say_count("Add {n} photo", "Add {n} photos", len(rows))
    return done, Change(group, title, tuple(use.id for _, use in rows), frozenset(use.crop_id for _, use in rows))


def _surveyed(picture: SurveyedPicture, crop_id: str | None) -> IntakeItem:
    capture = picture.capture
    return IntakeItem(picture.path, picture, crop_id, capture.day, capture.at, capture.source, Outcome.NEW)


def _refused(path: Path, problem: PictureProblem) -> IntakeItem:
    sentence = problem.sentence(path.name)
    return IntakeItem(path, None, None, None, None, DateSource.UNKNOWN, Outcome.REFUSED, sentence)


def _judged(item: IntakeItem, crops: dict[str, Crop], use: PhotoUse | None, twice: bool, today: date) -> IntakeItem:
    if item.picture is None:
        return item
    if item.crop_id is None or item.crop_id not in crops:
        return replace(item, outcome=Outcome.WAITING, reason=say("Choose the crop it shows."))
    if item.day is None:
        return replace(item, outcome=Outcome.WAITING, reason=say("No date was found in it: type the day."))
    if use is not None:
        sentence = say("This photo is already there, on {day}.", day=show_day(use.day))
        return replace(item, outcome=Outcome.DUPLICATE, reason=sentence)
    if twice:
        return replace(item, outcome=Outcome.DUPLICATE, reason=say("The same picture is in the tray already."))
    doubt = _doubt(item, crops[item.crop_id], today)
    return replace(item, outcome=Outcome.QUESTIONED if doubt else Outcome.NEW, reason=doubt)


def _doubt(item: IntakeItem, crop: Crop, today: date) -> str:
    day = item.day
    if day is None:
        return ""
    if day > today:
        return say("This day has not come yet: is the camera's clock right?")
    if day < crop.day_zero:
        return say("This is before day 0 of {crop}: is it the right crop and day?", crop=crop.name)
    if crop.cleared_on is not None and day > crop.cleared_on:
        return say("{crop} was cleared before this day: is it the right crop and day?", crop=crop.name)
    if not item.source.sure:
        return (
            say("The day is the file's own time, which may be the day it was copied.")
            if (item.source is DateSource.FILE_TIME)
            else ""
        )
    return ""


def _known_photos(unit: UnitOfWork, going: list[IntakeItem]) -> dict[str, Photo]:
    hashes = [i.sha256 for i in going if i.sha256]
    return {p.sha256: p for p in unit.photos.all(removed=True, sha256=hashes)} if hashes else {}


def _copied(
    log: OpenLogbook, item: IntakeItem, crop: Crop, known: dict[str, Photo]
) -> tuple[IntakeItem, tuple[Photo, PhotoUse] | None]:
    picture, day = item.picture, item.day
    if picture is None or day is None:
        return item, None
    capture = replace(picture.capture, day=day, at=item.at, source=item.source)
    photo = known.get(picture.sha256)
    if photo is None:
        try:
            path = log.photo_folder.take_in(item.path, crop.name, capture, picture.sha256, day)
        except PictureProblem as problem:
            return replace(item, outcome=Outcome.REFUSED, reason=problem.sentence(item.path.name)), None
        photo = _photo(log, picture, capture, path)
        known[picture.sha256] = photo
    return item, (photo, PhotoUse(new_id(), photo.id, crop.id, day, item.at))


def _photo(log: OpenLogbook, picture: SurveyedPicture, capture: CaptureTime, path: str) -> Photo:
    return Photo(
        id=new_id(),
        sha256=picture.sha256,
        path=path,
        byte_count=picture.byte_count,
        width_px=picture.facts.width_px,
        height_px=picture.facts.height_px,
        media_type=picture.facts.media_type,
        original_name=keepable(picture.path.name),
        captured=capture,
        added_at=log.clock.now(),
    )


def _write(unit: UnitOfWork, group: str, rows: list[tuple[Photo, PhotoUse]]) -> None:
    crop_ids = {use.crop_id for _, use in rows}
    led = {(u.crop_id, u.day) for u in unit.photo_uses.all(crop_id=list(crop_ids)) if u.leads}
    new_photos: dict[str, Photo] = {}
    uses = []
    for photo, use in sorted(rows, key=lambda r: (r[1].day, r[1].at is None, r[1].at or time.min)):
        stored = unit.photos.find(photo.id)
        if stored is None:
            new_photos[photo.id] = photo
        elif stored.removed_at is not None:
            unit.restore(group, stored)
        leads = (use.crop_id, use.day) not in led
        led.add((use.crop_id, use.day))
        uses.append(replace(use, leads=leads))
    unit.add(group, *new_photos.values())
    unit.add(group, *uses)
