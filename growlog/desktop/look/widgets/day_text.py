"""Days and times of day as people type them, and as a field shows them."""

import re
from datetime import date, time

from PySide6.QtCore import QDate, QLocale

from growlog.words import say


class NotADay(ValueError):
    """A text that is no day of the calendar; the message is the sentence for the person."""


class NotATime(ValueError):
    """A text that is no time of day."""


def day_text(day: date | None) -> str:
    """A day in the locale's short form, with a year of four figures."""
    if day is None:
        return ""
    return QLocale().toString(QDate(day.year, day.month, day.day), day_format())


def day_format() -> str:
    """The locale's short form of a day."""
    form = QLocale().dateFormat(QLocale.FormatType.ShortFormat)
    return form if "yyyy" in form else form.replace("yy", "yyyy")


def parse_day(text: str, near: date | None = None) -> date | None:
    """The day in a text: 2026-01-18, or day, month and year in the locale's order; None for an empty text.

    Without a year it is the year of `near`. Raises NotADay.
    """
    plain = text.strip()
    if not plain:
        return None
    numbers = [int(part) for part in re.findall(r"\d{1,4}", plain)]
    if re.search(r"[^\d\s./\-\u2009]", plain) or not 2 <= len(numbers) <= 3:
        raise NotADay(say("Write a day as {example}.", example=_example()))
    if len(numbers) == 2 and near is None:
        raise NotADay(say("The year is missing."))
    return _checked(*_in_order(numbers, plain, near))


def _in_order(numbers: list[int], text: str, near: date | None) -> tuple[int, int, int]:
    """Year, month, day."""
    if re.match(r"\d{4}", text):
        return numbers[0], numbers[1], numbers[2] if len(numbers) == 3 else 0
    order = [letter for letter in _locale_order() if letter != "y" or len(numbers) == 3]
    found = dict(zip(order, numbers, strict=True))
    year = found.get("y", near.year if near is not None else 0)
    return year + 2000 if year < 100 else year, found["M"], found["d"]


def _locale_order() -> list[str]:
    form = day_format()
    order = sorted("yMd", key=form.index)
    return ["M", "d", "y"] if order == ["M", "d", "y"] else ["d", "M", "y"] if order[0] == "d" else order


def _checked(year: int, month: int, day: int) -> date:
    try:
        return date(year, month, day)
    except ValueError:
        raise NotADay(
            say("There is no day {day} in month {month} of {year}.", day=day, month=month, year=year)
        ) from None


def _example() -> str:
    return day_text(date(2026, 1, 18))


def time_text(at: time | None) -> str:
    """A time of day as hours and minutes."""
    return "" if at is None else f"{at:%H:%M}"


def parse_time(text: str) -> time | None:
    """The time of day in a text such as 8:05, 8.05 or 805; None for an empty text. Raises NotATime."""
    plain = text.strip()
    if not plain:
        return None
    match = re.fullmatch(r"(\d{1,2})(?:[:.h\s]?(\d{2}))?", plain)
    if match is None:
        raise NotATime(text)
    hour, minute = int(match[1]), int(match[2] or 0)
    if hour > 23 or minute > 59:
        raise NotATime(text)
    return time(hour, minute)
