"""Work on the plant: training, pollination, fruit checks and potting-on."""

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from growlog.records.entry.base import Detail, say_something
from growlog.records.entry.wording import counted, joined, measured
from growlog.records.problems import Problem
from growlog.words import mark, say, say_count


@dataclass(frozen=True)
class Training(Detail):
    """Leaves and shoots taken, tips stopped, stems tied, plants staked."""

    kind: ClassVar[str] = "training"
    label: ClassVar[str] = mark("Training")

    old_leaves_removed: int | None = None
    side_shoots_removed: int | None = None
    shoots_stopped: int | None = None
    stems_tied: int | None = None
    plants_staked: int | None = None

    def own_problems(self) -> list[Problem]:
        """Something was done."""
        return say_something(self, "old_leaves_removed")

    def summary(self) -> str:
        """The first thing done."""
        return self._parts()[0] if self._parts() else say("Training")

    def second_line(self) -> str:
        """The rest."""
        return joined(*self._parts()[1:])

    def _parts(self) -> list[str]:
        parts = (
            say_count("{n} old leaf removed", "{n} old leaves removed", self.old_leaves_removed or 0)
            if self.old_leaves_removed else "",
            say_count("{n} side shoot removed", "{n} side shoots removed", self.side_shoots_removed or 0)
            if self.side_shoots_removed else "",
            counted("growing tips stopped: {n}", self.shoots_stopped),
            counted("stems tied: {n}", self.stems_tied),
            counted("plants staked: {n}", self.plants_staked),
        )  # fmt: skip
        return [p for p in parts if p]


class PollinationWay(StrEnum):
    """How pollen was brought."""

    BRUSH = "brush"
    MALE_FLOWER = "male-flower"
    SWAB = "swab"
    SHAKEN = "shaken"
    OTHER = "other"

    @property
    def label(self) -> str:
        """The way in words, to be translated where shown."""
        return _WAY_LABELS[self]


_WAY_LABELS = {
    PollinationWay.BRUSH: mark("brush"),
    PollinationWay.MALE_FLOWER: mark("male flower"),
    PollinationWay.SWAB: mark("swab"),
    PollinationWay.SHAKEN: mark("shaken or vibrated"),
    PollinationWay.OTHER: mark("another way"),
}


@dataclass(frozen=True)
class Pollination(Detail):
    """Females pollinated by hand and males seen open; or trusses vibrated for perfect flowers."""

    kind: ClassVar[str] = "pollination"
    label: ClassVar[str] = mark("Pollination")

    females_pollinated: int | None = None
    males_open: int | None = None
    trusses_vibrated: int | None = None
    way: PollinationWay | None = None

    def own_problems(self) -> list[Problem]:
        """Something was counted."""
        if self.females_pollinated is None and self.males_open is None and self.trusses_vibrated is None:
            return [Problem("females_pollinated", say("Nothing is stated yet: fill in at least one field."))]
        return []

    def summary(self) -> str:
        """What was pollinated."""
        if self.females_pollinated is not None:
            return say_count("Pollinated {n} flower", "Pollinated {n} flowers", self.females_pollinated)
        if self.trusses_vibrated is not None:
            return say_count("Vibrated {n} truss", "Vibrated {n} trusses", self.trusses_vibrated)
        return say("Males open: {n}", n=self.males_open or 0)

    def second_line(self) -> str:
        """Males open, and how."""
        males = "" if self.males_open is None else say_count("{n} male open", "{n} males open", self.males_open)
        show_males = males if self.females_pollinated is not None else ""
        return joined(show_males, say(self.way.label) if self.way else "")


@dataclass(frozen=True)
class FruitCheck(Detail):
    """What a look at the flowers and fruitlets saw. Fruit set is computed from these, never from picks."""

    kind: ClassVar[str] = "fruit-check"
    label: ClassVar[str] = mark("Fruit check")

    females_open: int | None = None
    fruit_set: int | None = None
    dropped: int | None = None
    thinned: int | None = None
    hanging: int | None = None

    def own_problems(self) -> list[Problem]:
        """Something was counted (nought counts)."""
        if all(v is None for v in vars(self).values()):
            return [Problem("hanging", say("Nothing is stated yet: fill in at least one field."))]
        return []

    def summary(self) -> str:
        """How many hang."""
        if self.hanging is not None:
            return say_count("{n} fruit hanging", "{n} fruit hanging", self.hanging)
        return say("Fruit check")

    def second_line(self) -> str:
        """Open, set, dropped, thinned."""
        return joined(*(
            say(template, n=n)
            for template, n in (
                (mark("females open {n}"), self.females_open),
                (mark("set {n}"), self.fruit_set),
                (mark("dropped {n}"), self.dropped),
                (mark("thinned {n}"), self.thinned),
            )
            if n is not None
        ))  # fmt: skip


@dataclass(frozen=True)
class PottingOn(Detail):
    """Moved into a larger container."""

    kind: ClassVar[str] = "potting-on"
    label: ClassVar[str] = mark("Potting-on")

    container_l: float | None = None
    medium: str = ""

    def summary(self) -> str:
        """Into what."""
        into = measured("", self.container_l, 1, "L")
        return say("Potted on, {container}", container=into) if into else say("Potted on")

    def second_line(self) -> str:
        """The medium."""
        return self.medium
