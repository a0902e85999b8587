"""Ages of a crop, and what its packet promises."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date

from growlog.calculations.explained_figure import Figure, Input
from growlog.calculations.plant_age import age_on, explain_plant_age
from growlog.calculations.yield_curve import first_pick_age
from growlog.services.board import packet_age_of
from growlog.services.crops import first_flower_day
from growlog.services.facts.family import FactFamily, FactKey, of_definition
from growlog.services.facts.source import FactSource
from growlog.services.picks import pick_points
from growlog.words import mark, say


def _work(source: FactSource) -> Iterator[Figure]:
    crop, as_of = source.crop, source.as_of
    last = min(as_of, crop.cleared_on or as_of)
    yield replace(explain_plant_age(crop.day_zero, last), as_of=as_of)
    yield _age(source, "emergence-age", crop.emerged_on, say("The plant age on the day of emergence."))
    flower = crop.first_flower_on or first_flower_day(source.entries)
    yield _age(source, "first-flower-age", flower, say("The plant age of the first open flower, as stated or entered."))
    picked = first_pick_age(pick_points(crop, source.entries))
    pick = crop.first_pick_on
    method = say("The plant age of the first marketable fruit, as stated or picked.")
    first = _age(source, "first-pick-age", pick, method)
    yield first if pick is not None else replace(first, value=picked)
    yield from _packet(source)


def _age(source: FactSource, key: str, day: date | None, method: str) -> Figure:
    zero = source.crop.day_zero
    given: tuple[Input, ...] = (Input("day 0", zero.isoformat(), "", zero),)
    if day is not None:
        given += (Input("day", day.isoformat(), "", day),)
    return of_definition(key, None if day is None else age_on(zero, day), "d", given, method, source.as_of)


def _packet(source: FactSource) -> Iterator[Figure]:
    age = packet_age_of(source.crop, source.cultivar)
    given: tuple[Input, ...] = ()
    if source.cultivar.packet_days is not None:
        given = (
            Input("days on the packet", source.cultivar.packet_days, "d"),
            Input("counted from", source.cultivar.packet_counts_from.value),
        )
    method = say("The days to maturity on the packet, from the day that it counts from, as a plant age.")
    source_words = say("the packet")
    yield of_definition("packet-maturity-age", age, "d", given, method, source.as_of, source=source_words)
    left = None if age is None else age - source.age
    method = say("The plant age that the packet promises less the plant age now; below zero once it is past.")
    given += (Input("plant age", source.age, "d"),)
    yield of_definition("days-to-packet-maturity", left, "d", given, method, source.as_of, source=source_words)


CROP_FACTS = FactFamily(
    "crop",
    mark("Crop"),
    (
        FactKey("plant-age", "d", mark("Plant age, or the age at clearing")),
        FactKey("emergence-age", "d", mark("Plant age at emergence")),
        FactKey("first-flower-age", "d", mark("Plant age of the first open flower")),
        FactKey("first-pick-age", "d", mark("Plant age of the first pick")),
        FactKey("packet-maturity-age", "d", mark("Plant age at which the packet promises the first pick")),
        FactKey("days-to-packet-maturity", "d", mark("Days until the packet's maturity")),
    ),
    _work,
)
