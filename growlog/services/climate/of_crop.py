"""The climate that a crop stood in, by day: what loggers recorded, and readings entered where no logger was."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, fields, replace
from datetime import date

from growlog.calculations.climate import vapour_pressure_deficit
from growlog.calculations.climate_day import WATCHED_HUMIDITY_PERCENT
from growlog.calculations.degree_days import DegreeDayMethod, degree_days, explain_degree_days
from growlog.calculations.explained_figure import Figure, Input
from growlog.calculations.light_programme import days_between
from growlog.calculations.moist_air import dew_point
from growlog.calculations.plant_age import age_on
from growlog.records.climate_day import ClimateDay
from growlog.records.crop import Crop
from growlog.records.display import fixed
from growlog.records.entry import Entry, Reading
from growlog.services.entries import entries_of_crop
from growlog.services.light.statements import stands
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_day

_VALUES = tuple(f.name for f in fields(ClimateDay) if f.name not in ("day", "sample_count"))


@dataclass(frozen=True)
class CropClimateDay:
    """A day's climate on the axis of plant age. sample_count: of a logger; reading_count: entered that day.

    Where a logger tells, its values count; entered readings count for what no logger tells of that day.
    """

    age: int
    climate: ClimateDay
    reading_count: int = 0

    @property
    def day(self) -> date:
        """The civil day."""
        return self.climate.day

    @property
    def from_logger(self) -> bool:
        """Whether a logger recorded that day."""
        return self.climate.sample_count > 0

    @property
    def may_condense(self) -> bool:
        """Whether the dew point reached the coolest temperature of the day: surfaces as cool turn wet."""
        dew, coolest = self.climate.dew_point_max_c, self.climate.temperature_min_c
        return dew is not None and coolest is not None and dew >= coolest


@dataclass(frozen=True)
class ClimateWarning:
    """A sentence on a day. kind: "condensation" or "humid-night"."""

    age: int
    day: date
    kind: str
    sentence: str


@dataclass(frozen=True)
class ClimateOfCrop:
    """A crop's climate from day 0 on; days of which nothing is known are left out."""

    crop_id: str
    day_zero: date
    days: tuple[CropClimateDay, ...]
    warnings: tuple[ClimateWarning, ...]
    humid_above_percent: float


@dataclass(frozen=True)
class DegreeDaySum:
    """Degree days so far, in °C·d. days_counted: with a highest and a lowest temperature; days_missing: without."""

    figure: Figure
    by_age: tuple[tuple[int, float], ...]
    days_counted: int
    days_missing: int


def climate_of_crop(
    log: OpenLogbook,
    crop_id: str,
    as_of: date | None = None,
    humid_above_percent: float = WATCHED_HUMIDITY_PERCENT,
) -> ClimateOfCrop:
    """The climate of a crop up to a day, today if none is said; LogbookProblem if the crop is not there."""
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        days = climate_days_of_crop(unit, crop, as_of or log.today())
    warnings = [w for day in days for w in _warnings(day, humid_above_percent)]
    return ClimateOfCrop(crop_id, crop.day_zero, tuple(days), tuple(warnings), humid_above_percent)


def climate_days_of_crop(
    unit: UnitOfWork, crop: Crop, until: date, entries: Iterable[Entry] | None = None
) -> list[CropClimateDay]:
    """The days of a crop's climate up to one of them, in order. entries: the crop's, where they were read already."""
    logged = _logged_days(unit, crop, until)
    readings: dict[date, list[Reading]] = {}
    for entry in entries_of_crop(unit, crop) if entries is None else entries:
        if entry.day <= until and isinstance(entry.detail, Reading):
            readings.setdefault(entry.day, []).append(entry.detail)
    found = []
    for day in sorted(logged.keys() | readings.keys()):
        own = readings.get(day, [])
        climate = _filled(logged.get(day, ClimateDay(day, 0)), _of_readings(day, own))
        if any(getattr(climate, name) is not None for name in _VALUES):
            found.append(CropClimateDay(age_on(crop.day_zero, day), climate, len(own)))
    return found


def climate_of_room(
    log: OpenLogbook, room_id: str, first: date | None = None, last: date | None = None
) -> list[ClimateDay]:
    """A room's days as its loggers recorded them."""
    with log.unit() as unit:
        return unit.climate_samples.days(room_id, first, last)


