"""Feeds: what was given, and what drained."""

from dataclasses import dataclass
from typing import ClassVar

from growlog.records.display import fixed
from growlog.records.entry.base import Detail
from growlog.records.entry.wording import joined, measured
from growlog.records.problems import Problem
from growlog.words import mark, say


@dataclass(frozen=True)
class Feed(Detail):
    """A feed or plain water. mix_id: the version of the mix it used, at a strength. EC in mS/cm at 25 °C."""

    kind: ClassVar[str] = "feed"
    label: ClassVar[str] = mark("Feed")

    mix_id: str | None = None
    strength_percent: float | None = None
    volume_l: float | None = None
    ec_ms_per_cm: float | None = None
    ph: float | None = None
    drain_l: float | None = None
    drain_ec_ms_per_cm: float | None = None
    drain_ph: float | None = None
    water_only: bool = False

    def own_problems(self) -> list[Problem]:
        """Something was given; plain water has no mix; no more drains than was given."""
        found = []
        if self.volume_l is None and self.ec_ms_per_cm is None and self.ph is None and not self.water_only:
            found.append(Problem("volume_l", say("Say how much was given, or its EC or pH.")))
        if self.water_only and self.mix_id:
            found.append(Problem("mix_id", say("Plain water has no mix. Untick water only, or take the mix out.")))
        if self.volume_l is not None and self.drain_l is not None and self.drain_l > self.volume_l:
            found.append(Problem("drain_l", say("More drained than was given. Is it right?"), asks=True))
        return found

    def summary(self) -> str:
        """Feed or water, and how much."""
        word = say("Water") if self.water_only else say("Feed")
        return word if self.volume_l is None else f"{word} {fixed(self.volume_l, 1, 'L')}"

    def second_line(self) -> str:
        """EC and pH in, then the drain."""
        given = joined(measured(say("EC"), self.ec_ms_per_cm, 2, "mS/cm"), measured(say("pH"), self.ph, 1, ""))
        drained = joined(
            measured(say("drain"), self.drain_l, 1, "L"),
            measured(say("EC"), self.drain_ec_ms_per_cm, 2, ""),
            measured(say("pH"), self.drain_ph, 1, ""),
        )
        return "; ".join(p for p in (given, drained) if p)
