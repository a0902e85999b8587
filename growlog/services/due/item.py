"""Something due on a day."""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class DueHow(StrEnum):
    """How one key does it."""

    TICK = "tick"  # remembers that it was done
    WRITES = "writes"  # writes its entry at once, as `offer` says
    FORM = "form"  # opens the form of its entry
    PHOTO = "photo"  # opens the intake of photos
    CLEARING = "clearing"  # asks for the day of clearing


@dataclass(frozen=True)
class DueItem:
    """Something due on due_day, waiting since `since`.

    key: names it, the same from day to day. title: what is to be done or what comes. crop_id, crop_name: None and ""
    for the room. why: the rule in a sentence. entry_kind: the kind of entry that does it, "photo", or "" for none.
    offer: what one key would write, "" if nothing. is_daily: it comes every day while it comes.
    """

    key: str
    title: str
    crop_id: str | None
    crop_name: str
    due_day: date
    since: date
    why: str
    entry_kind: str = ""
    how: DueHow = DueHow.TICK
    offer: str = ""
    late_days: int = 0
    in_the_morning: bool = False
    is_daily: bool = False
