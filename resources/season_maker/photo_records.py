"""The records of the written photos: what the logbook's own intake would have read from each file."""

from datetime import UTC, datetime, time
from pathlib import Path

from growlog.photos.capture_time import capture_time
from growlog.photos.picture_file import read_facts
from growlog.records.photo import Photo, PhotoUse

from .identity import crop_id, identity
from .photo_plan import PhotoPlan
from .season import Season

FIRST_PICTURE_NUMBER = 412
TAKEN_IN_AT = time(21, 30, tzinfo=UTC)  # copied from the camera on the evening of the day


def original_names(season: Season) -> dict[tuple[str, int], str]:
    """The camera's running numbers, by crop and plant age, in the order in which the photos were taken."""
    taken = sorted((photo for crop in season.crops for photo in crop.photos), key=lambda p: (p.taken_at, p.crop))
    return {(p.crop, p.age): f"IMG_{number:04d}.JPG" for number, p in enumerate(taken, start=FIRST_PICTURE_NUMBER)}


def photo_record(plan: PhotoPlan, folder: Path, path: str, sha256: str, original_name: str) -> Photo:
    """The record of a photo that lies below the folder."""
    facts = read_facts(folder / path)
    captured = capture_time(facts.exif_times, original_name, None)
    return Photo(
        id=identity("photo", plan.crop, plan.age),
        sha256=sha256,
        path=path,
        byte_count=(folder / path).stat().st_size,
        width_px=facts.width_px,
        height_px=facts.height_px,
        media_type=facts.media_type,
        original_name=original_name,
        captured=captured,
        added_at=datetime.combine(plan.taken_at.date(), TAKEN_IN_AT),
    )


def use_record(plan: PhotoPlan, photo: Photo) -> PhotoUse:
    """The photo on its crop's day; each day has one, so it leads."""
    day = photo.captured.day
    if day is None:
        raise ValueError(f"{photo.path} has no day")
    use_id = identity("photo use", plan.crop, plan.age)
    return PhotoUse(use_id, photo.id, crop_id(plan.crop), day, photo.captured.at, leads=True)
