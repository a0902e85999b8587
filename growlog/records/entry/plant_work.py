"""Work on the plant: training, pollination, fruit checks and potting-on."""

from collections.abc import Iterable
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
    """Females pollinated by hand and males seen open; or trusses vibrated for perfect flowers.

    tags: the tag numbers hung on single flowers, so that each can be followed to its fruit.
    """

    kind: ClassVar[str] = "pollination"
    label: ClassVar[str] = mark("Pollination")

    females_pollinated: int | None = None
    males_open: int | None = None
    trusses_vibrated: int | None = None
    way: PollinationWay | None = None
    tags: tuple[str, ...] = ()

    def own_problems(self) -> list[Problem]:
        """Something was counted; no more tags than flowers, each once."""
        if self.females_pollinated is None and self.males_open is None and self.trusses_vibrated is None:
            return [Problem("females_pollinated", say("Nothing is stated yet: fill in at least one field."))]
        return tag_problems(self.tags, self.females_pollinated)

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
        tags = say("tags {tags}", tags=", ".join(self.tags)) if self.tags else ""
        return joined(show_males, say(self.way.label) if self.way else "", tags)


class FlowerFate(StrEnum):
    """What a tagged flower came to, as a look saw it; a picked one is seen at its pick."""

    SET = "set"
    DROPPED = "dropped"

    @property
    def label(self) -> str:
        """The fate in words, to be translated where shown."""
        return _FATE_LABELS[self]


_FATE_LABELS = {FlowerFate.SET: mark("set"), FlowerFate.DROPPED: mark("dropped")}


@dataclass(frozen=True)
class TagSeen:
    """A tagged flower and what it had come to."""

    tag: str
    fate: FlowerFate


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
    tags_seen: tuple[TagSeen, ...] = ()

    def own_problems(self) -> list[Problem]:
        """Something was counted (nought counts); each tag is seen once."""
        if all(v in (None, ()) for v in vars(self).values()):
            return [Problem("hanging", say("Nothing is stated yet: fill in at least one field."))]
        return tag_problems([t.tag for t in self.tags_seen], None, "tags_seen")

    def summary(self) -> str:
        """How many hang."""
        if self.hanging is not None:
            return say_count("{n} fruit hanging", "{n} fruit hanging", self.hanging)
        return say("Fruit check")

    def second_line(self) -> str:
        """Open, set, dropped, thinned; then the tags."""
        tags = (f"{t.tag} {say(t.fate.label)}" for t in self.tags_seen)
        return joined(*(
            say(template, n=n)
            for template, n in (
                (mark("females open {n}"), self.females_open),
                (mark("set {n}"), self.fruit_set),
                (mark("dropped {n}"), self.dropped),
                (mark("thinned {n}"), self.thinned),
            )
            if n is not None
        ), *tags)  # fmt: skip


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


def tag_problems(tags: Iterable[str], flower_count: int | None, field: str = "tags") -> list[Problem]:
    """Problems of tag numbers: each is written and stands once, and no more than there are flowers."""
    listed = [t.strip() for t in tags]
    if not all(listed):
        return [Problem(field, say("A tag without a number."))]
    if len(set(listed)) < len(listed):
        return [Problem(field, say("The same tag stands twice."))]
    if flower_count is not None and len(listed) > flower_count:
        return [Problem(field, say("There are more tags than flowers."))]
    return []
