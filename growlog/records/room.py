"""The room, its lamps and its tanks."""

from dataclasses import dataclass
from datetime import date, datetime

from growlog.records.problems import Problem, check_quantity
from growlog.words import say


@dataclass(frozen=True)
class Room:
    """A place where crops stand. zone: IANA name of its time zone."""

    id: str
    name: str
    floor_m2: float | None = None
    zone: str = "UTC"
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        return _named(self.name) + check_quantity("floor_m2", self.floor_m2)


@dataclass(frozen=True)
class Lamp:
    """Lamps of one kind in a room. rated_w, wall_w: of one lamp; the measured wall watts are preferred."""

    id: str
    room_id: str
    name: str
    lamp_count: int = 1
    rated_w: float | None = None
    wall_w: float | None = None
    efficacy_umol_per_j: float | None = None
    from_day: date | None = None
    until_day: date | None = None
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = _named(self.name)
        for key in ("lamp_count", "rated_w", "wall_w", "efficacy_umol_per_j"):
            found += check_quantity(key, getattr(self, key))
        return found


@dataclass(frozen=True)
class Tank:
    """A tank of nutrient solution. recirculates: the drain comes back to it."""

    id: str
    room_id: str
    name: str
    tank_l: float | None = None
    recirculates: bool = False
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        return _named(self.name) + check_quantity("tank_l", self.tank_l)


def _named(name: str) -> list[Problem]:
    return [] if name.strip() else [Problem("name", say("Give it a name."))]
