"""Cultivars: what the packet says."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum

from growlog.records.problems import Problem, check_line, check_quantity
from growlog.words import mark, say


class FloweringHabit(StrEnum):
    """How its flowers come to fruit, which decides what a pollination entry counts."""

    SEPARATE = "separate"  # male and female flowers apart: pollinated by hand where no insect comes
    PERFECT = "perfect"  # both in one flower: shaking helps
    SETS_ALONE = "sets-alone"  # parthenocarpic
    NEEDS_ANOTHER = "needs-another"  # self-incompatible

    @property
    def label(self) -> str:
        """The habit in words, to be translated where shown."""
        return _HABIT_LABELS[self]


_HABIT_LABELS = {
    FloweringHabit.SEPARATE: mark("separate male and female flowers"),
    FloweringHabit.PERFECT: mark("perfect flowers, helped by shaking"),
    FloweringHabit.SETS_ALONE: mark("sets without pollination"),
    FloweringHabit.NEEDS_ANOTHER: mark("needs another plant"),
}


class CountsFrom(StrEnum):
    """The day from which the packet counts its days to maturity."""

    SOWING = "sowing"
    EMERGENCE = "emergence"
    TRANSPLANTING = "transplanting"

    @property
    def label(self) -> str:
        """The day in words, to be translated where shown."""
        return _COUNT_LABELS[self]


_COUNT_LABELS = {
    CountsFrom.SOWING: mark("from sowing"),
    CountsFrom.EMERGENCE: mark("from emergence"),
    CountsFrom.TRANSPLANTING: mark("from transplanting"),
}


@dataclass(frozen=True)
class Cultivar:
    """A cultivar as its packet describes it. species: the crop's plain name ("pattypan", "chilli")."""

    id: str
    species: str
    name: str
    habit: FloweringHabit
    packet_days: int | None = None
    packet_counts_from: CountsFrom = CountsFrom.SOWING
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with the packet's data."""
        found = check_quantity("packet_days", self.packet_days) + check_line("species", self.species)
        if not self.species.strip():
            found.append(Problem("species", say("Say what kind of plant it is, such as squash or chilli.")))
        return found
