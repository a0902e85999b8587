"""What was done at one crop in a session: an immutable state; each step gives the next one."""

from dataclasses import dataclass, field, replace
from datetime import time
from typing import Any

from growlog.records.entry import Cull, CullCause, FruitCheck
from growlog.records.limits import limit
from growlog.records.problems import check_quantity
from growlog.words import say

POLLINATING = ("females_pollinated", "trusses_vibrated")
COUNTERS = (*POLLINATING, "males_open", "old_leaves_removed", "side_shoots_removed")
FRUIT_CHECKS = ("females_open", "fruit_set", "dropped", "thinned", "hanging")


class CannotTally(ValueError):
    """A step that cannot be taken; str() is the sentence for the grower. The state before it stands."""


@dataclass(frozen=True)
class CropTally:
    """fruit: each in the order picked, its weight in g, None where it was only counted.

    pollinated_at: local time of the first pollination; time_typed: the grower wrote that time.
    minutes: labour given to this crop.
    """

    crop_id: str
    fruit: tuple[float | None, ...] = ()
    culls: tuple[Cull, ...] = ()
    females_pollinated: int = 0
    trusses_vibrated: int = 0
    males_open: int = 0
    old_leaves_removed: int = 0
    side_shoots_removed: int = 0
    pollinated_at: time | None = None
    time_typed: bool = False
    fruit_check: FruitCheck = field(default_factory=FruitCheck)
    note: str = ""
    minutes: int | None = None

    @property
    def is_worked(self) -> bool:
        """Whether anything but minutes stands here."""
        return replace(self, minutes=None) != CropTally(self.crop_id)

    @property
    def is_touched(self) -> bool:
        """Whether anything stands here."""
        return self != CropTally(self.crop_id)

    @property
    def weights_g(self) -> tuple[float, ...]:
        """The weights of the weighed fruit, in the order picked."""
        return tuple(w for w in self.fruit if w is not None)

    @property
    def unweighed_count(self) -> int:
        """Fruit that were only counted."""
        return len(self.fruit) - len(self.weights_g)

    @property
    def total_g(self) -> float:
        """The weight of the weighed fruit together."""
        return sum(self.weights_g)

    @property
    def mean_g(self) -> float | None:
        """The mean weight of the weighed fruit, None where none was weighed."""
        return self.total_g / len(self.weights_g) if self.weights_g else None

    @property
    def culled_count(self) -> int:
        """Culls of all causes."""
        return sum(c.cull_count for c in self.culls)

    def cull_count(self, cause: CullCause) -> int:
        """Culls of one cause."""
        return sum(c.cull_count for c in self.culls if c.cause is cause)

    def picked(self, weight_g: float | None = None) -> "CropTally":
        """One more fruit, weighed or only counted. CannotTally for a weight outside the limits."""
        _refuse("weight_g", weight_g)
        _refuse("fruit_count", len(self.fruit) + 1)
        return replace(self, fruit=(*self.fruit, None if weight_g is None else float(weight_g)))

    def struck(self, place: int) -> "CropTally":
        """Without the fruit at a place."""
        return replace(self, fruit=self.fruit[:place] + self.fruit[place + 1 :])

    def struck_last(self) -> "CropTally":
        """Without the last fruit, weighed or not. CannotTally if there is none."""
        if not self.fruit:
            raise CannotTally(say("There is no fruit to strike."))
        return replace(self, fruit=self.fruit[:-1])

    def with_unweighed(self, count: int) -> "CropTally":
        """With so many fruit that were only counted; what is too many goes from the last one on."""
        _refuse("fruit_count", len(self.weights_g) + count)
        if count < 0:
            raise CannotTally(say("There is none to take back."))
        fruit = list(self.fruit)
        for place in range(len(fruit) - 1, -1, -1):
            if fruit.count(None) <= count:
                break
            if fruit[place] is None:
                del fruit[place]
        return replace(self, fruit=(*fruit, *[None] * (count - fruit.count(None))))

    def culled(self, cause: CullCause, by: int = 1) -> "CropTally":
        """More or fewer culls of a cause. CannotTally below none."""
        counts = {c.cause: c.cull_count for c in self.culls}
        after = counts.get(cause, 0) + by
        if after < 0:
            raise CannotTally(
                say("No fruit was culled as {cause}: there is none to take back.", cause=say(cause.label))
            )
        if after:
            _refuse("cull_count", after)
        counts[cause] = after
        return replace(self, culls=tuple(Cull(counts[c], c) for c in CullCause if counts.get(c)))

    def counted(self, counter: str, to: int, at: time | None) -> "CropTally":
        """With a counter at a count. at: the local time now, which the first pollination keeps as its own."""
        if to < 0:
            raise CannotTally(say("{what}: there is none to take back.", what=say(limit(counter).label)))
        _refuse(counter, to)
        counted: CropTally = _changed(self, **{counter: to})
        return counted._in_time(at)

    def with_time(self, at: time | None) -> "CropTally":
        """With the pollination's time as the grower writes it."""
        return replace(self, pollinated_at=at, time_typed=at is not None)

    def without_own_time(self) -> "CropTally":
        """Without the pollination's time, unless the grower wrote it."""
        return self if self.time_typed else replace(self, pollinated_at=None)

    def checked(self, name: str, count: int | None) -> "CropTally":
        """With a count of the fruit check; None: not looked at, which is another thing than 0."""
        _refuse(name, count)
        return replace(self, fruit_check=_changed(self.fruit_check, **{name: count}))

    def with_minutes(self, minutes: int | None) -> "CropTally":
        """With so many minutes of labour given to it."""
        _refuse("labour_minutes", minutes)
        return replace(self, minutes=minutes)

    def _in_time(self, at: time | None) -> "CropTally":
        if not any(getattr(self, name) for name in POLLINATING):
            return self.without_own_time()
        return self if self.pollinated_at is not None else replace(self, pollinated_at=at)


def _changed(record: Any, **values: Any) -> Any:
    return replace(record, **values)


def _refuse(key: str, value: float | None) -> None:
    firm = [p.sentence for p in check_quantity(key, value) if not p.asks]
    if firm:
        raise CannotTally(" ".join(firm))
