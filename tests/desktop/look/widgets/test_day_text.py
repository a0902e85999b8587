"""Days and times of day as people type them."""

from datetime import date, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from growlog.desktop.look.widgets.day_text import NotADay, NotATime, day_text, parse_day, parse_time, time_text

DAY = date(2026, 1, 8)
LOCALES = pytest.mark.parametrize("locale", ["british", "german", "american", "swedish"])


@LOCALES
def test_a_day_shown_is_read_back_as_the_same_day(locale: str, request: pytest.FixtureRequest) -> None:
    request.getfixturevalue(locale)
    for day in (DAY, date(2024, 2, 29), date(2026, 12, 11)):
        assert parse_day(day_text(day)) == day


@LOCALES
def test_the_form_of_iso_8601_is_read_everywhere(locale: str, request: pytest.FixtureRequest) -> None:
    request.getfixturevalue(locale)
    assert parse_day("2026-01-08") == DAY


def test_the_order_is_that_of_the_locale(american: None) -> None:
    assert parse_day("1/8/2026") == DAY
    assert parse_day("1/8", near=date(2026, 5, 5)) == DAY


def test_points_two_figures_for_the_year_and_a_year_left_out_are_understood(german: None) -> None:
    assert parse_day("8.1.2026") == DAY
    assert parse_day("8.1.26") == DAY
    assert parse_day("8.1.", near=date(2026, 5, 5)) == DAY
    assert parse_day("  ") is None


# The Gregorian leap-year rule (ISO 8601: the calendar it uses): 1900 is no leap year, 2000 and 2024 are.
@pytest.mark.parametrize("text", ["30.2.2026", "29.2.1900", "31.4.2026", "1.13.2026", "0.1.2026"])
def test_a_day_that_the_calendar_does_not_have_is_refused(german: None, text: str) -> None:
    with pytest.raises(NotADay, match="There is no day"):
        parse_day(text)


@pytest.mark.parametrize("text", ["yesterday", "8", "8.1.2026.4", "8 Jan", "8.1.2026?"])
def test_what_is_no_day_is_refused_with_an_example(german: None, text: str) -> None:
    with pytest.raises(NotADay, match="Write a day as"):
        parse_day(text)


def test_a_year_left_out_is_asked_for_where_none_is_near(german: None) -> None:
    with pytest.raises(NotADay, match="year is missing"):
        parse_day("8.1.")


@pytest.mark.parametrize("text", ["2026-1", "2026 1"])
def test_a_year_and_a_month_are_no_day(text: str) -> None:
    with pytest.raises(NotADay):
        parse_day(text, near=DAY)


@pytest.mark.parametrize(
    ("text", "at"),
    [
        ("8:05", time(8, 5)),
        ("08:05", time(8, 5)),
        ("8.05", time(8, 5)),
        ("805", time(8, 5)),
        ("1840", time(18, 40)),
        ("8", time(8)),
        ("0:00", time(0)),
        ("", None),
    ],
)
def test_a_time_of_day_is_understood_in_several_forms(text: str, at: time | None) -> None:
    assert parse_time(text) == at


@pytest.mark.parametrize("text", ["24:00", "8:60", "noon", "8:5", "12345"])
def test_what_is_no_time_of_day_is_refused(text: str) -> None:
    with pytest.raises(NotATime):
        parse_time(text)


@given(st.integers(0, 23), st.integers(0, 59))
def test_a_time_shown_is_read_back_as_the_same_time(hour: int, minute: int) -> None:
    assert parse_time(time_text(time(hour, minute))) == time(hour, minute)
