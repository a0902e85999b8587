"""Point fits of 300 crops, against a plain logistic curve through the cumulative points of each."""

from time import perf_counter

import numpy as np
from scipy.optimize import curve_fit

from growlog.calculations.curve_fit import fit_season
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure, PickIntervals, pick_intervals
from growlog.calculations.season_prior import usual_season
from tests.calculations.simulated_seasons import SimulatedSeason, seasons


def crops() -> list[tuple[SimulatedSeason, PickIntervals]]:
    """Three hundred simulated seasons as picked by two thirds."""
    made = [(s, pick_intervals(s.picks, Measure.FRUIT, s.age_at(2 / 3))) for s in seasons(60, 1000)]
    return [(s, picks) for s, picks in made if not isinstance(picks, NotYet)]


def fit_seconds(made: list[tuple[SimulatedSeason, PickIntervals]]) -> float:
    """Logistic, Gompertz and a steady rate of each, chosen by AICc."""
    start = perf_counter()
    for season, picks in made:
        fit_season(picks, season.planned_end - picks.edges[0], usual_season())
    return perf_counter() - start


def plain_seconds(made: list[tuple[SimulatedSeason, PickIntervals]]) -> float:
    """One bounded logistic curve of each, as if the cumulative points were independent."""
    start = perf_counter()
    for _, picks in made:
        x, y = np.array(picks.edges[1:]), np.cumsum(picks.amounts)
        bounds = ([0, x[0], 1], [10 * y[-1] + 1, x[0] + 200, 100])
        curve_fit(_logistic, x, y, (y[-1] + 0.5, x.mean(), 8.0), bounds=bounds, max_nfev=2000)
    return perf_counter() - start


def ratio(rounds: int) -> float:
    """The best of each, run in turn so that a noisy minute meets both."""
    made = crops()
    fit_seconds(made[:5])
    pairs = [(fit_seconds(made), plain_seconds(made)) for _ in range(rounds)]
    return min(p[0] for p in pairs) / min(p[1] for p in pairs)


def _logistic(x: np.ndarray, height: float, middle: float, width: float) -> np.ndarray:
    return np.asarray(height / (1 + np.exp(-(x - middle) / width)))
