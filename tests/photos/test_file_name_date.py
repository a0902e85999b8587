"""Dates in file names: the patterns in use, and the numbers that only look like dates."""

from datetime import date, datetime, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.photos.file_name_date import date_in_file_name

DAY = date(2026, 1, 18)
moments = st.datetimes(min_value=datetime(1990, 1, 1), max_value=datetime(2100, 12, 31, 23, 59, 59))  # noqa: DTZ001


@pytest.mark.parametrize(
    "name, at",
    [
        ("IMG_20260118_184102.jpg", time(18, 41, 2)),
        ("20260118_184102.jpg", time(18, 41, 2)),
        ("20260118_184102(1).jpg", time(18, 41, 2)),
        ("20260118_184102_HDR.jpg", time(18, 41, 2)),
        ("PXL_20260118_184102123.jpg", time(18, 41, 2)),
        ("PXL_20260118_184102123.PORTRAIT.jpg", time(18, 41, 2)),
        ("20260118184102.jpg", time(18, 41, 2)),
        ("20260118184102123.jpg", time(18, 41, 2)),
        ("202601181841.jpg", time(18, 41)),
        ("20260118T184102Z.jpg", time(18, 41, 2)),
        ("2026-01-18-18-41.jpg", time(18, 41)),
        ("2026-01-18_18-41-02.jpg", time(18, 41, 2)),
        ("2026-01-18 18.41.02.jpg", time(18, 41, 2)),
        ("2026-01-18T18:41:02.jpg", time(18, 41, 2)),
        ("2026_01_18 18h41m02.jpg", time(18, 41, 2)),
        ("Picture 2026-01-18 at 18.41.02.png", time(18, 41, 2)),
        ("Picture 2026-01-18 at 6.41.02 PM.png", time(18, 41, 2)),
        ("Picture 2026-01-18 at 12.41.02\u202fAM.png", time(0, 41, 2)),
        ("plant-a_2026-01-18-18-41.jpg", time(18, 41)),
        ("2026-01-18_184102_3fa9c1d2.jpg", time(18, 41, 2)),
        ("row 3 2026.01.18.jpg", None),
        ("2026-01-18.jpg", None),
        ("2026-01-18 (2).jpg", None),
        ("20260118.jpg", None),
        ("IMG-20260118-WA0007.jpg", None),
        ("IMG_20260118_0007.jpg", None),  # a counter, not seven minutes past midnight
        ("2026-01-18_3fa9c1d2.jpg", None),
        ("2026-01-18_184102ab.jpg", None),  # digits of a hash
        ("2026-01-18_25-00.jpg", None),
    ],
)
def test_the_usual_patterns_are_understood(name: str, at: time | None) -> None:
    assert date_in_file_name(name) == (DAY, at)


@pytest.mark.parametrize(
    "name",
    [
        "leaf.jpg",
        "IMG_0042.jpg",
        "DSC01234.jpg",
        "20261399.jpg",
        "20260230.jpg",
        "2026-02-30.jpg",
        "19891231.jpg",
        "21010101.jpg",
        "2026-01_18.jpg",
        "18-01-2026.jpg",
        "1768761662123.jpg",  # milliseconds since 1970
        "1768761662.jpg",
        "120260118.jpg",
        "20260118256199.jpg",
        "3fa9c1d2e20260118.jpg.tmp1"[:10],
        "",
    ],
)
def test_a_number_that_is_no_date_is_not_taken_for_one(name: str) -> None:
    assert date_in_file_name(name) is None


def test_a_date_with_a_time_wins_over_a_bare_one() -> None:
    name = "sown 2025-10-01 seen 2026-01-18 18.41.02.jpg"
    assert date_in_file_name(name) == (DAY, time(18, 41, 2))


def test_of_two_bare_dates_the_first_counts() -> None:
    assert date_in_file_name("2026-01-18 copied 2026-02-01.jpg") == (DAY, None)


@given(
    moment=moments, pattern=st.sampled_from(["%Y%m%d_%H%M%S", "%Y-%m-%d %H.%M.%S", "%Y%m%d%H%M%S", "%Y-%m-%d-%H-%M-%S"])
)
def test_every_moment_written_in_a_pattern_is_read_back(moment: datetime, pattern: str) -> None:
    moment = moment.replace(microsecond=0)
    assert date_in_file_name(f"leaf_{moment.strftime(pattern)}.jpg") == (moment.date(), moment.time())


@given(st.text(max_size=60))
def test_any_name_gives_a_valid_date_or_none(name: str) -> None:
    found = date_in_file_name(name)
    assert found is None or 1990 <= found[0].year <= 2100


@given(st.text(alphabet="0123456789-_ .", max_size=24))
def test_any_run_of_digits_gives_a_valid_date_or_none(name: str) -> None:
    found = date_in_file_name(name)
    assert found is None or f"{found[0].year:04}" in name