def degree_days_of_crop(
    log: OpenLogbook,
    crop_id: str,
    method: DegreeDayMethod,
    base_c: float,
    ceiling_c: float | None = None,
    as_of: date | None = None,
) -> DegreeDaySum:
    """Degree days of a crop by a named method and base, in °C; ValueError where base and ceiling do not fit it."""
    until = as_of or log.today()
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        days = climate_days_of_crop(unit, crop, until)
    return sum_degree_days(crop, days, until, method, base_c, ceiling_c)


def sum_degree_days(
    crop: Crop,
    days: Sequence[CropClimateDay],
    until: date,
    method: DegreeDayMethod,
    base_c: float,
    ceiling_c: float | None = None,
) -> DegreeDaySum:
    """The sum over days with a highest and a lowest temperature, and how many days lack them."""
    last = until if crop.cleared_on is None else min(until, crop.cleared_on)
    total, by_age, counted = 0.0, [], 0
    for day in days:
        highest, lowest = day.climate.temperature_max_c, day.climate.temperature_min_c
        if highest is not None and lowest is not None:
            total += degree_days(method, highest, lowest, base_c, ceiling_c)
            by_age.append((day.age, total))
            counted += 1
    missing = len(days_between(crop.day_zero, last)) - counted
    example = explain_degree_days(method, base_c + 1, base_c, base_c, ceiling_c, "°C")
    kept = tuple(i for i in example.inputs if i.name not in ("tmax", "tmin"))
    inputs = (*kept, Input("days counted", counted, "d"), Input("days without temperatures", missing, "d"))
    words = example.method + " " + say("Added up over the days of the crop that have both temperatures.")
    value = total if counted else None
    figure = replace(example, key="degree-days", value=value, inputs=inputs, method=words, as_of=until)
    return DegreeDaySum(figure, tuple(by_age), counted, missing)


def _logged_days(unit: UnitOfWork, crop: Crop, until: date) -> dict[date, ClimateDay]:
    found: dict[date, ClimateDay] = {}
    for placement in sorted(unit.placements.all(crop_id=crop.id), key=lambda p: p.from_day):
        for day in unit.climate_samples.days(placement.room_id, crop.day_zero, until):
            if stands(crop, placement, day.day):
                found[day.day] = day
    return found


def _of_readings(day: date, readings: Iterable[Reading]) -> ClimateDay:
    air = [(r.air_temperature_c, r.relative_humidity_percent) for r in readings]
    temperatures = [t for t, _ in air if t is not None]
    humidities = [h for _, h in air if h is not None]
    both = [(t, h) for t, h in air if t is not None and h is not None]
    deficits = [vapour_pressure_deficit(t, h) for t, h in both]
    dews = [dew_point(t, h) for t, h in both if h >= 0.1]
    return ClimateDay(
        day, 0,
        min(temperatures, default=None), _mean(temperatures), max(temperatures, default=None),
        min(humidities, default=None), _mean(humidities), max(humidities, default=None),
        None, _mean(deficits), max(deficits, default=None), max(dews, default=None),
    )  # fmt: skip


def _filled(logged: ClimateDay, read: ClimateDay) -> ClimateDay:
    missing = {name: getattr(read, name) for name in _VALUES if getattr(logged, name) is None}
    return replace(logged, **missing)


def _mean(values: Sequence[float]) -> float | None:
    return sum(values) / len(values) if values else None


def _warnings(day: CropClimateDay, humid_above: float) -> list[ClimateWarning]:
    found = []
    climate = day.climate
    if day.may_condense and climate.dew_point_max_c is not None and climate.temperature_min_c is not None:
        sentence = say(
            "On {day} the dew point reached {dew} and the coolest reading was {coolest}: surfaces as cool turned wet.",
            day=show_day(day.day),
            dew=fixed(climate.dew_point_max_c, 1, "°C"),
            coolest=fixed(climate.temperature_min_c, 1, "°C"),
        )
        found.append(ClimateWarning(day.age, day.day, "condensation", sentence))
    night = climate.night_humidity_mean_percent
    if night is not None and night > humid_above:
        sentence = say(
            "In the dark of {day} the humidity was {humidity} on average, above {limit}.",
            day=show_day(day.day), humidity=fixed(night, 0, "%"), limit=fixed(humid_above, 0, "%"),
        )  # fmt: skip
        found.append(ClimateWarning(day.age, day.day, "humid-night", sentence))
    return found
