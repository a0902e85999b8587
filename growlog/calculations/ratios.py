"""Ratios of a feed's elements as growers compare them."""

from collections.abc import Mapping
from dataclasses import dataclass

from growlog.calculations.nutrients import AMMONIUM_N, NITRATE_N


@dataclass(frozen=True)
class Mark:
    """Where an element stands on a range of its target. share: 0 at low, 1 at high, outside beyond them."""

    element: str
    mg_per_l: float
    low: float
    high: float

    @property
    def share(self) -> float | None:
        """None for a range of no width."""
        width = self.high - self.low
        return (self.mg_per_l - self.low) / width if width > 0 else None


def parts_of(element_mg_per_l: Mapping[str, float], names: tuple[str, ...], of: str) -> tuple[float, ...] | None:
    """The named elements as parts of one of them, by weight, such as N, P and K with P as 1; None without that one."""
    base = element_mg_per_l.get(of, 0.0)
    return tuple(element_mg_per_l.get(name, 0.0) / base for name in names) if base > 0 else None


def ammonium_share_percent(nutrients_mg_per_l: Mapping[str, float]) -> float | None:
    """Ammonium in per cent of nitrate and ammonium nitrogen; None where there is neither."""
    ammonium = nutrients_mg_per_l.get(AMMONIUM_N, 0.0)
    both = ammonium + nutrients_mg_per_l.get(NITRATE_N, 0.0)
    return 100 * ammonium / both if both > 0 else None
