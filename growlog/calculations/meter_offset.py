"""What the grower's own meter reads above or below the estimate, learned from readings after mixing."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from growlog.calculations.explained_figure import COMMON_PRACTICE, Figure, Input, Sure
from growlog.words import mark

FEWEST_READINGS = 3
_METHOD = mark(
    "For each reading after mixing: what the meter showed, divided by what the mix was estimated to read. The middle"
    " one counts; a single slip does not move it."
)


@dataclass(frozen=True)
class MeterOffset:
    """ratio: reading over estimate, the middle one of the readings. spread: the middle distance from it."""

    ratio: float
    spread: float
    readings: int

    def expected_reading(self, estimate_ms_per_cm: float) -> float:
        """What this meter should show for an estimate, in mS/cm."""
        return estimate_ms_per_cm * self.ratio


def learn_meter_offset(pairs: Sequence[tuple[float, float]]) -> MeterOffset | None:
    """The offset from pairs of (estimate, reading), both above 0 mS/cm; None below three of them.

    A ratio, since cells and their calibration err in proportion; medians, so that one slip does not count.
    Common practice, no source. ValueError for a figure of 0 or less.
    """
    for name, value in ((n, v) for pair in pairs for n, v in zip(("estimate", "reading"), pair, strict=True)):
        if not value > 0:
            raise ValueError(f"{name} {value:g} is outside above 0 mS/cm")
    if len(pairs) < FEWEST_READINGS:
        return None
    ratios = [reading / estimate for estimate, reading in pairs]
    middle = median(ratios)
    return MeterOffset(middle, median(abs(ratio - middle) for ratio in ratios), len(ratios))


def explain_meter_offset(pairs: Sequence[tuple[float, float]]) -> Figure:
    """Reading over estimate with its spread about it; no value below three pairs. Pairs as for learn_meter_offset."""
    offset = learn_meter_offset(pairs)
    inputs = tuple(Input(f"{estimate:.2f}", round(reading, 3), "mS/cm") for estimate, reading in pairs)
    value, low, high = (None, None, None) if offset is None else _about(offset)
    return Figure("meter-offset", value, "", inputs, _METHOD, COMMON_PRACTICE, Sure.ESTIMATE, low=low, high=high)


def _about(offset: MeterOffset) -> tuple[float, float, float]:
    return offset.ratio, offset.ratio - offset.spread, offset.ratio + offset.spread
