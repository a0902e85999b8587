"""Problems seen and treatments given. A treatment's intervals are those of its label."""

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from growlog.records.entry.base import Detail
from growlog.records.entry.wording import joined, measured
from growlog.records.problems import Problem
from growlog.words import mark, say, say_count


class ProblemSort(StrEnum):
    """What sort of trouble."""

    PEST = "pest"
    DISEASE = "disease"
    DISORDER = "disorder"

    @property
    def label(self) -> str:
        """The sort in words, to be translated where shown."""
        return _SORT_LABELS[self]


_SORT_LABELS = {
    ProblemSort.PEST: mark("pest"),
    ProblemSort.DISEASE: mark("disease"),
    ProblemSort.DISORDER: mark("disorder"),
}
_SEVERITIES = {1: mark("slight"), 2: mark("moderate"), 3: mark("severe")}


def severity_word(severity: int) -> str:
    """1 slight, 2 moderate, 3 severe (a plain scale of our own, common practice, no source)."""
    return say(_SEVERITIES[severity])


@dataclass(frozen=True)
class ProblemSeen(Detail):
    """A pest, disease or disorder."""

    kind: ClassVar[str] = "problem"
    label: ClassVar[str] = mark("Problem")

    sort: ProblemSort = ProblemSort.DISORDER
    name: str = ""
    severity: int = 1

    def own_problems(self) -> list[Problem]:
        """It has a name, if only a description."""
        return [] if self.name.strip() else [Problem("name", say("Say what was seen."))]

    def summary(self) -> str:
        """What it was."""
        return self.name

    def second_line(self) -> str:
        """Sort and severity."""
        return joined(say(self.sort.label), severity_word(self.severity))


@dataclass(frozen=True)
class Treatment(Detail):
    """Something applied against a problem. Intervals in hours and days, from the product's label."""

    kind: ClassVar[str] = "treatment"
    label: ClassVar[str] = mark("Treatment")

    product: str = ""
    target: str = ""
    dose: str = ""
    re_entry_h: float | None = None
    harvest_interval_days: int | None = None

    def own_problems(self) -> list[Problem]:
        """A product is named."""
        return [] if self.product.strip() else [Problem("product", say("Say what was applied."))]

    def summary(self) -> str:
        """What, against what."""
        if self.target:
            return say("{product} against {target}", product=self.product, target=self.target)
        return self.product

    def second_line(self) -> str:
        """Dose and the label's intervals."""
        days = self.harvest_interval_days
        return joined(
            self.dose,
            measured(say("re-entry after"), self.re_entry_h, 0, "h"),
            "" if days is None else say_count("no pick for {n} day", "no pick for {n} days", days),
        )
