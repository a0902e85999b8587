"""Targets of the grower: what a feed is to hold, as ranges by element."""

from dataclasses import dataclass
from datetime import datetime

from growlog.records.problems import Problem, check_line, check_quantity
from growlog.words import say


@dataclass(frozen=True)
class TargetRange:
    """The range of an element, such as N, NH4-N or Ca, in mg/L of feed. None: open at that end."""

    element: str
    low_mg_per_l: float | None = None
    high_mg_per_l: float | None = None


@dataclass(frozen=True)
class FeedTarget:
    """A named target of the grower's own."""

    id: str
    name: str
    ranges: tuple[TargetRange, ...] = ()
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it: a name, at least one range, and no range upside down."""
        found = [] if self.name.strip() else [Problem("name", say("Give the target a name."))]
        found += check_line("name", self.name)
        if not self.ranges:
            found.append(Problem("ranges", say("Say of at least one element how much the feed is to hold.")))
        for stated in self.ranges:
            found += check_quantity("water_mg_per_l", stated.low_mg_per_l, "ranges")
            found += check_quantity("water_mg_per_l", stated.high_mg_per_l, "ranges")
            low, high = stated.low_mg_per_l, stated.high_mg_per_l
            if low is not None and high is not None and low > high:
                sentence = say("The range of {element} ends below its beginning.", element=stated.element)
                found.append(Problem("ranges", sentence))
        return found
