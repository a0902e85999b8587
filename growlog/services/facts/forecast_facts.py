"""The curve fitted to a crop's picks, what it still promises, and the picks that are coming."""

from collections.abc import Iterator
from dataclasses import replace

from growlog.calculations.coming_picks import ComingPicks
from growlog.calculations.curve_shapes import SHAPE_WORDS, Shape
from growlog.calculations.explained_figure import Figure
from growlog.calculations.not_yet import NotYet
from growlog.calculations.plant_age import day_at
from growlog.calculations.yield_forecast import YieldForecast
from growlog.services.facts.family import FactFamily, FactKey, not_told
from growlog.services.facts.source import FactSource
from growlog.words import mark, say

_CURVES = (Shape.LOGISTIC, Shape.GOMPERTZ, Shape.STEADY)


def _work(source: FactSource) -> Iterator[Figure]:
    season = source.season
    yield from _fit(source, season.forecast_fruit)
    yield from _forecast(source, season.forecast_fruit, "forecast")
    yield from _forecast(source, season.forecast_grams, "forecast-weight")
    coming = season.coming
    if isinstance(coming, ComingPicks):
        yield replace(coming.figure, as_of=source.as_of)
        until = day_at(season.day_zero, coming.days[-1].age).isoformat()
        yield replace(coming.figure, key="coming-picks-until", value=until, unit="", low=None, high=None)
        yield replace(coming.figure, key="coming-picks-from", value=coming.basis.value, unit="", low=None, high=None)
    else:
        for key, unit in (("coming-picks", "fruit"), ("coming-picks-until", ""), ("coming-picks-from", "")):
            yield not_told(key, unit, coming.reason, source)


def _fit(source: FactSource, told: YieldForecast | NotYet) -> Iterator[Figure]:
    if isinstance(told, NotYet):
        for key, unit, _ in _FIT_KEYS:
            yield not_told(key, unit, told.reason, source)
        return
    base = replace(told.figure, low=None, high=None, as_of=source.as_of)
    method = say("The curve chosen by AICc among those fitted to what was gathered between sessions: {shape}.",
                 shape=say(SHAPE_WORDS[told.fit.shape]))  # fmt: skip
    values = {
        "fit-shape": told.fit.shape.value,
        "fit-peak-age": round(told.fit.middle_age, 3),
        "fit-width": round(told.fit.width_days, 3),
        "fit-dispersion": round(told.fit.dispersion, 3),
        "fit-no-peak-yet": "yes" if told.no_peak_yet else "no",
    }
    for shape in _CURVES:
        aicc = next(f.aicc for f in told.fits if f.shape is shape)
        values[f"fit-aicc-{shape.value}"] = round(aicc, 3) if aicc < 1e9 else "too few sessions"
    for key, unit, _ in _FIT_KEYS:
        yield replace(base, key=key, value=values[key], unit=unit, method=method)


def _forecast(source: FactSource, told: YieldForecast | NotYet, key: str) -> Iterator[Figure]:
    unit = "fruit" if key == "forecast" else "g"
    if isinstance(told, NotYet):
        yield not_told(key, unit, told.reason, source)
        yield not_told(f"{key}-until", "", told.reason, source)
        return
    low, middle, high = (round(v, 3) for v in (told.low, told.middle, told.high))
    yield replace(told.figure, key=key, value=middle, low=low, high=high, as_of=source.as_of)
    until = day_at(source.season.day_zero, told.to_age).isoformat()
    yield replace(told.figure, key=f"{key}-until", value=until, unit="", low=None, high=None, as_of=source.as_of)


_FIT_KEYS: tuple[tuple[str, str, str], ...] = (
    ("fit-shape", "", mark("The curve chosen: logistic or gompertz")),
    ("fit-peak-age", "d", mark("Plant age of the curve's highest rate")),
    ("fit-width", "d", mark("Width of the curve")),
    ("fit-dispersion", "", mark("Scatter of the picks about the curve, variance over mean")),
    ("fit-no-peak-yet", "", mark("Whether a steady rate explains the picks as well")),
    ("fit-aicc-logistic", "", mark("AICc of the logistic curve")),
    ("fit-aicc-gompertz", "", mark("AICc of the Gompertz curve")),
    ("fit-aicc-steady", "", mark("AICc of a steady rate")),
)

FORECAST_FACTS = FactFamily(
    "forecast",
    mark("Forecast"),
    (
        *(FactKey(key, unit, meaning) for key, unit, meaning in _FIT_KEYS),
        FactKey("forecast", "fruit", mark("Fruit still to come in four weeks, within the planned clearing")),
        FactKey("forecast-until", "", mark("The day up to which that is")),
        FactKey("forecast-weight", "g", mark("Weight still to come in four weeks, within the planned clearing")),
        FactKey("forecast-weight-until", "", mark("The day up to which that is, by weight")),
        FactKey("coming-picks", "fruit", mark("Fruit of the next 14 days")),
        FactKey("coming-picks-until", "", mark("The day up to which those are")),
        FactKey("coming-picks-from", "", mark("What that rests on: flowers or recent-rate")),
    ),
    _work,
)
