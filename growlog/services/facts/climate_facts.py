"""The climate that a crop stood in."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from growlog.calculations.climate_day import WATCHED_HUMIDITY_PERCENT
from growlog.calculations.degree_day_bases import degree_day_bases
from growlog.calculations.degree_days import DegreeDayMethod
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.records.climate_day import ClimateDay
from growlog.services.climate.of_crop import CropClimateDay, sum_degree_days
from growlog.services.facts.family import COMMON_PRACTICE, DEFINITION, FactFamily, FactKey, of_definition
from growlog.services.facts.source import FactSource
from growlog.words import mark, say, show_number

_FAO56 = "Allen, R. et al. (1998) Crop evapotranspiration, FAO Irrigation and Drainage Paper 56, equations 10 and 11"
_LOWEST, _MEAN, _HIGHEST = "lowest", "mean", "highest"
# key, unit, field of a day, how days are put together, source
_OF_DAYS: tuple[tuple[str, str, str, str, str], ...] = (
    ("lowest-temperature", "°C", "temperature_min_c", _LOWEST, DEFINITION),
    ("mean-temperature", "°C", "temperature_mean_c", _MEAN, DEFINITION),
    ("highest-temperature", "°C", "temperature_max_c", _HIGHEST, DEFINITION),
    ("mean-humidity", "%", "humidity_mean_percent", _MEAN, DEFINITION),
    ("mean-vpd", "kPa", "vpd_mean_kpa", _MEAN, _FAO56),
    ("highest-vpd", "kPa", "vpd_max_kpa", _HIGHEST, _FAO56),
    ("highest-dew-point", "°C", "dew_point_max_c", _HIGHEST, _FAO56),
)
_PUT_TOGETHER: dict[str, Callable[[Sequence[float]], float]] = {
    _LOWEST: min, _HIGHEST: max, _MEAN: lambda values: sum(values) / len(values),
}  # fmt: skip


def _work(source: FactSource) -> Iterator[Figure]:
    days = source.climate
    counted = (
        Input("days with a logger", sum(d.from_logger for d in days), "d"),
        Input("days with readings alone", sum(not d.from_logger for d in days), "d"),
    )
    method = say("Days of the crop on which a logger recorded the air or a reading of it was entered.")
    yield of_definition("climate-days", len(days), "d", counted, method, source.as_of)
    for key, unit, field, way, origin in _OF_DAYS:
        values = [v for d in days if (v := _value(d.climate, field)) is not None]
        value = _PUT_TOGETHER[way](values) if values else None
        given = (Input("days", len(values), "d"),)
        yield of_definition(key, value, unit, given, _method(way), source.as_of, source=origin)
    yield from _damp(source, days)
    yield _degree_days(source, days)


def _value(day: ClimateDay, field: str) -> float | None:
    value = getattr(day, field)
    return None if value is None else float(value)


def _method(way: str) -> str:
    if way == _LOWEST:
        return say("The lowest of the days; of a day by its logger, else by the readings entered.")
    if way == _HIGHEST:
        return say("The highest of the days; of a day by its logger, else by the readings entered.")
    return say("The mean of the days' means; of a day by its logger over time, else the mean of the readings entered.")


def _damp(source: FactSource, days: Sequence[CropClimateDay]) -> Iterator[Figure]:
    limit = WATCHED_HUMIDITY_PERCENT
    nights = [v for d in days if (v := d.climate.night_humidity_mean_percent) is not None]
    given = (Input("humidity watched", limit, "%"), Input("nights recorded", len(nights), "d"))
    value = sum(v > limit for v in nights) if nights else None
    method = say(
        "Days whose mean humidity in the dark was above the humidity watched, always {limit} % here; the climate "
        "screen counts by one of your choice.",
        limit=show_number(limit, 0),
    )
    yield of_definition("humid-nights", value, "d", given, method, source.as_of, source=COMMON_PRACTICE,
                        sure=Sure.COMMON_PRACTICE)  # fmt: skip
    known = [d for d in days if d.climate.dew_point_max_c is not None and d.climate.temperature_min_c is not None]
    method = say("Days whose highest dew point reached their coolest reading, so that surfaces as cool turned wet.")
    value = sum(d.may_condense for d in known) if known else None
    counted = (Input("days", len(known), "d"),)
    yield of_definition(
        "condensation-days", value, "d", counted, method, source.as_of, source=_FAO56, sure=Sure.ESTIMATE
    )


def _degree_days(source: FactSource, days: Sequence[CropClimateDay]) -> Figure:
    base = next(iter(degree_day_bases(source.cultivar.species)), None)
    if base is None:
        method = say("No base temperature is known here for this species; say one to count from.")
        return of_definition("degree-days", None, "°C·d", (), method, source.as_of)
    how = base.method or DegreeDayMethod.SIMPLE_AVERAGE
    ceiling = None if base.ceiling_f is None else (base.ceiling_f - 32) / 1.8
    found = sum_degree_days(source.crop, days, source.as_of, how, (base.base_f - 32) / 1.8, ceiling)
    inputs = (*found.figure.inputs, Input("base from", base.source))
    by_logger = all(d.from_logger for d in days)  # single readings miss the extremes of a day
    sure = found.figure.sure if by_logger and not found.days_missing and not base.from_memory else Sure.ESTIMATE
    return replace(found.figure, inputs=inputs, sure=sure)


CLIMATE_FACTS = FactFamily(
    "climate",
    mark("Climate"),
    (
        FactKey("climate-days", "d", mark("Days of which the climate is known")),
        FactKey("lowest-temperature", "°C", mark("Lowest temperature")),
        FactKey("mean-temperature", "°C", mark("Mean temperature")),
        FactKey("highest-temperature", "°C", mark("Highest temperature")),
        FactKey("mean-humidity", "%", mark("Mean relative humidity")),
        FactKey("mean-vpd", "kPa", mark("Mean vapour pressure deficit of the air")),
        FactKey("highest-vpd", "kPa", mark("Highest vapour pressure deficit of the air")),
        FactKey("highest-dew-point", "°C", mark("Highest dew point")),
        FactKey("humid-nights", "d", mark("Nights above the humidity that is watched, 80 % here")),
        FactKey("condensation-days", "d", mark("Days on which water may have condensed")),
        FactKey("degree-days", "°C·d", mark("Degree days by the base known for the species")),
    ),
    _work,
)
