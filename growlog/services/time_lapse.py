"""A time-lapse of a crop: chosen days, size and speed; missing days held; written whole or not at all."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from growlog.calculations.plant_age import age_on, day_at
from growlog.calculations.yield_curve import CurvePoint, cumulative_yield
from growlog.photos.time_lapse import FRAMES_A_SECOND, FilmDay, FilmShape, NoEncoder, film_library, write_film
from growlog.records.crop import Crop
from growlog.records.display import weight
from growlog.records.problems import Problem, refuse
from growlog.services.entries import own_entries
from growlog.services.open_logbook import LogbookProblem, OpenLogbook
from growlog.services.photo_uses import DayPhoto, original_path, photos_of_crop, sharp_picture
from growlog.services.picks import pick_points
from growlog.sharing.own_files import resources_folder
from growlog.sharing.whole_file import made_whole
from growlog.words import say, say_count, show_day

USUAL_LONG_SIDE_PX, USUAL_SHORT_SIDE_PX = 1280, 960

Progress = Callable[[int, int], None]
Cancelled = Callable[[], bool]


@dataclass(frozen=True)
class TimeLapseChoice:
    """What the film shows and how.

    Ages None: from the first photo to the last; at most from day 0 to clearing. size_px: None by the photos' shape.
    every_days: 1 shows each day. days_per_second: speed. fade: the part of a day's time in which its picture fades in,
    0 to 0.9. labels: day and date. curve: the yield along the lower edge.
    """

    first_age: int | None = None
    last_age: int | None = None
    every_days: int = 1
    size_px: tuple[int, int] | None = None
    days_per_second: float = 6.0
    fade: float = 0.4
    labels: bool = True
    curve: bool = True

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = []
        if self.first_age is not None and self.last_age is not None and self.last_age < self.first_age:
            found.append(Problem("last_age", say("It ends before it begins.")))
        if self.size_px is not None and not all(64 <= side <= 3840 for side in self.size_px):
            found.append(Problem("size_px", say("The sides of the film are 64 to 3840 pixels.")))
        if not 0.2 <= self.days_per_second <= FRAMES_A_SECOND:
            sentence = say("The speed is 0.2 to {most} days a second.", most=FRAMES_A_SECOND)
            found.append(Problem("days_per_second", sentence))
        if not 0 <= self.fade <= 0.9:
            found.append(Problem("fade", say("The fade is 0 to 0.9 of a day's time.")))
        if not 1 <= self.every_days <= 60:
            found.append(Problem("every_days", say("Every 1 to 60 days.")))
        return found


@dataclass(frozen=True)
class TimeLapsePlan:
    """What the film will be, or was. days_held: days of it without a photo of their own. missing: originals gone."""

    days: int
    days_held: int
    missing: int
    frames: int
    seconds: float
    width_px: int
    height_px: int


@dataclass(frozen=True)
class _Script:
    """A film before its pictures are made."""

    crop: Crop
    ages: Sequence[int]
    photos: dict[int, DayPhoto]
    curve: Sequence[CurvePoint]
    shape: FilmShape
    missing: frozenset[int]

    def plan(self) -> TimeLapsePlan:
        """It in figures."""
        frames = self.shape.frame_count(len(self.ages))
        held = sum(age not in self.photos or age in self.missing for age in self.ages)
        return TimeLapsePlan(
            len(self.ages), held, len(self.missing & set(self.ages)), frames, frames / FRAMES_A_SECOND,
            self.shape.width_px, self.shape.height_px,
        )  # fmt: skip


class _Stopped(Exception):
    """The caller lost interest."""


def time_lapse_plan(log: OpenLogbook, crop_id: str, choice: TimeLapseChoice | None = None) -> TimeLapsePlan:
    """What the film would be; RecordRefused for a choice that cannot be, LogbookProblem for a crop without photos."""
    return _script(log, crop_id, choice or TimeLapseChoice()).plan()


def write_time_lapse(
    log: OpenLogbook,
    crop_id: str,
    path: Path,
    choice: TimeLapseChoice | None = None,
    on_progress: Progress | None = None,
    cancelled: Cancelled | None = None,
) -> TimeLapsePlan | None:
    """Writes the film as MP4 with H.264; None where cancelled, and then nothing is left. Writes over a file that is
    there: ask before. LogbookProblem for a crop without photos; OSError where the disk does not take it."""
    if path.suffix.casefold() != ".mp4":
        raise LogbookProblem(say("{file}: the name must end in .mp4.", file=path.name))
    chosen = choice or TimeLapseChoice()
    script = _script(log, crop_id, chosen)
    plan = script.plan()

    def on_frame(written: int) -> None:
        if cancelled is not None and cancelled():
            raise _Stopped
        if on_progress is not None:
            on_progress(written, plan.frames)

    try:
        with made_whole(path) as half:
            font = resources_folder() / "font"
            write_film(half, _film_days(log, script, chosen), plan.days, script.shape, font, on_frame)
    except _Stopped:
        return None
    except NoEncoder as error:
        raise LogbookProblem(say("The film cannot be written: this computer's FFmpeg has no H.264.")) from error
    return plan


def load_tools() -> None:
    """Imports what films are made with; to be called before they are made on a thread of a window."""
    film_library()


def held_words(plan: TimeLapsePlan) -> str:
    """What to say of days without a photo, "" where each has one."""
    bare = plan.days_held - plan.missing
    held = say_count("{n} day without a photo is held", "{n} days without a photo are held", bare)
    gone = say_count(
        "{n} original is missing, its day is held", "{n} originals are missing, their days are held", plan.missing
    )
    return "; ".join(t for t in (held if bare else "", gone if plan.missing else "") if t)


def _script(log: OpenLogbook, crop_id: str, choice: TimeLapseChoice) -> _Script:
    refuse(choice.problems())
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        photos = _leaders(photos_of_crop(unit, crop_id), crop)
        entries = [e for e in own_entries(unit, [crop_id])[crop_id] if e.day <= log.today()]
    first = min(photos, default=0) if choice.first_age is None else max(0, choice.first_age)
    last = max(photos, default=0) if choice.last_age is None else min(choice.last_age, _last_age(crop, log.today()))
    shown = {age: p for age, p in photos.items() if age <= last}
    if not any(first <= age for age in shown):
        raise LogbookProblem(say("{crop} has no photos of these days.", crop=crop.name))
    ages = range(first, last + 1, choice.every_days)
    missing = frozenset(a for a in ages if a in shown and not original_path(log, shown[a].photo).is_file())
    if all(a not in shown or a in missing for a in ages):
        raise LogbookProblem(say("{crop} has no photos of these days.", crop=crop.name))
    return _Script(crop, ages, shown, cumulative_yield(pick_points(crop, entries)), _shape(choice, shown), missing)


def _last_age(crop: Crop, today: date) -> int:
    """Past it there is nothing to hold a picture for."""
    return age_on(crop.day_zero, min(today, crop.cleared_on or today))


def _leaders(photos: Sequence[DayPhoto], crop: Crop) -> dict[int, DayPhoto]:
    found: dict[int, DayPhoto] = {}
    for shown in photos:
        found.setdefault(age_on(crop.day_zero, shown.use.day), shown)
    return found


def _shape(choice: TimeLapseChoice, photos: dict[int, DayPhoto]) -> FilmShape:
    width, height = choice.size_px or _usual_size(photos)
    each = max(1, round(FRAMES_A_SECOND / choice.days_per_second))
    return FilmShape(width // 2 * 2, height // 2 * 2, each, min(each - 1, round(each * choice.fade)))


def _usual_size(photos: dict[int, DayPhoto]) -> tuple[int, int]:
    tall = sum(p.photo.height_px > p.photo.width_px for p in photos.values())
    if 2 * tall >= len(photos):
        return USUAL_SHORT_SIDE_PX, USUAL_LONG_SIDE_PX
    return USUAL_LONG_SIDE_PX, USUAL_SHORT_SIDE_PX


def _film_days(log: OpenLogbook, script: _Script, choice: TimeLapseChoice) -> Iterator[FilmDay]:
    by_weight = bool(script.curve) and script.curve[-1].weight_g > 0
    highest = _amount(script.curve, script.ages[-1], by_weight=by_weight)
    for age in script.ages:
        so_far = _amount(script.curve, age, by_weight=by_weight)
        yield FilmDay(
            jpeg=_jpeg(log, script, age),
            title=say("Day {age}", age=age) if choice.labels else "",
            below=show_day(day_at(script.crop.day_zero, age)) if choice.labels else "",
            amount=_words(so_far, by_weight=by_weight) if choice.curve and so_far else "",
            part=so_far / highest if choice.curve and highest else None,
        )


def _jpeg(log: OpenLogbook, script: _Script, age: int) -> bytes | None:
    photo = script.photos.get(age)
    return None if photo is None or age in script.missing else sharp_picture(log, photo.photo)


def _amount(curve: Sequence[CurvePoint], age: int, *, by_weight: bool) -> float:
    last = next((p for p in reversed(curve) if p.age <= age), None)
    if last is None:
        return 0.0
    return last.weight_g if by_weight else float(last.fruit_count)


def _words(amount: float, *, by_weight: bool) -> str:
    return weight(amount) if by_weight else say_count("{n} fruit", "{n} fruit", round(amount))
