"""What the picks of a crop say beyond their sum: culls by cause, rates, early yield, and yield against what it took."""

from collections.abc import Iterator
from dataclasses import replace

from growlog.calculations.explained_figure import Figure, Input
from growlog.calculations.yield_facts import YieldFacts, explain_facts, explain_ratios
from growlog.records.entry import CullCause
from growlog.services.facts.family import FactFamily, FactKey, not_told, of_definition
from growlog.services.facts.source import FactSource
from growlog.services.yield_view.used import used_so_far
from growlog.words import mark, say

_CULLS = {
    CullCause.MISSHAPEN: mark("Fruit culled as misshapen"),
    CullCause.BLOSSOM_END_ROT: mark("Fruit culled for blossom-end rot"),
    CullCause.CRACKED: mark("Fruit culled as cracked"),
    CullCause.OVERSIZE: mark("Fruit culled as oversize"),
    CullCause.DAMAGED: mark("Fruit culled as damaged"),
}


def _work(source: FactSource) -> Iterator[Figure]:
    facts = source.season.facts
    told = {f.key: f for f in explain_facts(facts) + explain_ratios(facts, used_so_far(source.unit, source.season,
                                                                                      source.costs))}  # fmt: skip
    told |= {f.key: f for f in _plain(source, facts)}
    for key in PICK_FACTS.keys:
        figure = told.get(key.key)
        if figure is None:
            yield not_told(key.key, key.unit, say("It takes at least three weighed sessions."), source)
        else:
            yield replace(figure, as_of=source.as_of)


def _plain(source: FactSource, facts: YieldFacts) -> Iterator[Figure]:
    as_of, sessions = source.as_of, (Input("sessions", facts.sessions),)
    yield of_definition("sessions", facts.sessions, "", (), say("Days with a pick, culls included."), as_of)
    yield of_definition("fruit-per-session", facts.fruit_per_session, "", sessions,
                        say("Marketable fruit over the days with a pick."), as_of)  # fmt: skip
    yield of_definition("days-between-sessions", facts.days_between_sessions, "d", sessions,
                        say("The mean of the days from one session to the next."), as_of)  # fmt: skip
    yield of_definition("longest-gap", facts.longest_gap_days, "d", sessions,
                        say("The most days from one session to the next."), as_of)  # fmt: skip
    yield of_definition("weight-per-week", facts.g_per_week, "g/week", sessions,
                        say("As fruit per week, in weight."), as_of)  # fmt: skip
    over = say("the two weeks are over") if facts.early_is_over else say("the two weeks are not over yet")
    yield of_definition("early-count", facts.early_count, "", (Input("first two weeks", over),),
                        say("Marketable fruit of the first 14 days of picking."), as_of)  # fmt: skip
    for cause in CullCause:
        yield of_definition(f"culled-{cause.value}", facts.culls.get(cause.value, 0), "", (),
                            say("Culled fruit of this cause, added up."), as_of)  # fmt: skip


PICK_FACTS = FactFamily(
    "picks",
    mark("What the picks say"),
    (
        FactKey("marketable-percent", "%", mark("Marketable fruit of all fruit picked")),
        *(FactKey(f"culled-{cause.value}", "", _CULLS[cause]) for cause in CullCause),
        FactKey("fruit-weight-trend", "g/week", mark("Change of the mean fruit weight")),
        FactKey("sessions", "", mark("Picking sessions")),
        FactKey("fruit-per-session", "", mark("Fruit of a session")),
        FactKey("days-between-sessions", "d", mark("Days between sessions")),
        FactKey("longest-gap", "d", mark("Longest gap between sessions")),
        FactKey("fruit-per-week", "fruit/week", mark("Fruit a week")),
        FactKey("weight-per-week", "g/week", mark("Weight a week")),
        FactKey("early-count", "", mark("Fruit of the first two weeks of picking")),
        FactKey("early-yield", "g", mark("Weight of the first two weeks of picking")),
        FactKey("fruit-per-plant", "fruit/plant", mark("Fruit for each plant alive")),
        FactKey("weight-per-plant", "g/plant", mark("Weight for each plant alive")),
        FactKey("weight-per-m2", "g/m²", mark("Weight for each m² of floor")),
        FactKey("weight-per-litre", "g/L", mark("Weight for each litre of feed")),
        FactKey("weight-per-hour", "g/h", mark("Weight for each hour of labour")),
    ),
    _work,
)
