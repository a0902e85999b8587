"""Round steps of a weight axis in the unit that the user reads, placed in grams."""

from dataclasses import dataclass

from growlog.calculations.units import G_PER_OUNCE, G_PER_POUND
from growlog.desktop.board.curve_steps import round_ticks
from growlog.desktop.board.wording import THIN, short_number
from growlog.words import units


@dataclass(frozen=True)
class WeightUnit:
    """A unit of the axis and how many grams it has."""

    name: str
    grams: float

    def text(self, weight_g: float) -> str:
        """A tick's words."""
        return f"{short_number(weight_g / self.grams, 2)}{THIN}{self.name}"


def weight_unit(highest_g: float) -> WeightUnit:
    """g and from 1 kg on kg; or oz and from 1 lb on lb."""
    if units() == "us":
        return WeightUnit("oz", G_PER_OUNCE) if highest_g < G_PER_POUND else WeightUnit("lb", G_PER_POUND)
    return WeightUnit("g", 1.0) if highest_g < 1000 else WeightUnit("kg", 1000.0)


def weight_ticks(highest_g: float, most: int) -> list[float]:
    """At most so many ticks in grams, round in the unit shown."""
    unit = weight_unit(highest_g)
    return [tick * unit.grams for tick in round_ticks(highest_g / unit.grams, most)]
