"""Photos for tests that need their rows only: no file, no decoding."""

from datetime import date, time

from growlog.records.crop import Crop
from growlog.records.photo import CaptureTime, DateSource, Photo, PhotoUse
from growlog.services.open_logbook import OpenLogbook, new_id


def photo_on(log: OpenLogbook, crop: Crop, day: date, *, at: time | None = None, leads: bool = False) -> PhotoUse:
    """A written photo on a crop's day."""
    photo = _photo(log, day, at)
    use = PhotoUse(new_id(), photo.id, crop.id, day, at, leads)
    with log.unit() as unit:
        unit.add(new_id(), photo, use)
        unit.commit()
    return use


def _photo(log: OpenLogbook, day: date, at: time | None) -> Photo:
    id_ = new_id()
    sha256 = (id_.replace("-", "") * 2)[:64]
    return Photo(
        id=id_,
        sha256=sha256,
        path=f"photos/crop/{day}_{sha256}.jpg",
        byte_count=1000,
        width_px=64,
        height_px=48,
        media_type="image/jpeg",
        original_name="leaf.jpg",
        captured=CaptureTime(day, at, DateSource.EXIF_ORIGINAL),
        added_at=log.clock.now(),
    )


def leaders(log: OpenLogbook) -> dict[tuple[str, date], list[str]]:
    """The leading photos of every crop's day that has photos."""
    with log.unit() as unit:
        found: dict[tuple[str, date], list[str]] = {}
        for use in unit.photo_uses.all():
            found.setdefault((use.crop_id, use.day), []).extend([use.id] if use.leads else [])
    return found
