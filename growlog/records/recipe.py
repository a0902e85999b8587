"""Mixes: immutable versions of what goes into a litre; a feed points at the version it used."""

from dataclasses import dataclass
from datetime import datetime

from growlog.records.display import plain
from growlog.records.problems import Problem, check_quantity
from growlog.words import say


@dataclass(frozen=True)
class MixPart:
    """A product and its dose in a litre. unit: "mL/L" or "g/L"."""

    product: str
    dose_per_l: float
    unit: str = "mL/L"


@dataclass(frozen=True)
class Mix:
    """A named mix. A changed mix is a new record with the next edition, never an edit of this one."""

    id: str
    name: str
    edition: int
    parts: tuple[MixPart, ...]
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = [] if self.name.strip() else [Problem("name", say("Give the mix a name."))]
        for part in self.parts:
            found += check_quantity("dose_per_l", part.dose_per_l)
        return found

    def doses(self) -> str:
        """The doses in one line, as written on a bottle's tape."""
        return ", ".join(f"{p.product} {plain(p.dose_per_l, p.unit)}" for p in self.parts)
