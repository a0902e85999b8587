"""Curves through points and picks: published values, another likelihood, and no wild heights."""

import numpy as np
import pytest
from scipy.optimize import curve_fit, minimize
from scipy.special import expit
from scipy.stats import poisson

from growlog.calculations.curve_fit import deviance_residuals, earlier_season, fit_points, fit_season
from growlog.calculations.curve_shapes import Shape, share
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure, PickIntervals, pick_intervals
from growlog.calculations.season_prior import EarlierSeason, SeasonPrior, season_like, usual_season
from tests.calculations.simulated_seasons import SeasonShape, season

# NIST Statistical Reference Datasets, Rat42 (Ratkowsky 1983, pp. 61 and 88): pasture yield by growing time.
RAT42_X = [9, 14, 21, 28, 42, 57, 63, 70, 79]
RAT42_Y = [8.93, 10.8, 18.59, 22.33, 39.35, 56.11, 61.73, 64.62, 67.08]
RAT42_CERTIFIED = (7.2462237576e01, 2.6180768402e00, 6.7359200066e-02)
RAT42_SQUARES = 8.0565229338e00
NO_BELIEF = SeasonPrior(0.45, 1e6, 0.16, 1e6, "none", more_sd=1e6)


def rising_and_falling(total: float, middle: float, width: float, sessions: int = 20) -> PickIntervals:
    """Whole fruit of a logistic season of 80 days."""
    edges = np.linspace(40.0, 120.0, sessions + 1)
    rise = total * np.diff(share(Shape.LOGISTIC, edges, middle, width))
    return PickIntervals(Measure.FRUIT, tuple(edges), tuple(np.round(rise)), 4.0, sessions, 1.0)


@pytest.mark.parametrize("start", [(100, 1, 0.1), (75, 2.5, 0.07)])
def test_the_certified_values_of_a_published_growth_curve_are_met_to_six_digits(
    start: tuple[float, float, float],
) -> None:
    fit = fit_points(Shape.LOGISTIC, RAT42_X, RAT42_Y, start)
    found = (fit.height, fit.middle / fit.width, 1 / fit.width)
    assert found == pytest.approx(RAT42_CERTIFIED, rel=1e-6)
    assert fit.residual_sum_of_squares == pytest.approx(RAT42_SQUARES, rel=1e-9)


def test_a_gompertz_curve_through_the_same_points_agrees_with_another_routine() -> None:
    fit = fit_points(Shape.GOMPERTZ, RAT42_X, RAT42_Y, (80, 1, 0.04))
    other, _ = curve_fit(
        lambda x, a, b, c: a * np.exp(-np.exp(b - c * x)), RAT42_X, RAT42_Y, (80, 1, 0.04), method="trf"
    )
    assert (fit.height, fit.middle / fit.width, 1 / fit.width) == pytest.approx(tuple(other), rel=1e-4)


def test_a_steady_rate_through_points_and_too_few_points_are_refused() -> None:
    with pytest.raises(ValueError, match="too few"):
        fit_points(Shape.LOGISTIC, [1, 2], [1, 2], (1, 1, 1))
    with pytest.raises(ValueError, match="steady"):
        fit_points(Shape.STEADY, RAT42_X, RAT42_Y, (1, 1, 1))


@pytest.mark.parametrize("shape", [Shape.LOGISTIC, Shape.GOMPERTZ])
def test_picks_between_sessions_give_the_numbers_of_an_independent_likelihood(shape: Shape) -> None:
    picks = rising_and_falling(150, 75, 9)
    fit = next(f for f in fit_season(picks, 80, NO_BELIEF) if f.shape is shape)
    edges, amounts = np.array(picks.edges), np.array(picks.amounts)

    def minus_log_likelihood(p: np.ndarray) -> float:  # SciPy's Poisson, in days rather than seasons
        z = (edges - p[1]) / np.exp(p[2])
        whole = expit(z) if shape is Shape.LOGISTIC else np.exp(-np.exp(-z))
        return -float(poisson.logpmf(amounts, np.exp(p[0]) * np.diff(whole)).sum())

    other = minimize(
        minus_log_likelihood,
        [5.0, 70.0, 2.0],
        method="Nelder-Mead",
        options={"xatol": 1e-8, "fatol": 1e-10, "maxiter": 4000},
    )
    assert fit.height == pytest.approx(np.exp(other.x[0]), rel=1e-4)
    assert fit.middle_age == pytest.approx(other.x[1], rel=1e-4)
    assert fit.width_days == pytest.approx(np.exp(other.x[2]), rel=1e-4)


def test_squared_residuals_add_up_to_the_deviance_and_change_sign_smoothly() -> None:
    observed, expected = np.array([3.0, 0.0, 8.0, 5.0]), np.array([2.0, 1.5, 8.0001, 9.0])
    residuals = deviance_residuals(observed, expected)
    deviance = 2 * (poisson.logpmf(observed, np.maximum(observed, 1e-300)) - poisson.logpmf(observed, expected))
    assert residuals**2 == pytest.approx(deviance, abs=1e-7)
    assert list(np.sign(residuals)) == [1, -1, -1, -1]


def test_aicc_prefers_the_curve_that_the_picks_were_made_from() -> None:
    assert fit_season(rising_and_falling(400, 72, 7), 80, usual_season())[0].shape is Shape.LOGISTIC
    edges = tuple(np.linspace(40.0, 120.0, 21))
    even = PickIntervals(Measure.FRUIT, edges, (3.0, 4.0) * 10, 4.0, 20, 1.0)
    assert fit_season(even, 80, usual_season())[0].shape is Shape.STEADY


@pytest.mark.parametrize("shape", list(SeasonShape))
def test_a_third_of_a_season_never_gives_a_wild_height(shape: SeasonShape) -> None:
    for seed in range(8):
        made = season(shape, 90_000 + seed)
        picks = pick_intervals(made.picks, Measure.FRUIT, made.age_at(1 / 3))
        if isinstance(picks, NotYet):
            continue
        for fit in fit_season(picks, made.planned_end - picks.edges[0], usual_season()):
            assert picks.total * 0.5 < fit.height < picks.total * 12


def test_the_fitted_curve_has_picked_about_what_was_picked() -> None:
    picks = rising_and_falling(150, 75, 9)
    for fit in fit_season(picks, 80, usual_season()):
        assert fit.picked_by(picks.edges[0]) == 0
        assert fit.picked_by(120) == pytest.approx(picks.total, rel=0.03)


def test_the_growers_own_crops_move_what_is_usual_towards_themselves() -> None:
    own = earlier_season(rising_and_falling(150, 64, 9), 120)
    assert own.peak == pytest.approx(0.3, abs=0.03)
    assert own.width == pytest.approx(9 / 80, rel=0.1)
    leaning = season_like([own, own])
    assert own.peak < leaning.peak < usual_season().peak
    assert leaning.peak_sd < usual_season().peak_sd
    assert "2" in leaning.source
    assert season_like([EarlierSeason(0.3, 0.0)]) == usual_season()


def test_the_same_season_by_weight_has_the_same_peak() -> None:
    made = season(SeasonShape.LOGISTIC, 91_000)
    by_count, by_weight = (pick_intervals(made.picks, m) for m in Measure)
    assert isinstance(by_count, PickIntervals)
    assert isinstance(by_weight, PickIntervals)
    fits = [fit_season(p, made.planned_end - p.edges[0], usual_season()) for p in (by_count, by_weight)]
    peaks = [next(f.middle_age for f in of if f.shape is Shape.LOGISTIC) for of in fits]
    assert peaks[0] == pytest.approx(peaks[1], abs=3)
