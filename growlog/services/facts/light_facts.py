"""The light of a crop."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from growlog.calculations.crop_light import usual_light
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.calculations.light_needed import explain_dli
from growlog.calculations.light_programme import LightDay
from growlog.services.facts.family import DEFINITION, FactFamily, FactKey, of_definition
from growlog.services.facts.source import FactSource
from growlog.words import mark, say


def _work(source: FactSource) -> Iterator[Figure]:
    days, as_of = source.light, source.as_of
    last = days[-1] if days else None
    yield _setting(source, last)
    yield _canopy(source, last)
    yield _dli(source, last)
    yield from _sums(source, [d for d in days if d.dli_mol is not None])
    usual = next(iter(usual_light(source.cultivar.species)), None)
    method = say("What is usually given to or needed by such a crop, to hold its daily light against.")
    given: tuple[Input, ...] = (Input("species", source.cultivar.species),)
    if usual is not None:
        given += (Input("meaning", say(usual.meaning)),)
    yield of_definition(
        "usual-dli", None if usual is None else usual.dli_low, "mol/m²/d", given, method, as_of,
        source=usual.source if usual else say("no range is known here for this species"), sure=Sure.ESTIMATE,
        low=usual.dli_low if usual else None, high=usual.dli_high if usual else None,
    )  # fmt: skip


def _setting(source: FactSource, last: LightDay | None) -> Figure:
    method = say("The hours of the light programme on the last day; an entry goes before a step of the plan.")
    hours = None if last is None else last.setting.photoperiod_h
    given = () if last is None else (Input("day", last.day.isoformat(), "", last.day),)
    return of_definition("photoperiod", hours, "h", given, method, source.as_of)


def _canopy(source: FactSource, last: LightDay | None) -> Figure:
    canopy = None if last is None else last.setting.canopy
    method = say(
        "The light at the canopy on the last day: of a quantum sensor, else from lux, as stated, or estimated."
    )
    if canopy is None:
        return of_definition("canopy-ppfd", None, "µmol/m²/s", (), method, source.as_of)
    given = (Input("known by", say(canopy.way.label), "", canopy.day),)
    sure = Sure.ESTIMATE if canopy.way.is_estimate else Sure.PUBLISHED
    return of_definition(
        "canopy-ppfd", canopy.ppfd_umol, "µmol/m²/s", given, method, source.as_of,
        sure=sure, low=canopy.low, high=canopy.high,
    )  # fmt: skip


def _dli(source: FactSource, last: LightDay | None) -> Figure:
    canopy = None if last is None else last.setting.canopy
    if last is None or canopy is None:
        example = explain_dli(0, 0)
        return replace(example, value=None, inputs=(), as_of=source.as_of)
    figure = explain_dli(min(canopy.ppfd_umol, 3000), last.setting.photoperiod_h)
    inputs = tuple(replace(i, date=last.day) for i in figure.inputs)
    sure = Sure.ESTIMATE if canopy.way.is_estimate else figure.sure
    return replace(figure, inputs=inputs, low=last.dli_low_mol, high=last.dli_high_mol, sure=sure, as_of=source.as_of)


def _sums(source: FactSource, known: Sequence[LightDay]) -> Iterator[Figure]:
    total = sum(d.dli_mol or 0.0 for d in known)
    given = (Input("days with known light", len(known), "d"), Input("days", source.age + 1, "d"))
    estimate = any(d.setting.canopy is not None and d.setting.canopy.way.is_estimate for d in known)
    sure = Sure.ESTIMATE if estimate else Sure.PUBLISHED
    method = say("The daily light integrals of the days on which the canopy's light is known, added up.")
    yield of_definition(
        "light-sum", total if known else None, "mol/m²", given, method, source.as_of, source=DEFINITION, sure=sure
    )
    method = say("The sum of the daily light integrals over the days on which the canopy's light is known.")
    mean = total / len(known) if known else None
    yield of_definition("mean-dli", mean, "mol/m²/d", given, method, source.as_of, source=DEFINITION, sure=sure)


LIGHT_FACTS = FactFamily(
    "light",
    mark("Light"),
    (
        FactKey("photoperiod", "h", mark("Hours of light a day, on the last day")),
        FactKey("canopy-ppfd", "µmol/m²/s", mark("Light at the canopy, on the last day")),
        FactKey("dli", "mol/m²/d", mark("Daily light integral, of the last day")),
        FactKey("light-sum", "mol/m²", mark("Light so far")),
        FactKey("mean-dli", "mol/m²/d", mark("Mean daily light integral")),
        FactKey("usual-dli", "mol/m²/d", mark("Daily light that such a crop usually has or needs")),
    ),
    _work,
)
