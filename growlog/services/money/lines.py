"""Single costs of a crop, each on its day and of its kind, exact; rounding comes after they are added up."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from growlog.records.purchase import PurchaseSort
from growlog.words import mark


class CostKind(StrEnum):
    """What the money goes into, in the order of a stacked chart."""

    ENERGY = "energy"
    NUTRIENTS = "nutrients"
    WATER = "water"
    SEED = "seed"
    MEDIUM = "medium"
    CONTAINERS = "containers"
    GEAR = "gear"
    LABOUR = "labour"
    OTHER = "other"

    @property
    def label(self) -> str:
        """The kind in words, to be translated where shown."""
        return _LABELS[self]


_LABELS = {
    CostKind.ENERGY: mark("electricity"),
    CostKind.NUTRIENTS: mark("nutrients"),
    CostKind.WATER: mark("water"),
    CostKind.SEED: mark("seed"),
    CostKind.MEDIUM: mark("medium"),
    CostKind.CONTAINERS: mark("containers"),
    CostKind.GEAR: mark("gear"),
    CostKind.LABOUR: mark("labour"),
    CostKind.OTHER: mark("other"),
}


def kind_of(sort: PurchaseSort) -> CostKind:
    """The kind that a purchase counts to."""
    return CostKind(sort.value)


@dataclass(frozen=True)
class CostLine:
    """A cost that a crop bears on a day. minor: minor units of the logbook's currency, not rounded."""

    day: date
    kind: CostKind
    minor: Decimal
    what: str = ""
