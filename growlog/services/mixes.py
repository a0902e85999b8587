"""Mixes as versions: a changed mix is the next edition, never an edit."""

from growlog.records.change import Change
from growlog.records.recipe import Mix, MixPart
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.words import say


def mixes_of(log: OpenLogbook) -> list[Mix]:
    """The newest edition of each mix, by name."""
    with log.unit() as unit:
        mixes = sorted(unit.mixes.all(), key=lambda m: m.edition)
    return sorted({_key(m.name): m for m in mixes}.values(), key=lambda m: _key(m.name))


def save_mix(log: OpenLogbook, name: str, parts: tuple[MixPart, ...], note: str = "") -> tuple[Mix, Change]:
    """Writes the next edition of a mix of that name; RecordRefused with all that is wrong."""
    group = new_id()
    with log.unit() as unit:
        earlier = [m for m in unit.mixes.all(removed=True) if _key(m.name) == _key(name)]
        mix = Mix(new_id(), name.strip(), max((m.edition for m in earlier), default=0) + 1, parts, note)
        unit.add(group, mix)
        unit.commit()
    return mix, Change(group, say("Save mix {name}", name=mix.name), (mix.id,), None)


def _key(name: str) -> str:
    return name.strip().casefold()
