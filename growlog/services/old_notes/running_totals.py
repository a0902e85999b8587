"""Columns of sums so far, turned into what each row added."""

from collections.abc import Sequence
from datetime import date

from growlog.services.old_notes.not_read import NotRead
from growlog.words import say, show_number

Step = float | NotRead | None


def steps_of(totals: Sequence[float | None], days: Sequence[date | None], groups: Sequence[str]) -> list[Step]:
    """What each row added to the sum of its group: NotRead where the sum falls, None where nothing is stated.

    Rows are taken in the order of their days, those of one day as they stand; a row without a day stays behind the
    row above it. A file with its newest row first is read from its end.
    """
    steps: list[Step] = [None] * len(totals)
    reached: dict[str, float] = {}
    for place in _in_time(days):
        total = totals[place]
        if total is None:
            continue
        before = reached.get(groups[place], 0.0)
        if total < before - 1e-9:
            steps[place] = NotRead(
                say("the sum so far falls from {before} to {total}.", before=_short(before), total=_short(total))
            )
            continue
        steps[place] = round(total - before, 6)
        reached[groups[place]] = total
    return steps


def _in_time(days: Sequence[date | None]) -> list[int]:
    known = [day for day in days if day is not None]
    places = list(range(len(days)))
    if known and known[0] > known[-1]:
        places.reverse()
    latest = date.min
    keys: dict[int, date] = {}
    for place in places:
        latest = days[place] or latest
        keys[place] = latest
    return sorted(places, key=lambda place: keys[place])


def _short(value: float) -> str:
    return show_number(value, 0 if float(value).is_integer() else 1)
