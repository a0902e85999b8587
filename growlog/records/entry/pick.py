"""Picks: marketable fruit, each weighed fruit by itself where it was weighed, and culls with their cause."""

from dataclasses import dataclass
from enum import StrEnum
from typing import ClassVar

from growlog.records.display import fixed, weight
from growlog.records.entry.base import Detail
from growlog.records.entry.plant_work import tag_problems
from growlog.records.entry.wording import joined
from growlog.records.problems import Problem, check_quantity
from growlog.words import mark, say, say_count


class CullCause(StrEnum):
    """Why a fruit was not marketable."""

    MISSHAPEN = "misshapen"
    BLOSSOM_END_ROT = "blossom-end-rot"
    CRACKED = "cracked"
    OVERSIZE = "oversize"
    DAMAGED = "damaged"

    @property
    def label(self) -> str:
        """The cause in words, to be translated where shown."""
        return _CAUSE_LABELS[self]


_CAUSE_LABELS = {
    CullCause.MISSHAPEN: mark("misshapen"),
    CullCause.BLOSSOM_END_ROT: mark("blossom-end rot"),
    CullCause.CRACKED: mark("cracked"),
    CullCause.OVERSIZE: mark("oversize"),
    CullCause.DAMAGED: mark("damaged"),
}


@dataclass(frozen=True)
class Cull:
    """Fruit picked but not marketable. weight_g: of all of them, None if not weighed."""

    cull_count: int
    cause: CullCause
    weight_g: float | None = None


@dataclass(frozen=True)
class TaggedFruit:
    """A picked fruit that carried a tag. weight_g: repeats its line among the single weights, None if not weighed."""

    tag: str
    weight_g: float | None = None


@dataclass(frozen=True)
class Pick(Detail):
    """A pick. total_weight_g None: unweighed, or the sum of single weights where these cover all fruit.

    tagged: those of the fruit, marketable or culled, whose flower carried a tag.
    """

    kind: ClassVar[str] = "pick"
    label: ClassVar[str] = mark("Pick")

    fruit_count: int = 0
    total_weight_g: float | None = None
    weights_g: tuple[float, ...] = ()
    culls: tuple[Cull, ...] = ()
    tagged: tuple[TaggedFruit, ...] = ()

    @property
    def marketable_weight_g(self) -> float | None:
        """The weight of the marketable fruit as weighed, None where it was not."""
        if self.total_weight_g is not None:
            return self.total_weight_g
        if self.weights_g and len(self.weights_g) == self.fruit_count:
            return sum(self.weights_g)
        return 0.0 if self.fruit_count == 0 else None

    @property
    def culled_count(self) -> int:
        """All culls of this pick."""
        return sum(c.cull_count for c in self.culls)

    def own_problems(self) -> list[Problem]:
        """Something was picked; single weights fit the count and the total."""
        found = [p for w in self.weights_g for p in check_quantity("weight_g", w, "weights_g")]
        for cull in self.culls:
            found += check_quantity("cull_count", cull.cull_count, "culls")
            found += check_quantity("weight_g", cull.weight_g, "culls")
        if not self.fruit_count and not self.culls:
            found.append(Problem("fruit_count", say("Nothing was picked or culled: say how many.")))
        found += [p for t in self.tagged for p in check_quantity("weight_g", t.weight_g, "tagged")]
        if self.fruit_count < 0:  # said by its limit; nothing else can be told from it
            return found
        found += tag_problems([t.tag for t in self.tagged], self.fruit_count + self.culled_count, "tagged")
        return found + self._weight_problems()

    def _weight_problems(self) -> list[Problem]:
        singles = sum(self.weights_g)
        if len(self.weights_g) > self.fruit_count:
            return [Problem("weights_g", say("There are more single weights than fruit."))]
        if self.total_weight_g is None:
            return []
        if self.fruit_count == 0:
            return [Problem("total_weight_g", say("A weight without fruit: say how many."))]
        if not self.weights_g:
            return []
        all_weighed = len(self.weights_g) == self.fruit_count
        if singles > self.total_weight_g + 0.5 or (all_weighed and abs(singles - self.total_weight_g) > 0.5):
            sentence = say("The single weights add up to {sum}, not to the total.", sum=fixed(singles, 1, "g"))
            return [Problem("total_weight_g", sentence)]
        return []

    def summary(self) -> str:
        """How many, how heavy."""
        if not self.fruit_count:
            return say_count("Culled {n}", "Culled {n}", self.culled_count)
        known = self.marketable_weight_g
        count = say("Picked {n}", n=self.fruit_count)
        return joined(count, say("not weighed") if known is None else weight(known))

    def second_line(self) -> str:
        """Single weights, then culls."""
        singles = ""
        if 1 < len(self.weights_g) <= 8:
            singles = " + ".join(weight(w) for w in self.weights_g)
        culls = joined(*(f"{c.cull_count} {say(c.cause.label)}" for c in self.culls))
        tags = say("tags {tags}", tags=", ".join(t.tag for t in self.tagged)) if self.tagged else ""
        return joined(singles, say("culled: {culls}", culls=culls) if culls else "", tags)
