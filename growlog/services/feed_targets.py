"""The grower's own targets for what a feed is to hold: kept by name."""

from collections.abc import Sequence
from dataclasses import replace

from growlog.records.change import Change
from growlog.records.feed_target import FeedTarget, TargetRange
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.words import say


def targets_of(log: OpenLogbook) -> list[FeedTarget]:
    """All kept targets by name."""
    with log.unit() as unit:
        return sorted(unit.feed_targets.all(), key=lambda t: _key(t.name))


def save_target(log: OpenLogbook, name: str, ranges: Sequence[TargetRange], note: str = "") -> Change:
    """Keeps a target under its name, over one that has it already; RecordRefused with all that is wrong.

    ranges: mg/L of feed by element symbol or "NH4-N", each once; None is open at that end.
    """
    group = new_id()
    with log.unit() as unit:
        kept = next((t for t in unit.feed_targets.all() if _key(t.name) == _key(name)), None)
        if kept is None:
            target = FeedTarget(new_id(), name.strip(), tuple(ranges), note)
            unit.add(group, target)
        else:
            target = unit.change(group, replace(kept, name=name.strip(), ranges=tuple(ranges), note=note))
        unit.commit()
    return Change(group, say("Keep target {name}", name=target.name), (target.id,), frozenset())


def remove_target(log: OpenLogbook, target_id: str) -> Change:
    """Puts a target into the bin."""
    group = new_id()
    with log.unit() as unit:
        target = unit.feed_targets.get(target_id)
        unit.remove(group, target)
        unit.commit()
    return Change(group, say("Remove {name}", name=target.name), (target_id,), frozenset())


def _key(name: str) -> str:
    return name.strip().casefold()
