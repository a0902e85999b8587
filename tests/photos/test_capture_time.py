"""The best witness of when a picture was taken."""

from datetime import UTC, date, datetime, time

import pytest

from growlog.photos.capture_time import ExifStamp, ExifTimes, capture_time
from growlog.records.photo import CaptureTime, DateSource

ORIGINAL = ExifStamp("2026:01:18 18:41:02", "123", "+01:00")
OTHER = ExifStamp("2026:01:20 09:00:00")
MODIFIED = datetime(2026, 2, 1, 7, 30, 5, 999, tzinfo=UTC)


def test_the_cameras_wall_clock_comes_first() -> None:
    found = capture_time(ExifTimes(ORIGINAL, OTHER, OTHER), "2025-05-05.jpg", MODIFIED)
    assert found == CaptureTime(date(2026, 1, 18), time(18, 41, 2), DateSource.EXIF_ORIGINAL, "123", "+01:00")
    assert found.source.sure


def test_an_offset_never_moves_the_wall_clock() -> None:
    late = ExifStamp("2026:01:18 23:59:59", "", "-11:00")
    assert capture_time(ExifTimes(late), "a.jpg", None).day == date(2026, 1, 18)


def test_digitized_comes_before_changed_and_neither_is_sure() -> None:
    found = capture_time(ExifTimes(ExifStamp(), ORIGINAL, OTHER), "2025-05-05.jpg", MODIFIED)
    assert (found.day, found.source) == (date(2026, 1, 18), DateSource.EXIF_OTHER)
    assert not found.source.sure


def test_the_date_of_change_comes_before_the_files_name() -> None:
    found = capture_time(ExifTimes(plain=OTHER), "2025-05-05.jpg", MODIFIED)
    assert (found.day, found.source) == (date(2026, 1, 20), DateSource.EXIF_OTHER)


def test_the_files_name_comes_before_its_time() -> None:
    found = capture_time(ExifTimes(), "plant-a_2019-10-22-11-05.jpg", MODIFIED)
    assert found == CaptureTime(date(2019, 10, 22), time(11, 5), DateSource.FILE_NAME)


def test_the_files_own_time_is_the_last_resort_and_not_sure() -> None:
    found = capture_time(ExifTimes(), "leaf.jpg", MODIFIED)
    assert found == CaptureTime(date(2026, 2, 1), time(7, 30, 5), DateSource.FILE_TIME)
    assert not found.source.sure


@pytest.mark.parametrize("modified", [None, datetime(1970, 1, 1, tzinfo=UTC), datetime(2200, 1, 1, tzinfo=UTC)])
def test_without_a_witness_the_day_is_unknown(modified: datetime | None) -> None:
    assert capture_time(ExifTimes(), "leaf.jpg", modified) == CaptureTime(None, None, DateSource.UNKNOWN)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "                   ",
        "    :  :     :  :  ",  # EXIF 2.32, DateTimeOriginal (from memory): how an unknown date is written
        "0000:00:00 00:00:00",
        "0000:00:00",
        "2026:02:30 10:00:00",
        "2026:13:01 10:00:00",
        "2026:01:18 25:00:00",
        "2026:01:18 10:61:00",
        "1970:01:01 00:00:00",
        "1989:12:31 00:00:00",
        "2101:01:01 00:00:00",
        "18.01.2026",
        "yesterday",
        "２０２６:01:18 10:00:00x",
    ],
)
def test_a_blank_or_impossible_date_is_unknown(text: str) -> None:
    assert capture_time(ExifTimes(ExifStamp(text)), "leaf.jpg", None).day is None


def test_an_impossible_original_leaves_the_word_to_the_next() -> None:
    found = capture_time(ExifTimes(ExifStamp("0000:00:00 00:00:00"), OTHER), "leaf.jpg", None)
    assert found.day == date(2026, 1, 20)


@pytest.mark.parametrize(
    "text, at",
    [
        ("2026:01:18", None),
        ("2026:01:18   :  :  ", None),
        ("2026:01:18 18:41", time(18, 41)),
        ("2026-01-18T18:41:02", time(18, 41, 2)),
        ("2026:01:18 18:41:02+01:00", time(18, 41, 2)),
        ("2026:01:18 18:41:02\0", time(18, 41, 2)),
    ],
)
def test_usual_departures_from_the_standard_are_understood(text: str, at: time | None) -> None:
    found = capture_time(ExifTimes(ExifStamp(text)), "leaf.jpg", None)
    assert (found.day, found.at) == (date(2026, 1, 18), at)


@pytest.mark.parametrize("subsecond, offset", [("12x", "+1:00"), ("-1", "+25:00"), ("1" * 40, "CET")])
def test_a_malformed_fraction_or_offset_is_left_out(subsecond: str, offset: str) -> None:
    found = capture_time(ExifTimes(ExifStamp("2026:01:18 18:41:02", subsecond, offset)), "leaf.jpg", None)
    assert (found.subsecond, found.utc_offset) == ("", "")


def test_a_fraction_without_a_time_is_left_out() -> None:
    found = capture_time(ExifTimes(ExifStamp("2026:01:18", "12", "+01:00")), "leaf.jpg", None)
    assert (found.subsecond, found.utc_offset) == ("", "")
