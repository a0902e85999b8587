"""Intake items that were never read from a disk."""

from datetime import date, time
from pathlib import Path

from growlog.photos.capture_time import ExifTimes
from growlog.photos.picture_file import PictureFacts
from growlog.photos.survey import SurveyedPicture
from growlog.records.photo import CaptureTime, DateSource
from growlog.services.photo_intake import IntakeItem, Outcome

DAY = date(2026, 1, 18)
AT = time(18, 41)


def item(
    name: str,
    day: date | None = DAY,
    source: DateSource = DateSource.EXIF_ORIGINAL,
    outcome: Outcome = Outcome.NEW,
    reason: str = "",
    crop_id: str | None = "crop",
    folder: Path = Path("phone"),
) -> IntakeItem:
    """A picture of its own content, taken at 18:41."""
    capture = CaptureTime(day, AT, source)
    picture = SurveyedPicture(folder / name, f"hash of {folder / name}", 1000, _facts(), capture)
    return IntakeItem(folder / name, picture, crop_id, day, AT, source, outcome, reason)


def refused(name: str) -> IntakeItem:
    """A file that is no picture."""
    sentence = f"{name} is not a picture."
    return IntakeItem(Path("phone") / name, None, None, None, None, DateSource.UNKNOWN, Outcome.REFUSED, sentence)


def _facts() -> PictureFacts:
    return PictureFacts(640, 480, "image/jpeg", 1, ExifTimes())
