"""Photos: the file as it came, and the uses of it (which crop, which day, whether it leads)."""

from dataclasses import dataclass
from datetime import date, datetime, time
from enum import StrEnum


class DateSource(StrEnum):
    """Where a photo's day came from, best first."""

    EXIF_ORIGINAL = "exif-original"  # EXIF DateTimeOriginal: the camera's wall clock
    EXIF_OTHER = "exif-other"  # EXIF DateTimeDigitized or DateTime
    FILE_NAME = "file-name"  # a date in the file's name
    FILE_TIME = "file-time"  # when the file was last written: often the day of copying
    TYPED = "typed"  # set by the grower
    UNKNOWN = "unknown"

    @property
    def sure(self) -> bool:
        """Whether the day may be taken without a second look."""
        return self in (DateSource.EXIF_ORIGINAL, DateSource.FILE_NAME, DateSource.TYPED)


@dataclass(frozen=True)
class CaptureTime:
    """When a picture was taken, as far as the file tells.

    day, at: the wall clock of the camera. subsecond: the digits as the camera wrote them ("" if none).
    utc_offset: as EXIF has it ("+01:00"), "" where the camera kept none.
    """

    day: date | None
    at: time | None
    source: DateSource
    subsecond: str = ""
    utc_offset: str = ""


@dataclass(frozen=True)
class Photo:
    """An original picture in the logbook's photo folder, known by its content."""

    id: str
    sha256: str
    path: str  # relative to the logbook, forward slashes, never renamed
    byte_count: int
    width_px: int  # upright, after the orientation is applied
    height_px: int
    media_type: str
    original_name: str
    captured: CaptureTime
    added_at: datetime  # UTC
    version: int = 1
    removed_at: datetime | None = None


@dataclass(frozen=True)
class PhotoUse:
    """A photo on a crop's day. One photo may serve two crops; one use a day leads."""

    id: str
    photo_id: str
    crop_id: str
    day: date
    at: time | None = None
    leads: bool = False
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None
