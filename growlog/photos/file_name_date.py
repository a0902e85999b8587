"""A date and time found in a file's name, in the patterns that cameras, phones and screenshots use."""

import re
from collections.abc import Iterator
from datetime import date, time

FIRST_YEAR, LAST_YEAR = 1990, 2100  # before: no digital photos; after: a number that merely looks like a date

# 20260118, alone or run together with 1841, 184102 or 184102123. A run of any other length is a number.
_COMPACT = re.compile(r"(?<!\d)(\d{4})(\d{2})(\d{2})(?:(\d{2})(\d{2})(?:(\d{2})(?:\d{3})?)?)?(?!\d)", re.ASCII)
# 2026-01-18, 2026_01_18, 2026.01.18, 2026 01 18
_SEPARATED = re.compile(r"(?<!\d)(\d{4})([-_. ])(\d{2})\2(\d{2})(?!\d)", re.ASCII)
# After the date: 184102, 184102123. Four digits alone are more often a counter than a time.
_TIME_COMPACT = re.compile(r"(?:[-_. ]|T| at )(\d{2})(\d{2})(\d{2})(?:\d{3})?(?![0-9a-z])", re.ASCII)
# After the date: 18-41, 18.41.02, 6.41.02 PM
_TIME_SEPARATED = re.compile(
    r"(?:[-_. ]|T| at )(\d{1,2})([-_.:h])(\d{2})(?:[-_.:m](\d{2}))?(?!\d)(?:[ \u202f]?([AaPp])[Mm]\b)?", re.ASCII
)


def date_in_file_name(file_name: str) -> tuple[date, time | None] | None:
    """The day and, where there is one, the time that stand in the name; None where no valid date does.

    A date with a time wins over a bare one; otherwise the first counts.
    """
    found = list(_moments(file_name))
    with_time = [moment for moment in found if moment[1] is not None]
    return next(iter(with_time or found), None)


def valid_day(year: int, month: int, day: int) -> date | None:
    """The date, or None where there is no such day or its year is out of range."""
    if not FIRST_YEAR <= year <= LAST_YEAR:
        return None
    try:
        return date(year, month, day)
    except ValueError:
        return None


def valid_time(hour: int, minute: int, second: int) -> time | None:
    """The time of day, or None where there is none such."""
    try:
        return time(hour, minute, second)
    except ValueError:
        return None


def _moments(name: str) -> Iterator[tuple[date, time | None]]:
    for found in _COMPACT.finditer(name):
        year, month, day_of_month, hour, minute, second = (int(part or 0) for part in found.groups())
        day = valid_day(year, month, day_of_month)
        if day and found[4] is None:
            yield day, _time_after(name, found.end())
        elif day and (at := valid_time(hour, minute, second)):
            yield day, at  # run together, both must hold or the digits are some other number
    for found in _SEPARATED.finditer(name):
        if day := valid_day(int(found[1]), int(found[3]), int(found[4])):
            yield day, _time_after(name, found.end())


def _time_after(name: str, position: int) -> time | None:
    if found := _TIME_COMPACT.match(name, position):
        return valid_time(int(found[1]), int(found[2]), int(found[3]))
    if found := _TIME_SEPARATED.match(name, position):
        return valid_time(_hour(int(found[1]), found[5]), int(found[3]), int(found[4] or 0))
    return None


def _hour(hour: int, half_of_day: str | None) -> int:
    if half_of_day is None or not 1 <= hour <= 12:
        return hour
    return hour % 12 + (12 if half_of_day in "Pp" else 0)
