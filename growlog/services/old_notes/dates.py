"""Days as written in cells, in any usual order, and which order a whole column follows."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from functools import cache, lru_cache

from growlog.services.old_notes.not_read import NotRead
from growlog.words import locale_name, say

ORDERS = ("ymd", "dmy", "mdy")
_CLOCK = re.compile(r"(\d{1,2})[:.h](\d{2})(?:[:.](\d{2})(?:\.\d+)?)?\s*([ap])?\.?m?\.?", re.IGNORECASE)
_CLOCK_BEHIND = re.compile(
    r"[T\s,]+(?:at\s+)?(\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:[ap]\.?m\.?)?)\s*(?:Z|UTC|[+-]\d{2}:?\d{2})?$",
    re.IGNORECASE,
)
_WEEKDAY = re.compile(r"^[^\W\d_]+\.?,?\s+(?=\d)")
_NUMBERS = re.compile(r"(\d{1,4})\s*([-/.\s])\s*(\d{1,2})\s*[-/.\s]\s*(\d{1,4})\.?")
_WRITTEN_TOGETHER = re.compile(r"(\d{4})(\d{2})(\d{2})")
_DAY_NAME_YEAR = re.compile(
    r"(\d{1,2})(?:st|nd|rd|th)?[.\s/-]*(?:of\s+)?([^\W\d_]+)\.?[,\s/-]*(\d{4}|\d{2})", re.IGNORECASE
)
_NAME_DAY_YEAR = re.compile(r"([^\W\d_]+)\.?\s*(\d{1,2})(?:st|nd|rd|th)?[,.\s]+(\d{4}|\d{2})", re.IGNORECASE)
_NAME_FIRST = re.compile(r"^([^\W\d_]+)")
_CENTURY = 2000
_FAR = timedelta(days=200)
_NEAR = timedelta(days=60)
_NEIGHBOURS = 4


@dataclass(frozen=True)
class OrderFound:
    """Which order a column's days follow: "" where none is needed. possible: orders to ask about, if more than one."""

    order: str
    possible: tuple[str, ...] = ()

    @property
    def asks(self) -> bool:
        """Whether the person must say."""
        return len(self.possible) > 1


def day_in(cell: object, order: str) -> date:
    """The day of a cell; NotRead with the reason. order: for days in numbers that do not tell by themselves."""
    if isinstance(cell, datetime):
        return cell.date()
    if isinstance(cell, date):
        return cell
    text = str(cell)
    found = readings(text)
    if not found:
        raise NotRead(say("“{typed}” is not a date with day, month and year.", typed=text[:40]))
    if len(set(found.values())) == 1 and len(found) == len(ORDERS):
        return found["ymd"]
    if order not in found:
        raise NotRead(say("“{typed}” is not a date in the order {order}.", typed=text[:40], order=order_words(order)))
    return found[order]


def clock_in(cell: object) -> time | None:
    """The time of day of a cell, None for none; NotRead with the reason."""
    if isinstance(cell, datetime):
        return cell.time().replace(microsecond=0, tzinfo=None)
    if isinstance(cell, time):
        return cell.replace(microsecond=0, tzinfo=None)
    if isinstance(cell, timedelta) and timedelta(0) <= cell < timedelta(days=1):
        return (datetime.combine(date.min, time.min) + cell).time().replace(microsecond=0)
    found = _CLOCK.fullmatch(str(cell).strip())
    if found is None:
        raise NotRead(say("“{typed}” is not a time of day.", typed=str(cell)[:40]))
    return _clock(found)


def clock_behind(cell: object) -> time | None:
    """The time that stands behind the day in the same cell, None if none does."""
    if isinstance(cell, datetime):
        clock = clock_in(cell)
        return clock if clock != time(0) else None  # a spreadsheet's plain day is its midnight
    found = _CLOCK_BEHIND.search(str(cell)) if isinstance(cell, str) else None
    return clock_in(found[1]) if found else None


@lru_cache(8192)
def readings(text: str) -> dict[str, date]:
    """The days that a text can mean, by order; the same day for each order where it can mean one only."""
    text = _CLOCK_BEHIND.sub("", text.strip())
    text = _WEEKDAY.sub("", text) if _month(_first_word(text)) is None else text
    if found := _WRITTEN_TOGETHER.fullmatch(text):
        return _sure(int(found[1]), int(found[2]), int(found[3]))
    if found := _NUMBERS.fullmatch(text):
        return _of_numbers(found[1], int(found[3]), found[4], found[2])
    if (found := _DAY_NAME_YEAR.fullmatch(text)) and (month := _month(found[2])):
        return _sure(_year(found[3]), month, int(found[1]))
    if (found := _NAME_DAY_YEAR.fullmatch(text)) and (month := _month(found[1])):
        return _sure(_year(found[3]), month, int(found[2]))
    return {}


