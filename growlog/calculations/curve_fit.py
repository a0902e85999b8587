"""Curves fitted to a season's picks: maximum likelihood on what was gathered between sessions, chosen by AICc.

Between two sessions a curve expects its rise; the picks scatter about it with a variance in proportion to what is
expected (quasi-Poisson). The sum of squared deviance residuals is then the quasi-likelihood's deviance, so that one
least-squares routine fits both growth curves through points and seasons through picks.
Sources: McCullagh, P. and Nelder, J. (1989) Generalized Linear Models, 2nd ed., chapter 9 (quasi-likelihood); Burnham,
K. and Anderson, D. (2002) Model Selection and Multimodel Inference, 2nd ed., 2.4 and 2.5 (AICc, with overdispersion).
Both from memory.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import exp, inf, log

import numpy as np

from growlog.calculations.curve_shapes import PARAMETERS, Floats, Shape, share
from growlog.calculations.pick_intervals import PickIntervals
from growlog.calculations.season_prior import EarlierSeason, SeasonPrior, usual_season

# Dispersion before anything is known, and how many intervals' worth of knowing that is. Common practice, no source.
USUAL_DISPERSION = 1.5
DISPERSION_WEIGHT = 4.0
_FINEST, _FINE = 1e-13, 1e-7  # for published digits; for picks, which scatter by per cents


@dataclass(frozen=True)
class PointFit:
    """A curve through measured points, each independent. height in y's unit; middle and width in x's."""

    shape: Shape
    height: float
    middle: float
    width: float
    residual_sum_of_squares: float


@dataclass(frozen=True)
class CurveFit:
    """A curve fitted to the picks between sessions.

    height: what the whole season would bring if the curve ran for ever (no forecast), in the measure; for a steady
    rate, what one season of season_days brings. middle_age: plant age of the highest rate; width_days. dispersion:
    variance over mean, in the measure. aicc: infinite where the curve has too many numbers for the data.
    """

    shape: Shape
    height: float
    middle_age: float
    width_days: float
    start_age: float
    season_days: float
    deviance: float
    dispersion: float
    aicc: float

    def picked_by(self, age: float) -> float:
        """What the curve has picked from the first interval's start to a plant age."""
        return self.height * float(self._share(age) - self._share(self.start_age))

    def _share(self, age: float) -> Floats:
        if self.shape is Shape.STEADY:
            return share(self.shape, (age - self.start_age) / self.season_days, 0.0, 1.0)
        return share(self.shape, age, self.middle_age, self.width_days)


def least_squares(
    residuals: Callable[[Floats], Floats], starts: Sequence[Sequence[float]], tolerance: float = _FINEST
) -> tuple[Floats, float]:
    """The numbers with the smallest sum of squares from the best of the starts, and that sum. Levenberg-Marquardt."""
    from scipy.optimize import leastsq  # MINPACK; here, since loading it takes longer than most commands run

    found = [
        np.asarray(leastsq(residuals, start, ftol=tolerance, xtol=tolerance, maxfev=600, full_output=True)[0])
        for start in starts
    ]
    sums = [float(np.sum(residuals(p) ** 2)) for p in found]
    best = sums.index(min(sums))
    return found[best], sums[best]


def fit_points(shape: Shape, x: Sequence[float], y: Sequence[float], start: tuple[float, float, float]) -> PointFit:
    """Ordinary least squares of a logistic or Gompertz curve through independent points.

    start: height, b and c of height/(1 + exp(b - c x)) or height exp(-exp(b - c x)). ValueError for fewer than three
    points and for a steady rate.
    """
    if shape is Shape.STEADY or len(x) < PARAMETERS[shape] or len(x) != len(y):
        raise ValueError(f"points {len(x)} of {len(y)} are too few for a {shape} curve")
    xs, ys = np.asarray(x, dtype=float), np.asarray(y, dtype=float)

    def residuals(p: Floats) -> Floats:
        return np.asarray(p[0] * share(shape, p[2] * xs, p[1], 1.0) - ys)

    (height, b, c), squares = least_squares(residuals, [start])
    return PointFit(shape, float(height), float(b / c), float(1 / c), squares)


def fit_season(picks: PickIntervals, season_days: float, prior: SeasonPrior) -> tuple[CurveFit, ...]:
    """All shapes fitted to a season so far, the best by AICc first; dispersion is that of the closest shape.

    season_days: from the first interval's start to the planned clearing, above 0. The prior keeps middle and width
    within what seasons do, as two more observations; a third of a season does not run wild for want of a peak.
    """
    guess = USUAL_DISPERSION * picks.unit_amount
    first = [_fit(shape, picks, season_days, prior, guess, None) for shape in Shape]
    dispersion = min(f.dispersion for f in first)
    fits = [_fit(f.shape, picks, season_days, prior, dispersion, f) for f in first]
    scored = [replace(f, dispersion=dispersion, aicc=_aicc(f, len(picks.amounts), dispersion)) for f in fits]
    return tuple(sorted(scored, key=lambda f: f.aicc))


