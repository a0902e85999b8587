"""What the picks say in plain figures: totals, culls with causes, fruit weight and its trend, rates, early yield."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from statistics import fmean

from growlog.calculations.explained_figure import COMMON_PRACTICE, DEFINITION, Figure, Input, Sure
from growlog.calculations.yield_curve import PickPoint, YieldSoFar, yield_so_far
from growlog.words import say

EARLY_DAYS = 14


@dataclass(frozen=True)
class PickSession:
    """What was picked at one plant age: marketable fruit, their weight in g (None: not weighed), culls by cause."""

    age: int
    fruit_count: int
    weight_g: float | None
    culls: Mapping[str, int] = field(default_factory=dict)

    @property
    def point(self) -> PickPoint:
        """As a point of the yield curve."""
        return PickPoint(self.age, self.fruit_count, self.weight_g, sum(self.culls.values()))


@dataclass(frozen=True)
class FruitWeightTrend:
    """Change of the mean fruit weight, in g a week, with its standard error, over so many weighed sessions."""

    g_per_week: float
    standard_error: float | None
    sessions: int

    @property
    def is_clear(self) -> bool:
        """Whether the change is more than twice its standard error."""
        return self.standard_error is not None and abs(self.g_per_week) > 2 * self.standard_error


@dataclass(frozen=True)
class YieldFacts:
    """A crop's yield in figures; weights in g, estimated_g the part that was never on a scale. None: not to be told.

    fruit_per_week, g_per_week: from the first to the last session, without what the first one found waiting.
    early_count, early_g: marketable, of the first two weeks of picking (early_is_over: whether they are past).
    notes: what to know of the weights.
    """

    fruit_count: int
    weight_g: float
    estimated_g: float
    culled_count: int
    culls: Mapping[str, int]
    marketable_percent: float | None
    mean_fruit_g: float | None
    trend: FruitWeightTrend | None
    sessions: int
    fruit_per_session: float | None
    days_between_sessions: float | None
    longest_gap_days: int | None
    fruit_per_week: float | None
    g_per_week: float | None
    early_count: int
    early_g: float
    early_is_over: bool
    notes: tuple[str, ...]


@dataclass(frozen=True)
class Inputs:
    """What the crop used so far, None where not known. plants_alive: those alive at the last pick; minutes: labour."""

    plants_alive: int | None = None
    floor_m2: float | None = None
    electricity_kwh: float | None = None
    feed_l: float | None = None
    labour_minutes: float | None = None


@dataclass(frozen=True)
class YieldRatios:
    """The yield against what it took; None where something is missing or nought."""

    fruit_per_plant: float | None
    g_per_plant: float | None
    g_per_m2: float | None
    kwh_per_kg: float | None
    g_per_litre_feed: float | None
    g_per_labour_hour: float | None


def yield_facts(sessions: Iterable[PickSession], up_to_age: int | None = None) -> YieldFacts:
    """All facts up to and with a plant age. Entries of one age are one session; a session may hold culls only."""
    seen = sorted((s for s in sessions if up_to_age is None or s.age <= up_to_age), key=lambda s: s.age)
    points, ages = [s.point for s in seen], sorted({s.age for s in seen})
    whole, uncounted_g = yield_so_far(points), _uncounted_g(seen)
    first = min((s.age for s in seen if s.fruit_count or s.weight_g), default=None)
    last_seen = up_to_age if up_to_age is not None else max(ages, default=0)
    two_weeks = [] if first is None else [s for s in seen if s.age < first + EARLY_DAYS]
    early = yield_so_far(s.point for s in two_weeks)
    gaps = [b - a for a, b in pairwise(ages)]
    all_fruit = whole.fruit_count + whole.culled_count
    by_week, g_by_week = _per_week(seen, whole.mean_fruit_g)
    return YieldFacts(
        fruit_count=whole.fruit_count,
        weight_g=whole.weight_g + uncounted_g,
        estimated_g=whole.estimated_g,
        culled_count=whole.culled_count,
        culls=_culls(seen),
        marketable_percent=100 * whole.fruit_count / all_fruit if all_fruit else None,
        mean_fruit_g=whole.mean_fruit_g,
        trend=fruit_weight_trend(seen),
        sessions=len(ages),
        fruit_per_session=whole.fruit_count / len(ages) if ages else None,
        days_between_sessions=fmean(gaps) if gaps else None,
        longest_gap_days=max(gaps, default=None),
        fruit_per_week=by_week,
        g_per_week=g_by_week,
        early_count=early.fruit_count,
        early_g=early.weight_g + _uncounted_g(two_weeks),
        early_is_over=first is not None and last_seen >= first + EARLY_DAYS - 1,
        notes=_notes(whole, uncounted_g),
    )


def fruit_weight_trend(sessions: Iterable[PickSession]) -> FruitWeightTrend | None:
    """The slope of mean fruit weight on plant age, each weighed session counted by its fruit; None below three.

    Weighted least squares; by definition.
    """
    weighed = [s for s in sessions if s.fruit_count and s.weight_g]
    if len({s.age for s in weighed}) < 3:
        return None
    weights = [float(s.fruit_count) for s in weighed]
    weeks = [s.age / 7 for s in weighed]
    means = [(s.weight_g or 0.0) / s.fruit_count for s in weighed]
    total = sum(weights)
    mid_x = sum(w * x for w, x in zip(weights, weeks, strict=True)) / total
    mid_y = sum(w * y for w, y in zip(weights, means, strict=True)) / total
    across = sum(w * (x - mid_x) ** 2 for w, x in zip(weights, weeks, strict=True))
    slope = sum(w * (x - mid_x) * (y - mid_y) for w, x, y in zip(weights, weeks, means, strict=True)) / across
    left = sum(
        w * (y - mid_y - slope * (x - mid_x)) ** 2 for w, x, y in zip(weights, weeks, means, strict=True)
    ) / (len(weighed) - 2)  # fmt: skip
    return FruitWeightTrend(slope, (left / across) ** 0.5, len(weighed))


def yield_ratios(facts: YieldFacts, used: Inputs) -> YieldRatios:
    """Marketable yield per plant alive, per m², per litre of feed and per labour hour, and kWh per kg. By definition.

    Figures by weight are None where no fruit was weighed.
    """
    weight = facts.weight_g or None
    return YieldRatios(
        fruit_per_plant=_over(facts.fruit_count, used.plants_alive),
        g_per_plant=_over(weight, used.plants_alive),
        g_per_m2=_over(weight, used.floor_m2),
        kwh_per_kg=_over(used.electricity_kwh, weight and weight / 1000),
        g_per_litre_feed=_over(weight, used.feed_l),
        g_per_labour_hour=_over(weight, used.labour_minutes and used.labour_minutes / 60),
    )


def explain_facts(facts: YieldFacts) -> tuple[Figure, ...]:
    """The figures that are more than a sum, with their explanations."""
    fruit = Input("marketable", facts.fruit_count, say("fruit"))
    culled = Input("culled", facts.culled_count, say("fruit"))
    found = [
        _figure("marketable-percent", facts.marketable_percent, "%", (fruit, culled),
                say("Marketable fruit over all fruit picked, culls included.")),
        _figure("mean-fruit-weight", facts.mean_fruit_g, "g", (fruit,),
                say("The weight of the weighed marketable fruit over their number; unweighed fruit do not count.")),
        _figure("fruit-per-week", facts.fruit_per_week, say("fruit/week"), (fruit,),
                say("Fruit of all sessions but the first, over the days from the first session to the last, times "
                    "seven: what the first session found had grown before.")),
        Figure("early-yield", facts.early_g, "g", (Input("fruit", facts.early_count),),
               say("Marketable yield of the first 14 days of picking, the day of the first pick included."),
               COMMON_PRACTICE, Sure.COMMON_PRACTICE),
    ]  # fmt: skip
    if facts.trend is not None:
        error = "-" if facts.trend.standard_error is None else round(facts.trend.standard_error, 2)
        given = (Input("weighed sessions", facts.trend.sessions), Input("standard error", error, "g/week"))
        found.append(
            _figure("fruit-weight-trend", facts.trend.g_per_week, "g/week", given,
                    say("A straight line through the mean fruit weight of each weighed session, each counted by its "
                        "fruit."))
        )  # fmt: skip
    return tuple(found)


def explain_ratios(facts: YieldFacts, used: Inputs) -> tuple[Figure, ...]:
    """The ratios with their explanations; None where something is missing."""
    ratios = yield_ratios(facts, used)
    grams, fruit = Input("marketable", round(facts.weight_g, 1), "g"), Input("marketable", facts.fruit_count)
    rows = (
        ("fruit-per-plant", ratios.fruit_per_plant, say("fruit/plant"), fruit, used.plants_alive, ""),
        ("weight-per-plant", ratios.g_per_plant, say("g/plant"), grams, used.plants_alive, ""),
        ("weight-per-m2", ratios.g_per_m2, "g/m²", grams, used.floor_m2, "m²"),
        ("kwh-per-kg", ratios.kwh_per_kg, "kWh/kg", grams, used.electricity_kwh, "kWh"),
        ("weight-per-litre", ratios.g_per_litre_feed, "g/L", grams, used.feed_l, "L"),
        ("weight-per-hour", ratios.g_per_labour_hour, "g/h", grams, used.labour_minutes, "min"),
    )
    method = say(
        "Marketable yield so far, estimates included, over what it took; plants are those alive at the last pick."
    )
    return tuple(
        _figure(key, value, unit, (amount, Input("used", "-" if by is None else by, by_unit)), method)
        for key, value, unit, amount, by, by_unit in rows
    )


def _figure(key: str, value: float | None, unit: str, given: Sequence[Input], method: str) -> Figure:
    return Figure(key, value, unit, tuple(given), method, DEFINITION, Sure.PUBLISHED)


def _over(amount: float | None, by: float | None) -> float | None:
    return None if amount is None or not by else amount / by


def _culls(sessions: Iterable[PickSession]) -> dict[str, int]:
    causes: dict[str, int] = {}
    for session in sessions:
        for cause, count in session.culls.items():
            causes[cause] = causes.get(cause, 0) + count
    return causes


def _per_week(entries: Sequence[PickSession], mean_g: float | None) -> tuple[float | None, float | None]:
    ages = [s.age for s in entries if s.fruit_count or s.weight_g]
    if not ages or ages[-1] == ages[0]:
        return None, None
    weeks = (ages[-1] - ages[0]) / 7
    later = [s for s in entries if s.age > ages[0]]
    fruit = sum(s.fruit_count for s in later) / weeks
    if mean_g is None and any(s.weight_g is None and s.fruit_count for s in later):
        return fruit, None
    grams = sum(s.fruit_count * (mean_g or 0.0) if s.weight_g is None else s.weight_g for s in later)
    return fruit, grams / weeks if grams else None


def _uncounted_g(entries: Iterable[PickSession]) -> float:
    return sum(s.weight_g or 0.0 for s in entries if not s.fruit_count)


def _notes(whole: YieldSoFar, uncounted_g: float) -> tuple[str, ...]:
    said = []
    if whole.unknown_count:
        said.append(say("No fruit was weighed yet, so there is no yield by weight."))
    elif whole.estimated_g:
        said.append(say("Unweighed fruit count with the mean weight of those weighed by then."))
    if uncounted_g:
        said.append(say("Some picks have a weight but no count: they are in the weight, not in the number of fruit."))
    return tuple(said)
