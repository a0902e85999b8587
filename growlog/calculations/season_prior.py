"""What is usually known of a picking season before it is over: when it peaks and how wide it is, as weak beliefs."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import log
from statistics import fmean, pstdev

import numpy as np
import numpy.typing as npt

from growlog.calculations.curve_shapes import Floats, Shape
from growlog.calculations.explained_figure import COMMON_PRACTICE
from growlog.words import say


@dataclass(frozen=True)
class SeasonPrior:
    """Weak beliefs about a season's shape, in shares of the time from first pick to planned clearing.

    peak: of the highest rate, with its standard deviation. width: of a logistic curve, with the standard deviation of
    its logarithm. more_sd: of the logarithm of how many times the mean rate so far the rest may bring. source: where
    it comes from, in words for the grower.
    """

    peak: float
    peak_sd: float
    width: float
    log_width_sd: float
    source: str
    more_sd: float = 0.5

    def more_to_come(self, rise_ahead: npt.ArrayLike, risen: npt.ArrayLike, gone: float) -> Floats:
        """How far a curve promises more than the present mean rate carried on, in standard deviations; 0 for less.

        rise_ahead, risen: shares of the curve ahead and so far. gone: the share of the time that is over, 0 to 1.
        """
        steady = max(1.0 - gone, 0.01) / max(gone, 0.01)
        ratio = np.maximum(rise_ahead, 1e-12) / np.maximum(risen, 1e-12)
        return np.asarray(np.maximum(np.log(ratio / steady), 0.0) / self.more_sd)

    def log_width(self, shape: Shape) -> float:
        """The logarithm of the usual width; a Gompertz curve as wide at half its height has a larger number."""
        return log(self.width * (1.44 if shape is Shape.GOMPERTZ else 1.0))


@dataclass(frozen=True)
class EarlierSeason:
    """A finished crop's fitted peak and width as shares of its time from first pick to clearing."""

    peak: float
    width: float


def usual_season() -> SeasonPrior:
    """A season that peaks somewhat before its middle, believed only weakly. Common practice, no source."""
    return SeasonPrior(0.45, 0.25, 0.16, 0.5, COMMON_PRACTICE)


def season_like(earlier: Sequence[EarlierSeason]) -> SeasonPrior:
    """The usual season moved towards the grower's own finished crops, as if the usual one were two crops more."""
    usual = usual_season()
    possible = [e for e in earlier if e.width > 0 and 0 <= e.peak <= 1.5]
    if not possible:
        return usual
    pull = len(possible) / (len(possible) + 2)
    peaks, widths = [e.peak for e in possible], [log(e.width) for e in possible]
    return SeasonPrior(
        peak=(1 - pull) * usual.peak + pull * fmean(peaks),
        peak_sd=max(0.12, (1 - pull) * usual.peak_sd + pull * pstdev(peaks)),
        width=2.718281828459045 ** ((1 - pull) * log(usual.width) + pull * fmean(widths)),
        log_width_sd=max(0.25, (1 - pull) * usual.log_width_sd + pull * pstdev(widths)),
        source=say("your earlier crops ({n}), and common practice", n=len(possible)),
    )
