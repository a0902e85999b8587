"""The prices that belong to the logbook: its currency, the worth of an hour, and water."""

from growlog.records.change import Change
from growlog.records.logbook import LogbookFacts
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say


def facts_in(unit: UnitOfWork) -> LogbookFacts:
    """The logbook's own facts, within a unit of work."""
    return next(iter(unit.logbook.all()), LogbookFacts("", "-"))


def prices_of(log: OpenLogbook) -> LogbookFacts:
    """The logbook's own facts; an hour of labour and water cost None until the grower says."""
    with log.unit() as unit:
        return facts_in(unit)


def save_prices(log: OpenLogbook, facts: LogbookFacts) -> Change:
    """Writes changed prices; RecordRefused, or RecordMoved if they changed elsewhere."""
    group = new_id()
    with log.unit() as unit:
        unit.change(group, facts)
        unit.commit()
    return Change(group, say("Change prices"), (facts.id,), None)
