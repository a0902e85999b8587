"""The line cut into numbers with their units, words, times of day and marks. No character but blanks is left out."""

import re
from dataclasses import dataclass
from datetime import time
from enum import StrEnum

from growlog.services.quick_line.units import LineUnit, unit_at


class TokenKind(StrEnum):
    """What a piece of the line is."""

    NUMBER = "number"
    WORD = "word"
    TIME = "time"
    MARK = "mark"


@dataclass(frozen=True)
class Token:
    """A piece of the line from start to end. value: of a number, None where it cannot be read. at: of a time."""

    kind: TokenKind
    text: str
    start: int
    end: int
    value: float | None = None
    unit: LineUnit | None = None
    at: time | None = None
    trouble: str = ""


_NEXT = re.compile(
    r"(?P<time>(?<![\w.,:])[0-9]{1,2}:[0-9]{2}(?![0-9:]))"
    r"|(?P<number>(?:(?<![\w.,])[-−–+])?(?=[0-9]|[.,][0-9])(?<![0-9])[0-9.,]*[0-9])"
    r"|(?P<word>[^\W\d_]+(?:[-'’][^\W\d_]+)*)"
    r"|(?P<dots>\.{2,}|…)"
    r"|(?P<mark>\S)"
)
_MERIDIEM = re.compile(r"[ \t]*([ap])\.?m\b\.?", re.IGNORECASE)
_MOST_DIGITS = 12
_ONES = ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
         "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen")  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
NUMBER_WORDS = (
    {word: n for n, word in enumerate(_ONES)}
    | {word: 10 * n for n, word in enumerate(_TENS, 2)}
    | {f"{ten}-{_ONES[one]}": 10 * n + one for n, ten in enumerate(_TENS, 2) for one in range(1, 10)}
    | {"dozen": 12}
)

UNREADABLE = "unreadable"
THREE_FIGURES = "three figures"


def tokens_of(text: str, comma_is_decimal: bool = False) -> list[Token]:
    """The pieces of a line in order. comma_is_decimal: the locale writes 1,5 and 1.200 for twelve hundred."""
    found: list[Token] = []
    at = 0
    while (match := _NEXT.search(text, at)) is not None:
        for token in _tokens(match, text, comma_is_decimal):
            found.append(token)
            at = token.end
    return found


def _tokens(match: re.Match[str], text: str, comma_is_decimal: bool) -> list[Token]:
    start, end, said = match.start(), match.end(), match.group()
    if match["time"]:
        return [_time(said, text, start, end)]
    if match["number"]:
        return _numbers(said, text, start, end, comma_is_decimal)
    if match["word"] and said.lower() in NUMBER_WORDS:
        return [_with_unit(said, text, start, end, float(NUMBER_WORDS[said.lower()]))]
    kind = TokenKind.WORD if match["word"] else TokenKind.MARK
    return [Token(kind, said, start, end)]


def _time(said: str, text: str, start: int, end: int) -> Token:
    hour, minute = (int(part) for part in said.split(":"))
    if (half := _MERIDIEM.match(text, end)) is not None:
        end = half.end()
        hour = hour_of_half_day(hour, half[1].lower() + "m")
    if hour > 23 or minute > 59:
        return Token(TokenKind.TIME, text[start:end], start, end, trouble=UNREADABLE)
    return Token(TokenKind.TIME, text[start:end], start, end, at=time(hour, minute))


def hour_of_half_day(hour: float, half: str) -> int:
    """The hour of the day of an hour before or after noon; 99 where there is none such."""
    if hour != int(hour) or not 1 <= hour <= 12:
        return 99
    return int(hour) % 12 + (12 if half == "pm" else 0)


def _numbers(said: str, text: str, start: int, end: int, comma_is_decimal: bool) -> list[Token]:
    """One number; or several where whole numbers stand in a row with commas and no blanks: 86,93,78."""
    parts = said.split(",")
    if len(parts) > 2 and all(part.isdigit() for part in parts):
        ends = [start + len(",".join(parts[: n + 1])) for n in range(len(parts))]
        return [
            _with_unit(part, text, stop - len(part), stop, _value(part)) for part, stop in zip(parts, ends, strict=True)
        ]
    trouble = _trouble(said, comma_is_decimal)
    return [_with_unit(said, text, start, end, None if trouble else _value(said), trouble)]


def _trouble(said: str, comma_is_decimal: bool) -> str:
    bare = said.lstrip("-−–+")
    if bare.count(".") + bare.count(",") > 1 or sum(c.isdigit() for c in bare) > _MOST_DIGITS:
        return UNREADABLE
    grouping = "." if comma_is_decimal else ","
    before, mark, after = bare.partition(grouping)
    # 1,200 is twelve hundred to some and one and a fifth to others; 0,250 is clear.
    if mark and len(after) == 3 and before.lstrip("0") and len(before) <= 3:
        return THREE_FIGURES
    return ""


def _value(said: str) -> float:
    return float(said.replace("−", "-").replace("–", "-").replace(",", "."))


def _with_unit(said: str, text: str, start: int, end: int, value: float | None, trouble: str = "") -> Token:
    unit = unit_at(text, end)
    if unit is not None:
        end = unit[1]
    return Token(TokenKind.NUMBER, said, start, end, value, unit[0] if unit else None, trouble=trouble)
