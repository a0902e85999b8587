"""What happened: changes of light and feed, troubles, treatments, days without photos; and what was noted."""

from collections.abc import Iterator, Sequence
from datetime import timedelta
from itertools import pairwise

from growlog.calculations.plant_age import age_on, day_at
from growlog.records.crop import Crop
from growlog.records.display import fixed
from growlog.records.entry import Entry, Feed, LightChange, OwnerKind
from growlog.services.photo_uses import photos_of_crop
from growlog.services.review.crop_figures import CropFigures
from growlog.services.review.model import Happening
from growlog.services.review.wording import joined
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, say_count

PHOTOS = "photos"
_TROUBLES = ("problem", "treatment")
_TOLD = (*_TROUBLES, "potting-on")
_GAP_DAYS = 2  # a single missed day is no story


def happenings(unit: UnitOfWork, crop: CropFigures, *, with_notes: bool) -> tuple[Happening, ...]:
    """All of it in the order of the days."""
    found = [
        *_told(crop, _TOLD, with_notes=with_notes), *_lights(crop), *_mixes(crop), *_losses(crop),
        *_gaps(unit, crop.crop, crop.age),
    ]  # fmt: skip
    return tuple(sorted(found, key=lambda h: h.age))


def troubles(crop: CropFigures, *, with_notes: bool) -> tuple[Happening, ...]:
    """Problems and treatments."""
    return tuple(_told(crop, _TROUBLES, with_notes=with_notes))


def remarks(crop: CropFigures) -> tuple[Happening, ...]:
    """The notes of the crop's own entries, in the order of the days; those of its room and tank are not about it."""
    own = (OwnerKind.CROP, OwnerKind.PLANT)
    return tuple(
        Happening(crop.age_of(e.day), e.day, e.kind, " ".join(e.note.split()))
        for e in crop.entries
        if e.note.strip() and e.owner.kind in own
    )


def _told(crop: CropFigures, kinds: Sequence[str], *, with_notes: bool) -> Iterator[Happening]:
    for entry in crop.entries:
        if entry.kind in kinds:
            note = " ".join(entry.note.split()) if with_notes else ""
            words = joined(entry.detail.summary(), entry.detail.second_line())
            yield Happening(crop.age_of(entry.day), entry.day, entry.kind, "; ".join(t for t in (words, note) if t))


def _lights(crop: CropFigures) -> Iterator[Happening]:
    before = None
    stated = {e.day for e in crop.entries if isinstance(e.detail, LightChange)}
    for day in crop.light:
        now = day.setting.photoperiod_h, day.setting.dimming_percent, day.setting.lamp_ids
        over = day.day == crop.crop.cleared_on  # what is set on that day is for the crops that stay or come
        if now != before and not over and (before is not None or day.day in stated):
            hours, dimmed = fixed(now[0], 0 if now[0] == int(now[0]) else 1, "h"), now[1]
            lamps = "" if dimmed is None else say("lamps at {percent}", percent=fixed(dimmed, 0, "%"))
            text = joined(say("light {hours} a day", hours=hours), lamps)
            yield Happening(crop.age_of(day.day), day.day, "light", text)
        before = now


def _mixes(crop: CropFigures) -> Iterator[Happening]:
    before: tuple[str, float] | None = None
    for entry in crop.entries:
        now = _mix_of(crop, entry)
        if now is None or now == before:
            continue
        strength = "" if now[1] == 100 else say("at {percent}", percent=fixed(now[1], 0, "%"))
        text = say("feed from here: {mix}", mix=" ".join(t for t in (now[0], strength) if t))
        yield Happening(crop.age_of(entry.day), entry.day, "feed", text)
        before = now


def _mix_of(crop: CropFigures, entry: Entry) -> tuple[str, float] | None:
    detail = entry.detail
    if not isinstance(detail, Feed) or detail.mix_id not in crop.mixes:
        return None
    return crop.mixes[detail.mix_id or ""].name, 100.0 if detail.strength_percent is None else detail.strength_percent


def _losses(crop: CropFigures) -> Iterator[Happening]:
    for plant in crop.plants:
        if plant.lost_on is not None:
            text = joined(say("plant {label} lost", label=plant.label), plant.lost_cause)
            yield Happening(crop.age_of(plant.lost_on), plant.lost_on, "loss", text)


def _gaps(unit: UnitOfWork, crop: Crop, last_age: int) -> Iterator[Happening]:
    """Days without photos, where photos are usually taken every day."""
    days = sorted({p.use.day for p in photos_of_crop(unit, crop.id) if age_on(crop.day_zero, p.use.day) <= last_age})
    if len(days) < 5 or (days[-1] - days[0]).days > 1.5 * len(days):
        return
    for before, after in pairwise(days):
        missed = (after - before).days - 1
        if missed >= _GAP_DAYS:
            first = before + timedelta(days=1)
            text = say_count("{n} day without photos", "{n} days without photos", missed)
            yield Happening(age_on(crop.day_zero, first), day_at(first, 0), PHOTOS, text)
