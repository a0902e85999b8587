"""How much of a grower's own pH product moves the pH, learned from what was added before; never a blind dose."""

from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from growlog.calculations.allowed import require, require_above
from growlog.calculations.explained_figure import COMMON_PRACTICE, Figure, Input, Sure
from growlog.words import mark

FEWEST_CORRECTIONS = 3
# A move smaller than a pen meter can tell from its own drift says nothing.
SMALLEST_MOVE = 0.1
STEP_PH = 0.1

_METHOD = mark(
    "For each time the pH was moved: what was added, divided by the litres in the tank and by the pH moved, times a"
    " step of 0.1. The middle one counts, beside the smallest and the largest. pH bends with the water's alkalinity:"
    " add half, stir, wait, measure, then the rest."
)


@dataclass(frozen=True)
class PhCorrection:
    """A pH that was moved. amount: of the product, in mL or g; volume_l: in the tank then."""

    amount: float
    volume_l: float
    ph_before: float
    ph_after: float

    @property
    def moved(self) -> float:
        """pH after less pH before; below 0 for an acid."""
        return self.ph_after - self.ph_before


@dataclass(frozen=True)
class PhSteps:
    """mL or g per L of tank for a step of 0.1 pH: the middle one, the smallest and the largest of so many."""

    per_l: float
    low: float
    high: float
    count: int

    def for_move(self, volume_l: float, ph_now: float, ph_wanted: float) -> tuple[float, float, float]:
        """What a move took so far in a tank of this volume: middle, smallest, largest, in mL or g. The first part to
        add is at most half of the smallest; then the meter rules.

        volume_l: above 0 to 5000; pH 0 to 14; ValueError outside.
        """
        require_above("volume_l", volume_l, 0, 5000, "L")
        require("ph_now", ph_now, 0, 14)
        require("ph_wanted", ph_wanted, 0, 14)
        steps = abs(ph_wanted - ph_now) / STEP_PH * volume_l
        return self.per_l * steps, self.low * steps, self.high * steps


def learn_ph_steps(corrections: Sequence[PhCorrection], *, down: bool) -> PhSteps | None:
    """The steps of one product, downwards or upwards; None ("not yet") below three corrections that moved that way.

    Moves below 0.1 are left out. Amounts above 0, volumes above 0 to 5000 L, pH 0 to 14; ValueError outside.
    Common practice, no source.
    """
    for c in corrections:
        require_above("amount", c.amount, 0, 100_000)
        require_above("volume_l", c.volume_l, 0, 5000, "L")
        require("ph_before", c.ph_before, 0, 14)
        require("ph_after", c.ph_after, 0, 14)
    took = _per_step(corrections, down)
    if len(took) < FEWEST_CORRECTIONS:
        return None
    return PhSteps(median(took), min(took), max(took), len(took))


def explain_ph_steps(product: str, measure: str, corrections: Sequence[PhCorrection], *, down: bool) -> Figure:
    """mL or g (measure) per L for a step of 0.1 pH with its range; no value before three corrections."""
    found = learn_ph_steps(corrections, down=down)
    took = _per_step(corrections, down)
    inputs = tuple(Input(product, amount, f"{measure}/L") for amount in took)
    value, low, high = (None, None, None) if found is None else (found.per_l, found.low, found.high)
    key = "ph-down" if down else "ph-up"
    return Figure(key, value, f"{measure}/L", inputs, _METHOD, COMMON_PRACTICE, Sure.ESTIMATE, low=low, high=high)


def _per_step(corrections: Sequence[PhCorrection], down: bool) -> list[float]:
    moves = [(c, -c.moved if down else c.moved) for c in corrections]
    return [c.amount / c.volume_l / (moved / STEP_PH) for c, moved in moves if moved >= SMALLEST_MOVE - 1e-9]
