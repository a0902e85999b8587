"""How many flowers of a crop set, and how long they take to the pick."""

from collections.abc import Iterator
from dataclasses import replace

from growlog.calculations.explained_figure import Figure
from growlog.calculations.not_yet import NotYet
from growlog.services.facts.family import FactFamily, FactKey, not_told
from growlog.services.facts.source import FactSource
from growlog.words import mark


def _work(source: FactSource) -> Iterator[Figure]:
    told = source.season.fruit_set
    if isinstance(told, NotYet):
        for key in FRUIT_SET_FACTS.keys:
            yield not_told(key.key, key.unit, told.reason, source)
        return
    figures = {f.key: replace(f, as_of=source.as_of) for f in told.figures}
    base = replace(figures["fruit-set"], unit="", low=None, high=None)
    yield figures["fruit-set"]
    yield figures["flower-to-pick"]
    yield replace(base, key="fruit-set-from", value=told.source.value)
    yield replace(base, key="open-flowers", value=round(told.open_flowers, 3))
    yield replace(base, key="unexplained-fruit", value=told.unexplained)


FRUIT_SET_FACTS = FactFamily(
    "fruit-set",
    mark("Fruit set"),
    (
        FactKey("fruit-set", "%", mark("Flowers that set")),
        FactKey("flower-to-pick", "d", mark("Days from flower to ready fruit")),
        FactKey("fruit-set-from", "", mark("Which flowers were counted: pollinated or seen-open")),
        FactKey("open-flowers", "", mark("Flowers still too young to tell")),
        FactKey("unexplained-fruit", "", mark("Fruit picked that no flower written down can have brought")),
    ),
    _work,
)
