"""A crop's season so far as it was known on a day: read once, then worked out without the database."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property
from zlib import crc32

from growlog.calculations.coming_picks import ComingAsk, ComingPicks, coming_picks
from growlog.calculations.fruit_set import FlowerRecords, FruitSet, estimate_fruit_set
from growlog.calculations.not_yet import NotYet
from growlog.calculations.pick_intervals import Measure
from growlog.calculations.plant_age import age_on, day_at
from growlog.calculations.season_prior import SeasonPrior
from growlog.calculations.yield_curve import PickPoint
from growlog.calculations.yield_facts import PickSession, YieldFacts, yield_facts
from growlog.calculations.yield_forecast import ForecastAsk, YieldForecast, forecast_yield
from growlog.records.crop import Crop, Plant
from growlog.records.cultivar import Cultivar, FloweringHabit
from growlog.records.entry import Entry, Pick
from growlog.services.entries import own_entries
from growlog.services.picks import pick_points
from growlog.services.yield_view.earlier_crops import EarlierCrops, earlier_crops
from growlog.services.yield_view.flowers import every_flower, flower_records, still_out
from growlog.services.yield_view.usual_days import usual_lag
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day

FORECAST_DAYS, COMING_DAYS = 28, 14


@dataclass(frozen=True)
class CropSeason:
    """entries: the crop's own and its plants', up to as_of. earlier: the grower's finished crops of the species."""

    crop: Crop
    cultivar: Cultivar
    as_of: date
    entries: Sequence[Entry]
    plants: Sequence[Plant]
    earlier: EarlierCrops

    @property
    def day_zero(self) -> date:
        """The civil date of plant age 0."""
        return self.crop.day_zero

    @property
    def age(self) -> int:
        """The plant age on the day."""
        return age_on(self.day_zero, self.as_of)

    @property
    def planned_end_age(self) -> int | None:
        """The plant age of the planned clearing, None where none is planned."""
        planned = self.crop.planned_clearing_on
        return None if planned is None else age_on(self.day_zero, planned)

    @property
    def stopped_age(self) -> int | None:
        """The plant age at which the last plant was lost or the crop cleared, None while any lives."""
        if self.crop.cleared_on is not None and self.crop.cleared_on <= self.as_of:
            return age_on(self.day_zero, self.crop.cleared_on)
        lost = [p.lost_on for p in self.plants]
        if not lost or any(day is None or day > self.as_of for day in lost):
            return None
        return age_on(self.day_zero, max(day for day in lost if day is not None))

    @property
    def seed(self) -> int:
        """The same for a crop whenever it is asked, so that a band does not jump."""
        return crc32(self.crop.id.encode())

    @cached_property
    def points(self) -> list[PickPoint]:
        """The picks."""
        return pick_points(self.crop, self.entries)

    @cached_property
    def sessions(self) -> list[PickSession]:
        """The picks with the causes of their culls."""
        return [s for e in self.entries if isinstance(e.detail, Pick) for s in _sessions(self.crop, e, e.detail)]

    @cached_property
    def facts(self) -> YieldFacts:
        """What the picks say in plain figures."""
        return yield_facts(self.sessions, self.age)

    @cached_property
    def flowers(self) -> FlowerRecords:
        """What is known of its flowers."""
        return flower_records(self.day_zero, self.cultivar.habit, self.entries, self.age)

    @cached_property
    def fruit_set(self) -> FruitSet | NotYet:
        """Set rate and days from flower to pick; for crops that set alone from flowers seen open."""
        if not self.flowers.flowers and not self.flowers.tags and self.cultivar.habit is not FloweringHabit.SEPARATE:
            return NotYet(
                say("This crop sets without pollination by hand; no fruit check counted its open flowers, so fruit set "
                    "cannot be told.")
            )  # fmt: skip
        return estimate_fruit_set(self.flowers, usual_lag(self.cultivar.species), self.age)

    @cached_property
    def coming(self) -> ComingPicks | NotYet:
        """Fruit of the next 14 days, never past the planned clearing."""
        ended = self._ended()
        if ended is not None:
            return ended
        ask = ComingAsk(self.day_zero, self.age, COMING_DAYS, self.planned_end_age)
        out, every = still_out(self.flowers), every_flower(self.flowers)
        return coming_picks(ask, out, self.points, self.fruit_set, self.seed, every)

    @cached_property
    def forecast_fruit(self) -> YieldForecast | NotYet:
        """Fruit of the next four weeks."""
        return self.forecast(Measure.FRUIT)

    @cached_property
    def forecast_grams(self) -> YieldForecast | NotYet:
        """Grams of the next four weeks."""
        return self.forecast(Measure.GRAMS)

    def forecast(self, measure: Measure, horizon_days: int = FORECAST_DAYS) -> YieldForecast | NotYet:
        """The forecast for a horizon in days, never past the planned clearing."""
        ended = self._ended()
        if ended is not None and self.points:
            return ended
        ask = ForecastAsk(
            self.day_zero, self.age, horizon_days, self.planned_end_age, self.stopped_age, self.earlier.usual_days,
            measure,
        )  # fmt: skip
        return forecast_yield(self.points, ask, self.seed, self.prior)

    def _ended(self) -> NotYet | None:
        """Why nothing more is to come, None while any plant stands."""
        cleared = self.crop.cleared_on
        if self.stopped_age is None:
            return None
        if cleared is not None and cleared <= self.as_of:
            return NotYet(say("It was cleared on {day}: nothing more is to come.", day=show_day(cleared)))
        day = show_day(day_at(self.day_zero, self.stopped_age))
        return NotYet(say("The last plant was lost on {day}: nothing more is to come.", day=day))

    @property
    def prior(self) -> SeasonPrior:
        """What the forecast may lean on."""
        return self.earlier.prior

    @property
    def notes(self) -> tuple[str, ...]:
        """What to know of the forecasts."""
        if self.crop.planned_clearing_on is not None or self.stopped_age is not None or not self.points:
            return ()
        days = self.earlier.usual_days
        if self.earlier.count:
            return (say("No clearing is planned: the season is taken to last {n} days from the first pick, as your "
                        "earlier crops.", n=days),)  # fmt: skip
        return (say("No clearing is planned: the season is taken to last {n} days from the first pick (common "
                    "practice, no source).", n=days),)  # fmt: skip


