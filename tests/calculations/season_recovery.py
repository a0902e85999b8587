"""Forecasts of simulated seasons against what they brought: `python -m tests.calculations.season_recovery`.

The rival is the rate of the last two weeks of picking carried on, with an 80 % band of its own: the scatter of picks,
and a width factor set on the seeds of calibration, so that it too covers about four in five there.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_forecast import LONGEST_HORIZON, ForecastAsk, forecast_yield
from tests.calculations.simulated_seasons import SeasonShape, SimulatedSeason, seasons

DAY_ZERO = date(2026, 1, 1)
TEST_SEED, CALIBRATION_SEED = 1000, 50_000
SHARES = {"1/3": 1 / 3, "1/2": 1 / 2, "2/3": 2 / 3}
MISS = 2 / 0.2  # Gneiting, T. and Raftery, A. (2007) J. Am. Stat. Assoc. 102: 359-378: interval score, 80 % band
RIVAL_WIDTH = 2.0


@dataclass(frozen=True)
class Case:
    """One forecast of one season. Scores are in per cent of the season's whole yield; None: nothing was said."""

    shape: SeasonShape
    share: str
    covered: bool | None
    score: float | None
    rival_covered: bool
    rival_score: float
    reason: str = ""


def interval_score(low: float, high: float, truth: float) -> float:
    """Width and ten times what the truth lies outside by."""
    return high - low + MISS * max(0.0, low - truth, truth - high)


def rival_band(season: SimulatedSeason, age: int) -> tuple[float, float]:
    """The rate of the last 14 days carried on to the planned clearing."""
    days = min(14, age - season.first_age + 3)
    recent = sum(p.fruit_count for p in season.picks if age - days < p.age <= age)
    ahead = season.planned_end - age
    middle = recent / days * ahead
    spread = 1.2816 * (1.5 * (recent + 0.5) * (ahead / days) ** 2 + 1.5 * middle) ** 0.5 * RIVAL_WIDTH
    return max(0.0, middle - spread), middle + spread


def case(season: SimulatedSeason, share: str) -> Case:
    """The forecast at a share of the season."""
    age = season.age_at(SHARES[share])
    truth, percent = season.remaining(age), 100 / season.total
    low, high = rival_band(season, age)
    rival = (low - 0.5 <= truth <= high + 0.5, interval_score(low, high, truth) * percent)
    told = forecast_yield(season.picks, ForecastAsk(DAY_ZERO, age, LONGEST_HORIZON, season.planned_end), seed=1)
    if isinstance(told, NotYet):
        return Case(season.shape, share, None, None, *rival, told.reason)
    score = interval_score(told.low, told.high, truth) * percent
    return Case(season.shape, share, told.low <= truth <= told.high, score, *rival)


def cases(each: int, first_seed: int) -> list[Case]:
    """Every share of so many seasons of each shape."""
    return [case(season, share) for season in seasons(each, first_seed) for share in SHARES]


def line(name: str, share: str, of: Iterable[Case]) -> str:
    """A row of the table."""
    every = list(of)
    said = [c for c in every if c.covered is not None]
    if not said:
        return f"{name:24} {share:5} {len(every):5} {100:8.0f}"
    covered = 100 * sum(c.covered or False for c in said) / len(said)
    score, rival = (
        sum(s or 0.0 for s in x) / len(said) for x in ([c.score for c in said], [c.rival_score for c in said])
    )
    rivals = 100 * sum(c.rival_covered for c in said) / len(said)
    refused = 100 * (1 - len(said) / len(every))
    return f"{name:24} {share:5} {len(every):5} {refused:8.0f} {covered:8.0f} {score:8.1f} {rivals:10.0f} {rival:8.1f}"


def table(found: list[Case]) -> str:
    """Refusals, coverage and mean interval score, by shape and share; the rival's on the same cases."""
    rows = [f"{'shape':24} {'share':5} {'n':>5} {'refused%':>8} {'covered%':>8} {'score':>8} {'rival cov%':>10} score"]
    for shape in SeasonShape:
        rows += [line(shape.value, s, (c for c in found if c.shape is shape and c.share == s)) for s in SHARES]
    rows += [line("all", s, (c for c in found if c.share == s)) for s in SHARES]
    rows += [line("all", "all", found)]
    return "\n".join(rows)


if __name__ == "__main__":
    import sys

    seed = CALIBRATION_SEED if "calibration" in sys.argv else TEST_SEED
    sys.stdout.write(table(cases(60, seed)) + "\n")
