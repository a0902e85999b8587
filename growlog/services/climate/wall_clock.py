"""The wall clock of a room's zone and UTC, for many moments at once; hours of clock changes are found, not guessed."""

from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

import numpy as np
from numpy.typing import NDArray

_QUARTER_S = 900  # clock changes begin and end on a quarter of an hour
_EPOCH = datetime(1970, 1, 1)  # noqa: DTZ001 - the wall clock has no zone here


class RepeatedHour(StrEnum):
    """Which of the two is meant by a stamp in the hour that a clock change repeats."""

    EARLIER = "earlier"
    LATER = "later"
    IN_ORDER = "in-order"


@dataclass(frozen=True, eq=False)
class Moments:
    """Stamps of the wall clock as UTC. repeated: stand in an hour that came twice. missing: in one that never was."""

    utc_s: NDArray[np.int64]
    repeated: NDArray[np.bool_]
    missing: NDArray[np.bool_]


def zone_of(name: str) -> ZoneInfo:
    """A zone by its IANA name; UTC where this computer does not know it."""
    try:
        return ZoneInfo(name or "UTC")
    except (ZoneInfoNotFoundError, ValueError, OSError):
        return ZoneInfo("UTC")


def moments_of(wall_s: NDArray[np.int64], zone: ZoneInfo, rule: RepeatedHour = RepeatedHour.EARLIER) -> Moments:
    """UTC of stamps of the wall clock (seconds since 1970 as if of UTC), in the order in which they were written.

    IN_ORDER: within a repeated hour the first run of stamps is the earlier one, from the step back on the later.
    """
    quarters, where = np.unique(wall_s // _QUARTER_S, return_inverse=True)
    first = np.array([_offset_s(int(q) * _QUARTER_S, zone, 0) for q in quarters], np.int64)[where]
    second = np.array([_offset_s(int(q) * _QUARTER_S, zone, 1) for q in quarters], np.int64)[where]
    repeated, missing = first > second, first < second
    later = np.zeros(len(wall_s), np.bool_)
    if rule is RepeatedHour.LATER:
        later = repeated
    elif rule is RepeatedHour.IN_ORDER:
        later = _second_run(wall_s, repeated)
    return Moments(wall_s - np.where(later, second, first), repeated, missing)


def day_edges(first: date, last: date, zone: ZoneInfo) -> NDArray[np.int64]:
    """The start of each civil day in seconds of UTC, and the end of the last."""
    days = [first + timedelta(days=i) for i in range((last - first).days + 2)]
    return np.array([utc_of(datetime(d.year, d.month, d.day), zone) for d in days], np.int64)  # noqa: DTZ001


def utc_of(wall: datetime, zone: ZoneInfo) -> int:
    """Seconds of UTC of a moment of the wall clock; the earlier of two, and of none the moment after the change."""
    return int(wall.replace(tzinfo=zone).timestamp())


def day_of(utc_s: int, zone: ZoneInfo) -> date:
    """The civil day of a moment."""
    return datetime.fromtimestamp(utc_s, zone).date()


def moment(utc_s: int) -> datetime:
    """A moment with its zone, UTC."""
    return datetime.fromtimestamp(utc_s, UTC)


def _offset_s(wall_s: int, zone: ZoneInfo, fold: int) -> int:
    wall = (_EPOCH + timedelta(seconds=wall_s)).replace(tzinfo=zone, fold=fold)
    offset = wall.utcoffset()
    return int(offset.total_seconds()) if offset is not None else 0


def _second_run(wall_s: NDArray[np.int64], repeated: NDArray[np.bool_]) -> NDArray[np.bool_]:
    """True from the step back on within each stretch of repeated stamps."""
    found = np.zeros(len(wall_s), np.bool_)
    if not repeated.any():
        return found
    steps = np.flatnonzero(np.diff(repeated.astype(np.int8)))
    for run in np.split(np.arange(len(wall_s)), steps + 1):
        if len(run) and repeated[run[0]]:
            back = np.flatnonzero(np.diff(wall_s[run]) < 0)
            if len(back):
                found[run[back[0] + 1 :]] = True
    return found
