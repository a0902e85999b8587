"""The electricity meter of a room, read to hold the estimate against the bill."""

from dataclasses import dataclass
from typing import ClassVar

from growlog.records.display import fixed
from growlog.records.entry.base import Detail
from growlog.records.problems import Problem
from growlog.words import mark, say


@dataclass(frozen=True)
class MeterReading(Detail):
    """What the meter showed. starts_anew: the meter was changed or set back, so nothing is counted before it."""

    kind: ClassVar[str] = "meter"
    label: ClassVar[str] = mark("Electricity meter")

    meter_kwh: float | None = None
    starts_anew: bool = False

    def own_problems(self) -> list[Problem]:
        """The meter was read."""
        if self.meter_kwh is None:
            return [Problem("meter_kwh", say("Say what the meter showed."))]
        return []

    def summary(self) -> str:
        """The reading."""
        return say("Meter {reading}", reading=fixed(self.meter_kwh or 0.0, 1, "kWh"))

    def second_line(self) -> str:
        """Whether it starts anew."""
        return say("counting starts anew") if self.starts_anew else ""
