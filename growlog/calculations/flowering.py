"""On which days flowers count as open, from looks on single days.

Common practice, no source: how long a look holds is a convenience of reminders, not a fact of botany.
"""

from collections.abc import Iterable
from datetime import date, timedelta

from growlog.calculations.due import Span

FEMALES_SEEN_HOLDS_DAYS = 3
FLOWERS_SEEN_HOLDS_DAYS = 7


def open_spans(seen: Iterable[date], seen_none: Iterable[date], holds_days: int) -> tuple[Span, ...]:
    """Spans of days on which flowers count as open, in order, none touching another.

    seen: days on which a look saw some. seen_none: days on which a look saw none; where one day has both, some were
    seen. What was seen holds for holds_days more days (0 or more), but not to the day of a later look that saw none.
    """
    if holds_days < 0:
        raise ValueError(f"holds_days {holds_days} is outside 0 and more")
    some = sorted(set(seen))
    none = sorted(set(seen_none) - set(some))
    spans: list[Span] = []
    for day in some:
        end = day + timedelta(days=holds_days)
        over = next((d for d in none if d > day), None)
        if over is not None:
            end = min(end, over - timedelta(days=1))
        if spans and day <= spans[-1][1] + timedelta(days=1):
            spans[-1] = spans[-1][0], max(end, spans[-1][1])
        else:
            spans.append((day, end))
    return tuple(spans)


def common_days(first: Iterable[Span], second: Iterable[Span]) -> tuple[Span, ...]:
    """The days that lie in a span of both."""
    others = tuple(second)
    met = ((max(a, c), min(b, d)) for a, b in first for c, d in others)
    return tuple((start, end) for start, end in met if start <= end)
