"""Fruit set and the days from flower to pick, estimated together from what was pollinated, picked, checked and tagged.

Each flower sets with one chance and, if it does, is ready a number of days later (lognormal); it is picked in the first
session from then on. Sessions see the sum of many flowers, so picks are expected, not traced: their likelihood is
Poisson's, and the intervals are mended for what is known of its variance (sandwich estimate: White, H. (1982) Maximum
likelihood estimation of misspecified models, Econometrica 50: 1-25, from memory). Flowers too young to be picked count
as open, as in survival analysis.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import exp

import numpy as np

from growlog.calculations.curve_shapes import Floats
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.calculations.flower_likelihood import FlowerLikelihood, ready_by
from growlog.calculations.flower_records import Flowers, FlowerSource, SetCheck, TaggedFlower, UsualLag, explained_picks
from growlog.calculations.not_yet import NotYet
from growlog.calculations.yield_curve import PickPoint
from growlog.words import say, say_count, show_number

LEAST_FLOWERS, LEAST_PICKED = 5, 3
EIGHTY_PERCENT = 1.2816
SOURCE = "White, H. (1982) Maximum likelihood estimation of misspecified models, Econometrica 50: 1-25 (from memory)"


@dataclass(frozen=True)
class Interval:
    """An estimate with its 80 % interval."""

    value: float
    low: float
    high: float


@dataclass(frozen=True, eq=False)
class FruitSet:
    """Set rate, 0 to 1, and days from flower to ready fruit, with 80 % intervals.

    flowers: reported up to the last session; open_flowers: about how many of them are still too young to tell.
    unexplained: fruit picked that no reported flower can have brought. numbers, covariance: logit of the rate,
    logarithms of the median days and of their spread, for drawing.
    """

    source: FlowerSource
    rate: Interval
    days: Interval
    flowers: int
    picked: int
    open_flowers: float
    unexplained: int
    last_session_age: int
    numbers: Floats
    covariance: Floats
    sentences: tuple[str, ...]
    figures: tuple[Figure, ...]


@dataclass(frozen=True)
class FlowerRecords:
    """All that is known of a crop's flowers: counts, and where kept tags and fruit checks. picks: culls count too."""

    flowers: Sequence[Flowers]
    picks: Sequence[PickPoint]
    tags: Sequence[TaggedFlower] = ()
    checks: Sequence[SetCheck] = ()
    source: FlowerSource = FlowerSource.POLLINATED


def estimate_fruit_set(records: FlowerRecords, usual: UsualLag, as_of_age: int) -> FruitSet | NotYet:
    """The estimates from what was known by a plant age, or why there are none. Never raises on odd records.

    usual: the crop's usual days from flower to pick, believed weakly. A tagged flower is not counted in flowers too,
    nor its fruit in picks.
    """
    flowers = sorted((f for f in records.flowers if f.age <= as_of_age and f.count > 0), key=lambda f: f.age)
    picks = sorted((p for p in records.picks if p.age <= as_of_age), key=lambda p: p.age)
    tags = [t for t in records.tags if t.flower_age <= as_of_age]
    sessions = explained_picks(flowers, picks, usual)
    last = max([s.age for s in sessions] + [t.picked_age or 0 for t in tags], default=0)
    known = FlowerLikelihood(flowers, sessions, tags, records.checks, usual, as_of_age)
    reason = _why_not(known, usual, last)
    if reason:
        return NotYet(reason)
    numbers, covariance = known.maximum()
    return _told(known, numbers, covariance, last, records.source)


