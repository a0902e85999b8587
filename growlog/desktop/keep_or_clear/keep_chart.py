"""Both curves of keep or clear over plant age, with their crossing and its band."""

from growlog.calculations.keep_or_clear import KeepOrClear
from growlog.calculations.plant_age import day_at
from growlog.desktop.charts import Band, ChartData, Line, Upright
from growlog.records.crop import Crop
from growlog.services.yield_view.keep import KeepView
from growlog.words import mark, say, show_day_of_year


def keep_chart(crop: Crop, view: KeepView) -> ChartData | None:
    """The chart, None where there is no answer."""
    told = view.result
    if not isinstance(told, KeepOrClear):
        return None
    ages = [w.age for w in told.weeks]
    unit = view.currency or say("in money")
    return ChartData(
        say("Keep or clear {crop}", crop=crop.name),
        say("plant age at the week's beginning, days"),
        say("value of a week, {unit}", unit=unit),
        (
            Line(say("another week of this crop"), ages, [w.middle for w in told.weeks]),
            Line(say("what would stand there instead"), ages, [w.instead for w in told.weeks], "feed", "dash"),
        ),
        (Band(say("in four cases out of five"), ages, [w.low for w in told.weeks], [w.high for w in told.weeks]),),
        _uprights(crop, told),
        told.sentences,
    )


def _uprights(crop: Crop, told: KeepOrClear) -> list[Upright]:
    named: list[tuple[int | None, str]] = [
        (told.low_age, mark("at the earliest {day}")),
        (told.crossing_age, mark("they meet {day}")),
        (told.high_age, mark("at the latest {day}")),
    ]
    if told.crossing_age == told.weeks[0].age:
        named[:2] = [(told.crossing_age, mark("clearing pays more from {day}"))]
    if told.low_age == told.crossing_age == told.high_age:
        named = named[:1]
    return [
        Upright(age, say(words, day=show_day_of_year(day_at(crop.day_zero, age))))
        for age, words in named
        if age is not None
    ]
