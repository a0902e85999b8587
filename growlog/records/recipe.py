"""Mixes: immutable versions of what goes into a litre; a feed points at the version it used."""

from dataclasses import dataclass
from datetime import datetime

from growlog.records.display import plain
from growlog.records.problems import Problem, check_quantity
from growlog.words import say


@dataclass(frozen=True)
class MixPart:
    """A product and its dose in a litre. unit: "mL/L" or "g/L". product_id: of the shelf, if it stands there."""

    product: str
    dose_per_l: float
    unit: str = "mL/L"
    product_id: str | None = None


@dataclass(frozen=True)
class WaterShare:
    """A source water and its share of the blend, above 0 to 1."""

    water_id: str
    water_share: float


@dataclass(frozen=True)
class Mix:
    """A named mix. A changed mix is a new record with the next edition, never an edit of this one."""

    id: str
    name: str
    edition: int
    parts: tuple[MixPart, ...]
    note: str = ""
    waters: tuple[WaterShare, ...] = ()
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = [] if self.name.strip() else [Problem("name", say("Give the mix a name."))]
        for part in self.parts:
            found += check_quantity("dose_per_l", part.dose_per_l)
        for share in self.waters:
            found += check_quantity("water_share", share.water_share, "waters")
        if self.waters and abs(sum(w.water_share for w in self.waters) - 1) > 0.005:
            found.append(Problem("waters", say("The shares of the waters add up to 100 %.")))
        return found

    def doses(self) -> str:
        """The doses in one line, as written on a bottle's tape."""
        return ", ".join(f"{p.product} {plain(p.dose_per_l, p.unit)}" for p in self.parts)
