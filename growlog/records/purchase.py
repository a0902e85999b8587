"""What was paid for: seed, medium, containers, gear with its life, and other costs."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from growlog.records.problems import Problem, check_line, check_quantity
from growlog.words import mark, say


class PurchaseSort(StrEnum):
    """What the money went into."""

    SEED = "seed"
    MEDIUM = "medium"
    NUTRIENTS = "nutrients"
    CONTAINERS = "containers"
    GEAR = "gear"
    WATER = "water"
    OTHER = "other"

    @property
    def label(self) -> str:
        """The sort in words, to be translated where shown."""
        return _SORT_LABELS[self]


_SORT_LABELS = {
    PurchaseSort.SEED: mark("seed"),
    PurchaseSort.MEDIUM: mark("medium"),
    PurchaseSort.NUTRIENTS: mark("nutrients"),
    PurchaseSort.CONTAINERS: mark("containers"),
    PurchaseSort.GEAR: mark("gear"),
    PurchaseSort.WATER: mark("water"),
    PurchaseSort.OTHER: mark("other"),
}


@dataclass(frozen=True)
class Purchase:
    """Something bought. crop_id: the crop that bears it alone; None: shared by the crops that stood in its life.

    life_days or life_crops: how long gear serves; neither: used up by what it was bought for.
    """

    id: str
    name: str
    day: date
    sort: PurchaseSort = PurchaseSort.OTHER
    price_minor: int = 0
    crop_id: str | None = None
    life_days: int | None = None
    life_crops: int | None = None
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = [] if self.name.strip() else [Problem("name", say("Say what was bought."))]
        found += check_line("name", self.name)
        for key in ("price_minor", "life_days", "life_crops"):
            found += check_quantity(key, getattr(self, key))
        if self.life_days is not None and self.life_crops is not None:
            found.append(Problem("life_days", say("Say its life in days or in crops, not both.")))
        return found
