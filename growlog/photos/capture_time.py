"""When a picture was taken, from the best witness: EXIF, then the file's name, then its own time."""

import re
from dataclasses import dataclass
from datetime import date, datetime, time

from growlog.photos.file_name_date import FIRST_YEAR, LAST_YEAR, date_in_file_name, valid_day, valid_time
from growlog.records.photo import CaptureTime, DateSource


@dataclass(frozen=True)
class ExifStamp:
    """One date of an EXIF block as the camera wrote it; "" where it wrote none."""

    text: str = ""  # "2026:01:18 18:41:02"
    subsecond: str = ""  # "123"
    utc_offset: str = ""  # "+01:00"


@dataclass(frozen=True)
class ExifTimes:
    """The three dates EXIF can hold: when taken, when digitized, when the file was changed."""

    original: ExifStamp = ExifStamp()
    digitized: ExifStamp = ExifStamp()
    plain: ExifStamp = ExifStamp()


# EXIF 2.32 (from memory), DateTimeOriginal: "YYYY:MM:DD HH:MM:SS", unknown parts blank. Other separators occur.
_STAMP = re.compile(r"(\d{4})[:\-/.](\d{2})[:\-/.](\d{2})(?:[ T]+(?:(\d{2}):(\d{2})(?::(\d{2}))?.*|[ :]*))?", re.ASCII)
_SUBSECOND = re.compile(r"\d{1,9}", re.ASCII)
_UTC_OFFSET = re.compile(r"[+-](?:0\d|1[0-4]):[0-5]\d", re.ASCII)


def capture_time(exif: ExifTimes, file_name: str, modified: datetime | None) -> CaptureTime:
    """The moment of capture as the camera's wall clock had it, and which witness it came from.

    modified: when the file was last written, in the local time of the wall calendar.
    Blank, zero and impossible dates count as unknown, and so do years outside 1990 to 2100.
    """
    candidates = (
        (exif.original, DateSource.EXIF_ORIGINAL),
        (exif.digitized, DateSource.EXIF_OTHER),
        (exif.plain, DateSource.EXIF_OTHER),
    )
    for stamp, source in candidates:
        if found := _from_stamp(stamp, source):
            return found
    if moment := date_in_file_name(file_name):
        return CaptureTime(moment[0], moment[1], DateSource.FILE_NAME)
    if modified is not None and FIRST_YEAR <= modified.year <= LAST_YEAR:
        written_at = modified.time().replace(microsecond=0)
        return CaptureTime(modified.date(), written_at, DateSource.FILE_TIME)
    return CaptureTime(None, None, DateSource.UNKNOWN)


def _from_stamp(stamp: ExifStamp, source: DateSource) -> CaptureTime | None:
    moment = _moment(stamp.text.strip(" \0"))
    if moment is None:
        return None
    day, at = moment
    if at is None:  # a fraction of an unknown second means nothing
        return CaptureTime(day, None, source)
    return CaptureTime(
        day, at, source, _matching(_SUBSECOND, stamp.subsecond), _matching(_UTC_OFFSET, stamp.utc_offset)
    )


def _moment(text: str) -> tuple[date, time | None] | None:
    found = _STAMP.fullmatch(text)
    if found is None:
        return None
    day = valid_day(int(found[1]), int(found[2]), int(found[3]))
    if day is None or found[4] is None:
        return (day, None) if day else None
    at = valid_time(int(found[4]), int(found[5]), int(found[6] or 0))
    return (day, at) if at else None


def _matching(pattern: re.Pattern[str], text: str) -> str:
    text = text.strip(" \0")
    return text if pattern.fullmatch(text) else ""
