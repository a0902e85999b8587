"""The milestones of a crop, and how early or late it was."""

from collections.abc import Iterator
from dataclasses import replace

from growlog.calculations.explained_figure import Figure
from growlog.calculations.milestones import Milestone
from growlog.calculations.not_yet import NotYet
from growlog.services.facts.family import FactFamily, FactKey, not_told
from growlog.services.facts.source import FactSource
from growlog.services.yield_view.milestones_seen import Maturity, maturity, milestones_seen
from growlog.words import mark, say

_MEANINGS = {
    Milestone.EMERGENCE: mark("Plant age at emergence, as a milestone"),
    Milestone.FIRST_MALE: mark("Plant age at the first male flower, of crops that bear flowers apart"),
    Milestone.FIRST_FEMALE: mark("Plant age at the first female flower, of others at the first flower"),
    Milestone.FIRST_SET: mark("Plant age at the first fruit set"),
    Milestone.FIRST_PICK: mark("Plant age at the first pick, as a milestone"),
    Milestone.PEAK_WEEK: mark("Plant age at which the seven days with most fruit begin"),
    Milestone.LAST_PICK: mark("Plant age at the last pick so far"),
}


def _work(source: FactSource) -> Iterator[Figure]:
    seen = {m.which: m.figure for m in milestones_seen(source.season)}
    for which in Milestone:
        figure = seen.get(which)
        key = f"milestone-{which.value}"
        yield (
            not_told(key, "d", say("Not noted or not reached yet."), source)
            if figure is None
            else replace(figure, as_of=source.as_of)
        )
    told = maturity(source.season)
    yield from _packet(source, told)
    figure = told.flower_to_pick_figure
    reason = say("It takes a first flower and a first pick after it.")
    yield figure or not_told("first-flower-to-first-pick", "d", reason, source)


def _packet(source: FactSource, told: Maturity) -> Iterator[Figure]:
    packet = told.packet
    if isinstance(packet, NotYet):
        yield not_told("against-packet", "d", packet.reason, source)
        yield not_told("against-packet-percent", "%", packet.reason, source)
        return
    yield replace(packet.figure, as_of=source.as_of)
    percent = round(packet.late_percent, 9)
    yield replace(packet.figure, key="against-packet-percent", value=percent, unit="%", as_of=source.as_of)


MILESTONE_FACTS = FactFamily(
    "milestones",
    mark("Milestones"),
    (
        *(FactKey(f"milestone-{which.value}", "d", _MEANINGS[which]) for which in Milestone),
        FactKey("against-packet", "d", mark("Days later than the packet promised, below zero for earlier")),
        FactKey("against-packet-percent", "%", mark("The same in per cent of the packet's days")),
        FactKey("first-flower-to-first-pick", "d", mark("Days from the first female flower to the first pick")),
    ),
    _work,
)