def earlier_season(picks: PickIntervals, cleared_age: float) -> EarlierSeason:
    """Peak and width of a finished crop, for what is usual of the next: its logistic curve, in seasons."""
    season_days = max(cleared_age - picks.edges[0], 1.0)
    fit = next(f for f in fit_season(picks, season_days, usual_season()) if f.shape is Shape.LOGISTIC)
    return EarlierSeason((fit.middle_age - fit.start_age) / season_days, fit.width_days / season_days)


def deviance_residuals(observed: Floats, expected: Floats) -> Floats:
    """Signed roots of the Poisson deviance of each observation; their squares add up to it. expected above 0."""
    safe = np.where(observed > 0, observed, 1.0)
    t = (expected - safe) / safe
    small = np.abs(t) < 1e-3
    tiny = np.where(small, t, 0.0)
    near = tiny * np.sqrt(1 - 2 * tiny / 3 + tiny * tiny / 2)  # series, where the exact form loses its digits
    far = np.sign(t) * np.sqrt(np.maximum(2 * (t - np.log1p(np.where(small, 0.0, t))), 0.0))
    return np.where(observed > 0, -np.sqrt(safe) * np.where(small, near, far), -np.sqrt(2 * expected))


def _fit(
    shape: Shape, picks: PickIntervals, season_days: float, prior: SeasonPrior, dispersion: float, near: CurveFit | None
) -> CurveFit:
    edges = (np.asarray(picks.edges) - picks.edges[0]) / season_days
    amounts = np.asarray(picks.amounts)
    if shape is Shape.STEADY:
        height, middle, width = picks.total / float(edges[-1]), 0.5, 1.0
    else:
        fit = _Peaked(shape, edges, amounts, prior, dispersion)
        starts = fit.starts() if near is None else [fit.start_at(near, season_days)]
        height, middle, width = fit.numbers(least_squares(fit.residuals, starts, _FINE)[0])
    expected = np.maximum(height * np.diff(share(shape, edges, middle, width)), 1e-9)
    deviance = float(np.sum(deviance_residuals(amounts, expected) ** 2))
    pearson = float(np.sum((amounts - expected) ** 2 / np.maximum(expected, 0.2 * picks.unit_amount)))
    known = USUAL_DISPERSION * picks.unit_amount * DISPERSION_WEIGHT
    freedom = max(len(amounts) - PARAMETERS[shape], 0)
    return CurveFit(
        shape, height, picks.edges[0] + middle * season_days, width * season_days, picks.edges[0], season_days,
        deviance, (known + pearson) / (DISPERSION_WEIGHT + freedom), inf,
    )  # fmt: skip


@dataclass(frozen=True, eq=False)
class _Peaked:
    """A curve with a peak against picks, in seasons; its three numbers are log height, middle and log width."""

    shape: Shape
    edges: Floats
    amounts: Floats
    prior: SeasonPrior
    dispersion: float

    def residuals(self, p: Floats) -> Floats:
        """Of the picks, and of what is usual."""
        height, middle, width = self.numbers(p)
        whole = share(self.shape, np.append(self.edges, max(1.0, float(self.edges[-1]))), middle, width)
        rise = np.maximum(np.diff(whole), 1e-12)
        prior = self.prior
        more = prior.more_to_come(rise[-1], rise[:-1].sum(), float(self.edges[-1]))
        width_off = (log(width) - prior.log_width(self.shape)) / prior.log_width_sd
        usual = self.dispersion**0.5 * np.array([(middle - prior.peak) / prior.peak_sd, width_off, more])
        return np.concatenate([deviance_residuals(self.amounts, height * rise[:-1]), usual])

    def numbers(self, p: Floats) -> tuple[float, float, float]:
        """Height, middle, width, kept within what a double can hold."""
        return exp(min(max(float(p[0]), -30.0), 40.0)), float(p[1]), exp(min(max(float(p[2]), -6.0), 4.0))

    def starts(self) -> list[tuple[float, float, float]]:
        """From the usual peak, and from one not long ago."""
        return [
            self._start(m, self.prior.log_width(self.shape)) for m in (self.prior.peak, 0.7 * float(self.edges[-1]))
        ]

    def start_at(self, fit: CurveFit, season_days: float) -> tuple[float, float, float]:
        """From an earlier fit."""
        return self._start((fit.middle_age - fit.start_age) / season_days, log(fit.width_days / season_days))

    def _start(self, middle: float, log_width: float) -> tuple[float, float, float]:
        risen = float(np.diff(share(self.shape, self.edges[[0, -1]], middle, exp(log_width)))[0])
        return log(self.amounts.sum() / max(risen, 1e-9)), middle, log_width


def _aicc(fit: CurveFit, n: int, dispersion: float) -> float:
    k = PARAMETERS[fit.shape] + 1  # the dispersion is a number too
    return fit.deviance / dispersion + 2 * k + 2 * k * (k + 1) / (n - k - 1) if n - k - 1 > 0 else inf