def season_of(unit: UnitOfWork, crop: Crop, cultivar: Cultivar, as_of: date) -> CropSeason:
    """The season of a crop as known on a day; nothing of later days is seen."""
    entries = [e for e in own_entries(unit, [crop.id])[crop.id] if e.day <= as_of]
    plants = [_known_on(p, as_of) for p in unit.plants.all(crop_id=crop.id) if p.from_day <= as_of]
    return CropSeason(crop, cultivar, as_of, entries, plants, earlier_crops(unit, crop, cultivar.species, as_of))


def plants_alive(plants: Sequence[Plant], day: date) -> int:
    """How many lived on a day, the day of a loss included."""
    return sum(p.from_day <= day and (p.lost_on is None or p.lost_on >= day) for p in plants)


def _known_on(plant: Plant, as_of: date) -> Plant:
    return replace(plant, lost_on=None, lost_cause="") if plant.lost_on and plant.lost_on > as_of else plant


def _sessions(crop: Crop, entry: Entry, pick: Pick) -> list[PickSession]:
    """A pick weighed in part gives one for each part, as for the curve."""
    points = pick_points(crop, [entry])
    culls: dict[str, int] = {}
    for cull in pick.culls:
        culls[cull.cause.value] = culls.get(cull.cause.value, 0) + cull.cull_count
    return [PickSession(p.age, p.fruit_count, p.weight_g, culls if p.culled_count else {}) for p in points]
