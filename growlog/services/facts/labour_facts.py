"""The labour of a crop by kind of work."""

from collections.abc import Iterator

from growlog.calculations.explained_figure import Figure, Input
from growlog.calculations.per_figures import minutes_per_fruit
from growlog.services.facts.family import FactFamily, FactKey, of_definition
from growlog.services.facts.source import FactSource
from growlog.services.money.labour import Work
from growlog.words import mark, say

_MEANINGS = {
    Work.FEEDING: mark("Minutes of feeding"),
    Work.TANK: mark("Minutes of care of the tank"),
    Work.POLLINATION: mark("Minutes of hand pollination"),
    Work.TRAINING: mark("Minutes of training"),
    Work.CLEAN_UP: mark("Minutes of clean-up of old leaves"),
    Work.PICKING: mark("Minutes of picking"),
    Work.LOOKING: mark("Minutes of looking, reading and measuring"),
    Work.PLANT_CARE: mark("Minutes of plant care and potting-on"),
    Work.ROOM: mark("Minutes of work on light and room"),
    Work.OTHER: mark("Minutes of other work"),
}


def _work(source: FactSource) -> Iterator[Figure]:
    labour, as_of = source.labour, source.as_of
    method = say("The minutes of labour noted with entries, of a room's or tank's work an equal part of each crop.")
    given = (Input("entries with labour", sum(w.entry_count for w in labour.work)),)
    yield of_definition("labour-minutes", round(labour.minutes, 6), "min", given, method, as_of)
    yield labour.per_fruit
    by_work = {w.work: w for w in labour.work}
    for work in Work:
        found = by_work.get(work)
        minutes = found.minutes if found else 0.0
        given = (Input("entries with labour", found.entry_count if found else 0),)
        yield of_definition(f"minutes-{work}", round(minutes, 6), "min", given, method, as_of)
        yield minutes_per_fruit(minutes, labour.fruit_count, as_of, f"minutes-per-fruit-{work}")


def _keys() -> Iterator[FactKey]:
    yield FactKey("labour-minutes", "min", mark("Minutes of labour"))
    yield FactKey("minutes-per-fruit", "min/fruit", mark("Minutes of labour for a marketable fruit"))
    for work in Work:
        yield FactKey(f"minutes-{work}", "min", _MEANINGS[work])
        yield FactKey(f"minutes-per-fruit-{work}", "min/fruit", mark("The same for a marketable fruit"))


LABOUR_FACTS = FactFamily("labour", mark("Labour"), tuple(_keys()), _work)
