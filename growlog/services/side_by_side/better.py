"""Which way of a figure is better; figures that are not here have no better way, and none of them is marked."""

from enum import StrEnum

from growlog.services.money.labour import Work
from growlog.words import mark


class Better(StrEnum):
    """More or less is better."""

    MORE = "more"
    LESS = "less"

    @property
    def label(self) -> str:
        """In words, to be translated where shown."""
        return _LABELS[self]


_LABELS = {Better.MORE: mark("more is better"), Better.LESS: mark("less is better")}
_MORE = (
    "fruit-count", "yield-weight", "marketable-percent", "fruit-per-week", "weight-per-week", "early-count",
    "early-yield", "fruit-per-plant", "weight-per-plant", "weight-per-m2", "weight-per-litre", "weight-per-hour",
    "fruit-set",
)  # fmt: skip
_LESS = (
    "culled-count", "culled-misshapen", "culled-blossom-end-rot", "culled-cracked", "culled-oversize",
    "culled-damaged", "first-pick-age", "milestone-first-pick", "against-packet", "against-packet-percent",
    "first-flower-to-first-pick", "kwh-per-kg", "cost-per-kg", "cost-per-fruit", "minutes-per-fruit", "humid-nights",
    "condensation-days", *(f"minutes-per-fruit-{work}" for work in Work),
)  # fmt: skip
BETTER = dict.fromkeys(_MORE, Better.MORE) | dict.fromkeys(_LESS, Better.LESS)
