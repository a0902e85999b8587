"""Fruit to come in the next days, as a band: from the flowers that are still out, or else from the recent rate."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from math import ceil, floor

import numpy as np
import numpy.typing as npt

from growlog.calculations.curve_shapes import Floats
from growlog.calculations.explained_figure import COMMON_PRACTICE, Figure, Input, Sure
from growlog.calculations.flower_records import FLOWER_WORDS, Flowers
from growlog.calculations.fruit_set import SOURCE, FruitSet
from growlog.calculations.late_picks import late_picks
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.calculations.plant_age import day_at
from growlog.calculations.spoken_amount import amount_band
from growlog.calculations.yield_curve import PickPoint
from growlog.words import say, say_count, show_day

DRAWS = 1000
RECENT_DAYS = 14
USUAL_DISPERSION = 1.5  # variance over mean of picks; common practice, no source
BAND = (0.1, 0.5, 0.9)

Counts = npt.NDArray[np.int64]


class Basis(StrEnum):
    """What the band rests on."""

    FLOWERS = "flowers"
    RECENT_RATE = "recent-rate"


@dataclass(frozen=True)
class ComingAsk:
    """As of which plant age, and for how many days (1 to 60). planned_end_age: no pick is foreseen after it.

    flowers_go_on: whether new flowers are reckoned with at the rate of the last 14 days.
    """

    day_zero: date
    as_of_age: int
    days: int = 14
    planned_end_age: int | None = None
    flowers_go_on: bool = True


@dataclass(frozen=True)
class DayBand:
    """Marketable fruit up to and with a plant age from now on: 80 % band and middle."""

    age: int
    low: int
    middle: int
    high: int


@dataclass(frozen=True)
class ComingPicks:
    """The band of each day, cumulative; its last day is what is said. why_rate: why flowers could not be used."""

    basis: Basis
    days: tuple[DayBand, ...]
    sentence: str
    basis_sentence: str
    figure: Figure
    why_rate: str = ""


def coming_picks(
    ask: ComingAsk, flowers: Iterable[Flowers], picks: Iterable[PickPoint], fruit_set: FruitSet | NotYet, seed: int,
    every: Sequence[Flowers] = (),
) -> ComingPicks | NotYet:  # fmt: skip
    """Marketable fruit of the next days from what was known as of a plant age; the same seed gives the same band.

    flowers: those that may still bring a pick. every: all that were written down, to hold the last two
    weeks' picks against in words.
    """
    points = [p for p in picks if p.age <= ask.as_of_age]
    out = [f for f in flowers if f.age <= ask.as_of_age and f.count > 0]
    days = min(ask.days, 60, (ask.planned_end_age or 10_000) - ask.as_of_age)
    if days < 1:
        return NotYet(say("The planned clearing has come: there is no time left for another pick."))
    rng = np.random.default_rng(seed)
    if isinstance(fruit_set, FruitSet):
        late = late_picks([f for f in every if f.age <= ask.as_of_age], points, fruit_set, ask.as_of_age)
        daily = _from_flowers(ask, days, out, fruit_set, _marketable_share(points), rng)
        words = " ".join(w for w in (_flower_words(fruit_set, out, ask), late.sentence) if w)
        return _told(ask, daily, rng, words, fruit_set, "")
    recent = _recent(points, ask.as_of_age)
    if isinstance(recent, NotYet):
        return recent
    words = say("From the rate of the last {n} days, not from flowers.", n=recent[1])
    return _told(ask, _from_rate(recent, days, rng), rng, words, None, fruit_set.reason)


def _from_flowers(
    ask: ComingAsk, days: int, flowers: Sequence[Flowers], known: FruitSet, marketable: float, rng: np.random.Generator
) -> Counts:
    """Marketable fruit of each future (row) by the end of each day (column)."""
    root = np.linalg.cholesky(known.covariance + 1e-9 * np.eye(3))
    numbers = known.numbers + rng.standard_normal((DRAWS, 3)) @ root.T
    rate = 1 / (1 + np.exp(-np.clip(numbers[:, 0], -8, 8)))
    spread = np.exp(np.clip(numbers[:, 2], -3.5, 0.5))
    ages = np.array([f.age for f in flowers] + list(range(ask.as_of_age + 1, ask.as_of_age + days + 1)), dtype=float)
    counts = np.array([f.count for f in flowers] + [0] * days)
    new = _new_flowers(ask, days, flowers, rng)
    told = np.concatenate([np.broadcast_to(counts[: len(flowers)], (DRAWS, len(flowers))), new], axis=1)
    ends = np.concatenate([[known.last_session_age], np.arange(ask.as_of_age + 1, ask.as_of_age + days + 1)])
    by_end = _ready(ends[:, None, None] - ages[None, None, :], numbers[:, 1], spread)
    chances = rate[None, :, None] * np.diff(by_end, axis=0) * marketable
    return np.asarray(np.cumsum(_picked(told.copy(), np.clip(chances, 0.0, 1.0), rng), axis=1))


def _picked(left: Counts, chances: Floats, rng: np.random.Generator) -> Counts:
    """Fruit of each future (row) on each day (column): no flower is picked twice. chances: of a day, future, flower."""
    missed = np.ones_like(chances[0])
    picked = np.zeros((len(left), len(chances)), dtype=np.int64)
    for day, chance in enumerate(chances):
        today = rng.binomial(left, np.clip(chance / np.maximum(missed, 1e-9), 0.0, 1.0))
        left -= today
        missed -= chance
        picked[:, day] = today.sum(axis=1)
    return picked


def _ready(since: Floats, log_median: Floats, spread: Floats) -> Floats:
    """As flower_likelihood.ready_by, for each future; rows: day, future, flower."""
    from scipy.special import ndtr  # here, since loading it takes longer than most commands run

    return np.asarray(ndtr((np.log(np.maximum(since, 1e-9)) - log_median[None, :, None]) / spread[None, :, None]))


def _new_flowers(ask: ComingAsk, days: int, flowers: Sequence[Flowers], rng: np.random.Generator) -> Counts:
    if not ask.flowers_go_on:
        return np.zeros((DRAWS, days), dtype=np.int64)
    recent = sum(f.count for f in flowers if f.age > ask.as_of_age - RECENT_DAYS)
    a_day = rng.gamma(recent / USUAL_DISPERSION + 1e-9, USUAL_DISPERSION, DRAWS) / RECENT_DAYS
    return np.asarray(rng.poisson(a_day[:, None], (DRAWS, days)))


def _recent(picks: Sequence[PickPoint], as_of_age: int) -> tuple[int, int] | NotYet:
    """Marketable fruit of the last days, and how many days those are."""
    first = min((p.age for p in picks if p.fruit_count), default=None)
    if first is None and any(p.culled_count for p in picks):
        return NotYet(say("All fruit picked so far was culled, so no marketable fruit can be foreseen."))
    if first is None:
        return NotYet(say("Nothing was picked yet and no flower can be reckoned with."))
    if len({p.age for p in picks if p.fruit_count}) < 2:
        return NotYet(say("One picking day so far: how fast more follow cannot be told from it."))
    days = min(RECENT_DAYS, max(as_of_age - first, 1))
    recent = sum(p.fruit_count for p in picks if p.age > as_of_age - days)
    return recent, days


def _from_rate(recent: tuple[int, int], days: int, rng: np.random.Generator) -> Counts:
    fruit, over = recent
    rate = rng.gamma(fruit / USUAL_DISPERSION + 0.3, USUAL_DISPERSION, DRAWS) / over
    each = rng.poisson(rng.gamma(np.maximum(rate, 1e-9)[:, None] / 0.5, 0.5, (DRAWS, days)))
    return np.asarray(np.cumsum(each, axis=1))


def _marketable_share(picks: Sequence[PickPoint]) -> float:
    good, culled = sum(p.fruit_count for p in picks), sum(p.culled_count for p in picks)
    return good / (good + culled) if good else 1.0


def _flower_words(known: FruitSet, flowers: Sequence[Flowers], ask: ComingAsk) -> str:
    said = say("From the {flowers}, their set rate and their days to pick.", flowers=say(FLOWER_WORDS[known.source]))
    recent = sum(f.count for f in flowers if f.age > ask.as_of_age - RECENT_DAYS)
    if not ask.flowers_go_on or not recent:
        return said
    more = say_count(
        "New flowers are reckoned with as in the last 14 days ({n}).",
        "New flowers are reckoned with as in the last 14 days ({n}).",
        recent,
    )
    return f"{said} {more}"


def _told(
    ask: ComingAsk,
    cumulative: Counts,
    rng: np.random.Generator,
    basis_words: str,
    known: FruitSet | None,
    why_rate: str,
) -> ComingPicks:
    # Whole fruit lie on steps: spread evenly over each, so that the band is no wider than it says.
    bands = np.quantile(cumulative + rng.uniform(-0.5, 0.5, (DRAWS, 1)), BAND, axis=0)
    days = tuple(_day_band(ask.as_of_age + 1 + i, *of_day) for i, of_day in enumerate(bands.T.tolist()))
    end, until = days[-1], day_at(ask.day_zero, days[-1].age)
    amount = amount_band(end.low, end.high, Measure.FRUIT)
    sentence = say("{amount} by {day}.", amount=amount, day=show_day(until))
    given: tuple[Input, ...] = (Input("until", until.isoformat(), "", until),)
    if known is not None:
        given += (Input("fruit set", round(100 * known.rate.value, 1), "%"),
                  Input("flower to pick", round(known.days.value, 1), "d"))  # fmt: skip
    method = say("{basis} The band holds in four cases out of five.", basis=basis_words)
    source = COMMON_PRACTICE if known is None else SOURCE
    figure = Figure("coming-picks", end.middle, say("fruit"), given, method, source, Sure.ESTIMATE, end.low, end.high,
                    day_at(ask.day_zero, ask.as_of_age))  # fmt: skip
    basis = Basis.RECENT_RATE if known is None else Basis.FLOWERS
    return ComingPicks(basis, days, sentence, basis_words, figure, why_rate)


def _day_band(age: int, low: float, middle: float, high: float) -> DayBand:
    """The whole fruit within the band."""
    first, last = max(0, ceil(low)), max(0, floor(high))
    return DayBand(age, min(first, last), min(max(round(middle), first), max(first, last)), max(first, last))
