"""The yield so far."""

from collections.abc import Iterator

from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.services.facts.family import COMMON_PRACTICE, DEFINITION, FactFamily, FactKey, of_definition
from growlog.services.facts.source import FactSource
from growlog.words import mark, say


def _work(source: FactSource) -> Iterator[Figure]:
    total, as_of = source.total, source.as_of
    picks = (Input("picks", sum(e.kind == "pick" for e in source.entries)),)
    yield of_definition("fruit-count", total.fruit_count, "", picks, say("Marketable fruit, added up."), as_of)
    yield of_definition("culled-count", total.culled_count, "", picks, say("Culled fruit, added up."), as_of)
    weighed_g = total.weight_g - total.estimated_g
    given = (*picks, Input("weighed", round(weighed_g, 3), "g"), Input("estimated", round(total.estimated_g, 3), "g"))
    known = None if total.unknown_count else round(total.weight_g, 3)
    yield of_definition(
        "yield-weight", known, "g", given,
        say("Weighed marketable fruit, and unweighed fruit by the mean of the fruit weighed up to its own day."), as_of,
        source=COMMON_PRACTICE if total.estimated_g else DEFINITION,
        sure=Sure.ESTIMATE if total.estimated_g else Sure.PUBLISHED,
        low=round(weighed_g, 3) if total.estimated_g else None,
    )  # fmt: skip
    mean = None if total.mean_fruit_g is None else round(total.mean_fruit_g, 3)
    method = say("The weight of the weighed marketable fruit over their number.")
    yield of_definition("mean-fruit-weight", mean, "g", picks, method, as_of)


YIELD_FACTS = FactFamily(
    "yield",
    mark("Yield"),
    (
        FactKey("fruit-count", "", mark("Marketable fruit picked")),
        FactKey("culled-count", "", mark("Fruit culled")),
        FactKey("yield-weight", "g", mark("Weight of the marketable fruit")),
        FactKey("mean-fruit-weight", "g", mark("Mean weight of a weighed fruit")),
    ),
    _work,
)
