"""The light programme: what the lamps are to do from a day or a plant age on."""

from dataclasses import dataclass
from datetime import date, datetime, time

from growlog.records.problems import Problem, check_quantity
from growlog.words import say


@dataclass(frozen=True)
class LightStep:
    """A step of a room's light programme, until the next one.

    It starts on from_day, or at from_age of the crop crop_id. lamp_ids: which lamps are on, empty for all. A span that
    crosses midnight belongs to the day on which the lamps go on.
    """

    id: str
    room_id: str
    from_day: date | None = None
    crop_id: str | None = None
    from_age: int | None = None
    photoperiod_h: float = 16.0
    on_at: time | None = None
    dimming_percent: float | None = None
    canopy_ppfd_umol: float | None = None
    lamp_ids: tuple[str, ...] = ()
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it: it starts on a day or at a crop's age, not both."""
        found = check_quantity("at_age", self.from_age, "from_age")
        for key in ("photoperiod_h", "dimming_percent", "canopy_ppfd_umol"):
            found += check_quantity(key, getattr(self, key))
        if (self.from_day is None) == (self.from_age is None):
            found.append(Problem("from_day", say("Say from which day, or from which plant age.")))
        if self.from_age is not None and self.crop_id is None:
            found.append(Problem("crop_id", say("Say whose plant age counts.")))
        return found
