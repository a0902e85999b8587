"""Keep or clear, as the logbook alone answers it: at the shop price, without labour, against cleared crops."""

from collections.abc import Iterator
from dataclasses import replace

from growlog.calculations.explained_figure import Figure
from growlog.calculations.not_yet import NotYet
from growlog.services.facts.family import FactFamily, FactKey, not_told
from growlog.services.facts.source import FactSource
from growlog.services.yield_view.keep import KeepAsk, weigh_up
from growlog.services.yield_view.keep_grounds import keep_grounds
from growlog.words import mark


def _work(source: FactSource) -> Iterator[Figure]:
    view = weigh_up(keep_grounds(source), KeepAsk())
    if isinstance(view.result, NotYet):
        for key in KEEP_FACTS.keys:
            yield not_told(key.key, key.unit, view.result.reason, source)
        return
    figure, week = replace(view.result.figure, as_of=source.as_of), view.result.weeks[0]
    yield figure
    low, middle, high, instead = (round(v, view.decimals) for v in (week.low, week.middle, week.high, week.instead))
    yield replace(figure, key="next-week-value", value=middle, unit=view.currency, low=low, high=high)
    yield replace(figure, key="instead-week-value", value=instead, unit=view.currency, low=None, high=None)


KEEP_FACTS = FactFamily(
    "keep-or-clear",
    mark("Keep or clear"),
    (
        FactKey("keep-or-clear", "", mark("Day on which another week falls below what would stand there instead; none "
                                          "where that is not before the planned clearing")),
        FactKey("next-week-value", "", mark("Value of the next week, running costs taken off")),
        FactKey("instead-week-value", "", mark("Value of an average week of what would stand there instead")),
    ),
    _work,
)  # fmt: skip
