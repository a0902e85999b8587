"""Time stamps as loggers write them, to seconds since 1970: of the wall clock, or of UTC where an offset stands by."""

import re
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta

_EPOCH = date(1970, 1, 1).toordinal()
_DAY_S = 86_400
# day-month-year in any order, a time with or without seconds, am or pm, and an offset
_WRITTEN = re.compile(
    r"(\d{1,4})([./-])(\d{1,2})\2(\d{2,4})\.?(?:[ T,]+(\d{1,2})[:.hH](\d{2})(?:[:.](\d{2})(?:[.,]\d+)?)?"
    r"\s*([AaPp])?\.?(?:[Mm]\.?)?)?\s*(Z|UTC|GMT|[+-]\d{2}:?\d{2}|[+-]\d{2})?"
)
_MOMENT = re.compile(r"\d{9,10}(?:\.\d+)?|\d{12,13}")
FIRST_YEAR = 2000  # a logger whose clock was never set starts in an earlier year


class StampNotRead(Exception):
    """A stamp that is none; nothing is guessed of it."""


@dataclass
class StampReader:
    """Reads the stamps of one file. order: "dmy" or "mdy" for days that do not begin with the year.

    most_first, most_second: the largest numbers seen in the two places of such days, by which the order shows itself.
    """

    order: str = "dmy"
    most_first: int = 0
    most_second: int = 0
    dotted: bool = False

    def read(self, text: str) -> tuple[int, bool]:
        """Seconds since 1970, and whether they are UTC (else of the wall clock); StampNotRead."""
        if len(text) >= 16 and text[4] == "-" and text[7] == "-":
            try:
                return _seconds(datetime.fromisoformat(text))
            except ValueError:
                pass
        found = _WRITTEN.fullmatch(text)
        if found is not None:
            return self._written(found)
        if _MOMENT.fullmatch(text):
            seconds = float(text)
            return int(seconds / 1000 if seconds > 1e11 else seconds), True
        raise StampNotRead

    @property
    def order_shown(self) -> str:
        """The order that the days seen prove, "" where both would do or none was needed."""
        if self.dotted or self.most_first > 12:
            return "dmy"
        return "mdy" if self.most_second > 12 else ""

    def _written(self, found: re.Match[str]) -> tuple[int, bool]:
        year, month, day = self._day(found)
        hour, minute, second = (int(found[i] or 0) for i in (5, 6, 7))
        if found[8]:
            if not 1 <= hour <= 12:
                raise StampNotRead
            hour = hour % 12 + (12 if found[8] in "pP" else 0)
        if not (hour < 24 and minute < 60 and second < 60):
            raise StampNotRead
        try:
            days = date(year, month, day).toordinal() - _EPOCH
        except ValueError as error:
            raise StampNotRead from error
        wall = days * _DAY_S + hour * 3600 + minute * 60 + second
        return (wall, False) if not found[9] else (wall - _offset_s(found[9]), True)

    def _day(self, found: re.Match[str]) -> tuple[int, int, int]:
        first, second, third = int(found[1]), int(found[3]), int(found[4])
        if len(found[1]) == 4:
            return first, second, third
        if len(found[1]) > 2 or len(found[4]) == 3:
            raise StampNotRead
        self.most_first, self.most_second = max(self.most_first, first), max(self.most_second, second)
        self.dotted = self.dotted or found[2] == "."
        year = third if len(found[4]) == 4 else 2000 + third
        return (year, second, first) if self.order == "dmy" or found[2] == "." else (year, first, second)


def _seconds(moment: datetime) -> tuple[int, bool]:
    if moment.tzinfo is not None:
        return int(moment.timestamp()), True
    return int(moment.replace(tzinfo=UTC).timestamp()), False


def _offset_s(text: str) -> int:
    if text[0] not in "+-":
        return 0
    digits = text[1:].replace(":", "")
    offset = timedelta(hours=int(digits[:2]), minutes=int(digits[2:] or 0))
    return int(offset.total_seconds()) * (-1 if text[0] == "-" else 1)
