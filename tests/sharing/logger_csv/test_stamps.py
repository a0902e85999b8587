"""Time stamps as loggers write them."""

from datetime import UTC, datetime

import pytest

from growlog.sharing.logger_csv.stamps import StampNotRead, StampReader

NOON = int(datetime(2026, 3, 7, 12, 30, tzinfo=UTC).timestamp())


@pytest.mark.parametrize(
    "text",
    ["2026-03-07 12:30:00", "2026-03-07T12:30", "07.03.2026 12:30", "7/3/2026 12:30:00", "07-03-2026, 12:30",
     "2026/03/07 12:30", "7/3/26 12:30 pm", "07.03.2026 12.30", "2026-03-07 12:30:00.000"],
)  # fmt: skip
def test_stamps_of_the_wall_clock_are_read(text: str) -> None:
    assert StampReader("dmy").read(text) == (NOON, False)


@pytest.mark.parametrize(
    "text",
    ["2026-03-07T12:30:00Z", "2026-03-07T13:30:00+01:00", "2026-03-07 07:30:00-05:00", "07.03.2026 13:30 +0100",
     str(NOON), str(NOON * 1000)],
)  # fmt: skip
def test_stamps_with_an_offset_are_utc(text: str) -> None:
    assert StampReader("dmy").read(text) == (NOON, True)


def test_the_order_of_day_and_month_shows_itself() -> None:
    reader = StampReader("dmy")
    reader.read("3/7/2026 12:30")
    assert reader.order_shown == ""
    reader.read("13/7/2026 12:30")
    assert reader.order_shown == "dmy"
    assert StampReader("mdy").read("3/7/2026 12:30 PM") == (NOON, False)


def test_twelve_at_night_is_the_start_of_the_day() -> None:
    assert StampReader("dmy").read("7/3/2026 12:30 AM")[0] == NOON - 12 * 3600


@pytest.mark.parametrize(
    "text",
    ["", "soon", "2026-13-07 12:30", "31/02/2026 12:30", "7/3/2026 25:00", "7/3/2026 13:00 PM", "99/3/2026 1:00"],
)
def test_what_is_no_stamp_is_not_guessed(text: str) -> None:
    with pytest.raises(StampNotRead):
        StampReader("dmy").read(text)