def _why_not(known: FlowerLikelihood, usual: UsualLag, last: int) -> str:
    reported = sum(f.count for f in known.flowers) + len(known.tags)
    picked = sum(s.explained for s in known.sessions) + sum(t.picked_age is not None for t in known.tags)
    unexplained = sum(s.unexplained for s in known.sessions)
    old_enough = sum(f.count for f in known.flowers if last - f.age >= usual.low_days) + len(known.tags)
    if not reported:
        return say("No flower was written down, so fruit set cannot be told.")
    if unexplained > picked:
        return say(
            "{n} of {all} fruit were picked without a flower written down that could have brought them.",
            n=unexplained, all=unexplained + picked,
        )  # fmt: skip
    if old_enough < LEAST_FLOWERS:
        return say("Only {n} flowers are old enough to tell whether they set; it takes {least}.", n=old_enough,
                   least=LEAST_FLOWERS)  # fmt: skip
    if picked < LEAST_PICKED:
        return say("Only {n} fruit of the flowers written down were picked so far; it takes {least}.", n=picked,
                   least=LEAST_PICKED)  # fmt: skip
    return ""


def _told(known: FlowerLikelihood, numbers: Floats, covariance: Floats, last: int, source: FlowerSource) -> FruitSet:
    errors = np.sqrt(np.maximum(np.diag(covariance), 0.0))
    rate = _interval(numbers[0], errors[0], lambda x: 1 / (1 + exp(-x)))
    longer = exp(0.5 * exp(2 * float(numbers[2])))  # mean over median of a lognormal
    days = _interval(numbers[1], errors[1], lambda x: exp(x) * longer)
    flowers = sum(f.count for f in known.flowers if f.age <= last)
    too_young = sum(
        f.count * (1 - float(ready_by(last - f.age, exp(numbers[1]), exp(numbers[2])))) for f in known.flowers
        if f.age <= last
    )  # fmt: skip
    picked = sum(s.explained for s in known.sessions)
    unexplained = sum(s.unexplained for s in known.sessions)
    given = (
        Input("flowers", flowers + len(known.tags)), Input("picked of them", picked), Input("tags", len(known.tags)),
        Input("still open", round(float(too_young), 1)), Input("unexplained fruit", unexplained),
        Input("usual days", f"{known.usual.low_days:g}-{known.usual.high_days:g} ({known.usual.source})", "d"),
    )  # fmt: skip
    method = say(
        "The set rate and the days from flower to pick under which the picks of each session are most likely, leaning "
        "weakly on the crop's usual days. Fruit is picked in the first session after it is ready; flowers too young "
        "count as open, not as failed; fruit that no flower can have brought is left out. Days without a pick, more "
        "than ever before between two, count as a session that found nothing."
    )
    figures = (
        Figure(
            "fruit-set", 100 * rate.value, "%", given, method, SOURCE, Sure.ESTIMATE, 100 * rate.low, 100 * rate.high
        ),
        Figure("flower-to-pick", days.value, "d", given, method, SOURCE, Sure.ESTIMATE, days.low, days.high),
    )
    words = _sentences(rate, days, float(too_young), unexplained)
    return FruitSet(
        source, rate, days, flowers, picked, float(too_young), unexplained, last, numbers, covariance, words, figures
    )


def _interval(value: float, error: float, shown: Callable[[float], float]) -> Interval:
    spread = EIGHTY_PERCENT * float(error)
    return Interval(shown(float(value)), shown(float(value) - spread), shown(float(value) + spread))


def _sentences(rate: Interval, days: Interval, too_young: float, unexplained: int) -> tuple[str, ...]:
    low, high = show_number(100 * rate.low, 0), show_number(100 * rate.high, 0)
    first, last = show_number(days.low, 1), show_number(days.high, 1)
    said = [
        say("Of 100 flowers {low} to {high} set; the fruit is ready {first} to {last} days later.", low=low, high=high,
            first=first, last=last),
    ]  # fmt: skip
    if too_young >= 0.5:
        n = round(too_young)
        said.append(say_count("{n} flower is too young to tell.", "{n} flowers are too young to tell.", n))
    if unexplained:
        said.append(
            say_count(
                "{n} fruit was picked that no flower written down can have brought.",
                "{n} fruit were picked that no flower written down can have brought.",
                unexplained,
            )
        )
    return tuple(said)
