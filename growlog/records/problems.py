"""What is wrong with a record, and what is merely worth a question; sentences, each with its field."""

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass

from growlog.records.display import in_shown_unit, plain
from growlog.records.limits import Limit, limit
from growlog.words import say


@dataclass(frozen=True)
class Problem:
    """One sentence about one field. `asks` is true for a question that may be answered yes."""

    field: str
    sentence: str
    asks: bool = False


class RecordRefused(Exception):
    """A record that would not be true; nothing of it was written."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__(" ".join(p.sentence for p in self.problems))

    def __reduce__(self) -> tuple[type, tuple[tuple[Problem, ...]]]:
        return type(self), (self.problems,)


def check_quantity(key: str, value: float | None, field: str | None = None) -> list[Problem]:
    """Problems of one number against the limits table; None (not stated) has none."""
    if value is None:
        return []
    bound = limit(key)
    name = field or key
    if value != value or not bound.lowest <= value <= bound.highest:
        return [Problem(name, _out_of_range(bound, value))]
    if bound.whole and value != int(value):
        return [Problem(name, say("{label} is a whole number.", label=say(bound.label)))]
    if _asked(bound, value):
        return [Problem(name, _unusual(bound, value), asks=True)]
    return []


def check_line(field: str, text: str) -> list[Problem]:
    """Problems of a name: line breaks, other control characters, and halves of a letter that no file can keep."""
    if any(unicodedata.category(letter) in ("Cc", "Cs") for letter in text):
        return [Problem(field, say("This holds characters that cannot be shown. Type it again."))]
    return []


def refuse(problems: Iterable[Problem]) -> None:
    """Raises RecordRefused if any problem is more than a question."""
    firm = [p for p in problems if not p.asks]
    if firm:
        raise RecordRefused(firm)


def _asked(bound: Limit, value: float) -> bool:
    below = bound.ask_below is not None and value < bound.ask_below
    above = bound.ask_above is not None and value > bound.ask_above
    return below or above


def _out_of_range(bound: Limit, value: float) -> str:
    return say(
        "{label} {value} is outside {lowest} to {highest}: {reason}.",
        label=say(bound.label),
        value=plain(value, bound.unit),
        lowest=_without_unit(bound.lowest, bound.unit),
        highest=plain(bound.highest, bound.unit),
        reason=say(bound.reason),
    )


def _without_unit(value: float, unit: str) -> str:
    return plain(in_shown_unit(value, unit)[0], "")


def _unusual(bound: Limit, value: float) -> str:
    return say(
        "{label} {value} is unusual. Is it right?",
        label=say(bound.label),
        value=plain(value, bound.unit),
    )
