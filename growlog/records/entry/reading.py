"""Readings of the air, the solution, the plant and the light."""

from dataclasses import dataclass
from typing import ClassVar

from growlog.records.display import fixed
from growlog.records.entry.base import Detail, say_something
from growlog.records.entry.wording import joined, measured
from growlog.records.problems import Problem
from growlog.words import mark, say


@dataclass(frozen=True)
class Reading(Detail):
    """What instruments showed at one time.

    canopy_lux: of a lux meter at the canopy, where no PPFD was read, under lamp_kind (a key of the table of light
    factors).
    """

    kind: ClassVar[str] = "reading"
    label: ClassVar[str] = mark("Reading")

    air_temperature_c: float | None = None
    relative_humidity_percent: float | None = None
    solution_temperature_c: float | None = None
    plant_height_cm: float | None = None
    container_weight_g: float | None = None
    canopy_ppfd_umol: float | None = None
    canopy_lux: float | None = None
    lamp_kind: str = ""

    def own_problems(self) -> list[Problem]:
        """At least one instrument was read; a share is not a per cent."""
        found = []
        if all(v in (None, "") for name, v in vars(self).items() if name != "lamp_kind"):
            found.append(Problem("air_temperature_c", say("Nothing is stated yet: fill in at least one field.")))
        humidity = self.relative_humidity_percent
        if humidity is not None and 0 < humidity <= 1:
            sentence = say("Humidity is in per cent, so this is nearly no water at all. Is it right?")
            found.append(Problem("relative_humidity_percent", sentence, asks=True))
        return found

    def summary(self) -> str:
        """Air first, then what else was read."""
        air = joined(
            measured("", self.air_temperature_c, 1, "°C"),
            measured("", self.relative_humidity_percent, 0, say("% RH")),
        )
        return say("Air {values}", values=air) if air else self._others() or say("Reading")

    def second_line(self) -> str:
        """What was read beside the air."""
        has_air = self.air_temperature_c is not None or self.relative_humidity_percent is not None
        return self._others() if has_air else ""

    def _others(self) -> str:
        weight_kg = None if self.container_weight_g is None else self.container_weight_g / 1000
        return joined(
            measured(say("solution"), self.solution_temperature_c, 1, "°C"),
            measured(say("height"), self.plant_height_cm, 0, "cm"),
            measured(say("container"), weight_kg, 2, "kg"),
            measured(say("canopy"), self.canopy_ppfd_umol, 0, "µmol/m²/s"),
            measured(say("canopy"), self.canopy_lux, 0, "lx"),
        )


@dataclass(frozen=True)
class Calibration(Detail):
    """A meter set against a reference solution. meter: "EC" or "pH"."""

    kind: ClassVar[str] = "calibration"
    label: ClassVar[str] = mark("Meter calibration")

    meter: str = "EC"
    reference_value: float | None = None
    reading_before: float | None = None

    def own_problems(self) -> list[Problem]:
        """A meter is named."""
        return [] if self.meter.strip() else say_something(self, "meter")

    def summary(self) -> str:
        """Which meter."""
        return say("{meter} meter calibrated", meter=self.meter)

    def second_line(self) -> str:
        """What it showed in which reference."""
        reference = "" if self.reference_value is None else fixed(self.reference_value, 2, "")
        before = "" if self.reading_before is None else fixed(self.reading_before, 2, "")
        return joined(
            say("reference {value}", value=reference) if reference else "",
            say("read {value} before", value=before) if before else "",
        )