def order_of(cells: Iterable[object], first: date, last: date) -> OrderFound:
    """The order of a column, as far as its own cells tell.

    first, last: the days that its crop stood; of several orders the one that puts most days among them comes first.
    """
    unsure = [r for r in (readings(c) for c in cells if isinstance(c, str)) if r and not _is_sure(r)]
    if not unsure:
        return OrderFound("")
    fits = {order: sum(order in r for r in unsure) for order in ORDERS}
    most = max(fits.values())
    possible = [order for order in ORDERS if fits[order] == most]
    if len(possible) == 1 and sum(fits[o] == 0 for o in ORDERS) == 2:
        return OrderFound(possible[0])
    if most < len(unsure):  # no order reads all: a few slips, or two orders in one column
        possible = [order for order in ORDERS if fits[order] >= most * 0.5]
        return OrderFound(possible[0]) if len(possible) == 1 else OrderFound("", tuple(possible))
    if len(possible) == 1:
        return OrderFound(possible[0])
    return _by_season(unsure, possible, first, last)


def order_words(order: str) -> str:
    """An order in words."""
    return {
        "ymd": say("year, month, day"),
        "dmy": say("day, month, year"),
        "mdy": say("month, day, year"),
        "": say("that the others of its column tell"),
    }[order]


def year_slips(days: Sequence[date | None]) -> dict[int, date]:
    """Places of days that stand a year or so from the days around them, with the day that would fit there."""
    known = [(place, day) for place, day in enumerate(days) if day is not None]
    slips: dict[int, date] = {}
    for at, (place, day) in enumerate(known):
        around = [d for _, d in known[max(0, at - _NEIGHBOURS) : at] + known[at + 1 : at + 1 + _NEIGHBOURS]]
        if len(around) < 2:
            continue
        middle = sorted(around)[len(around) // 2]
        if abs(day - middle) < _FAR:
            continue
        moved = _in_year(day, day.year + (1 if day < middle else -1))
        if moved is not None and abs(moved - middle) <= _NEAR:
            slips[place] = moved
    return slips


def _in_year(day: date, year: int) -> date | None:
    try:
        return day.replace(year=year)
    except ValueError:
        return None


def _by_season(unsure: list[dict[str, date]], possible: list[str], first: date, last: date) -> OrderFound:
    if len({tuple(r[o] for r in unsure) for o in possible}) == 1:
        return OrderFound(possible[0])  # they all mean the same days
    inside = {order: sum(first <= r[order] <= last for r in unsure) for order in possible}
    return OrderFound("", tuple(sorted(possible, key=lambda order: -inside[order])))


def _of_numbers(one: str, month: int, last: str, sign: str) -> dict[str, date]:
    if len(one) == 4:
        return _sure(int(one), month, int(last)) if len(last) <= 2 else {}
    if len(one) == 3 or len(last) not in (2, 4):
        return {}
    if sign == ".":  # points stand between day, month and year alone
        return _sure(_year(last), month, int(one))
    found = {"dmy": _day(_year(last), month, int(one)), "mdy": _day(_year(last), int(one), month)}
    if len(last) == 2 and len(one) == 2 and sign == "-":
        found["ymd"] = _day(_year(one), month, int(last))
    return {order: day for order, day in found.items() if day is not None}


def _sure(year: int, month: int, day: int) -> dict[str, date]:
    found = _day(year, month, day)
    return {} if found is None else dict.fromkeys(ORDERS, found)


def _is_sure(found: dict[str, date]) -> bool:
    return len(found) == len(ORDERS) and len(set(found.values())) == 1


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def _year(text: str) -> int:
    return int(text) + _CENTURY if len(text) == 2 else int(text)


def _clock(found: re.Match[str]) -> time:
    hour, half = int(found[1]), (found[4] or "").casefold()
    if half and not 1 <= hour <= 12:
        raise NotRead(say("“{typed}” is not a time of day.", typed=found[0]))
    if half:
        hour = hour % 12 + (12 if half == "p" else 0)
    try:
        return time(hour, int(found[2]), int(found[3] or 0))
    except ValueError:
        raise NotRead(say("“{typed}” is not a time of day.", typed=found[0])) from None


def _first_word(text: str) -> str:
    found = _NAME_FIRST.match(text)
    return found[1] if found else ""


def _month(word: str) -> int | None:
    return _months().get(word.casefold().rstrip(".")) if word else None


@cache
def _months() -> dict[str, int]:
    """Names of months in English and in the language of the screen, whole and short."""
    from babel.dates import get_month_names

    found: dict[str, int] = {"sept": 9}
    for locale in (locale_name(), "en"):
        for width in ("wide", "abbreviated"):
            for context in ("format", "stand-alone"):
                names = get_month_names(width, context, locale)
                found |= {str(name).casefold().rstrip("."): number for number, name in names.items()}
    return found
