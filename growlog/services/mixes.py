"""Mixes as versions: a changed mix is the next edition, never an edit."""

from growlog.records.change import Change
from growlog.records.recipe import Mix, MixPart, WaterShare
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

_DIGITS = 9  # significant: what differs less was not changed by anyone


def mixes_of(log: OpenLogbook) -> list[Mix]:
    """The newest edition of each mix, by name."""
    with log.unit() as unit:
        mixes = sorted(unit.mixes.all(), key=lambda m: m.edition)
    return sorted({_key(m.name): m for m in mixes}.values(), key=lambda m: _key(m.name))


def save_mix(
    log: OpenLogbook, name: str, parts: tuple[MixPart, ...], note: str = "", waters: tuple[WaterShare, ...] = ()
) -> tuple[Mix, Change]:
    """Writes the next edition of a mix of that name; RecordRefused with all that is wrong."""
    group = new_id()
    with log.unit() as unit:
        mix = _next_edition(unit, name, parts, waters, note)
        unit.add(group, mix)
        unit.commit()
    return mix, Change(group, say("Save mix {name}", name=mix.name), (mix.id,), None)


def edition_of(
    unit: UnitOfWork, name: str, parts: tuple[MixPart, ...], waters: tuple[WaterShare, ...] = (), note: str = ""
) -> tuple[Mix, bool]:
    """The edition that says just this: the newest where it does (False), else the next one, not yet written (True)."""
    standing = [m for m in unit.mixes.all() if _key(m.name) == _key(name)]
    newest = max(standing, key=lambda m: m.edition, default=None)
    if newest is not None and _same(newest, parts, waters) and note in ("", newest.note):
        return newest, False
    return _next_edition(unit, name, parts, waters, note), True


def _next_edition(
    unit: UnitOfWork, name: str, parts: tuple[MixPart, ...], waters: tuple[WaterShare, ...], note: str
) -> Mix:
    earlier = [m for m in unit.mixes.all(removed=True) if _key(m.name) == _key(name)]
    return Mix(new_id(), name.strip(), max((m.edition for m in earlier), default=0) + 1, parts, note, waters)


def _same(mix: Mix, parts: tuple[MixPart, ...], waters: tuple[WaterShare, ...]) -> bool:
    return _contents(mix.parts) == _contents(parts) and _blend(mix.waters) == _blend(waters)


def _contents(parts: tuple[MixPart, ...]) -> list[tuple[str, str, str, str]]:
    return sorted((p.product_id or "", p.product, f"{p.dose_per_l:.{_DIGITS}g}", p.unit) for p in parts)


def _blend(waters: tuple[WaterShare, ...]) -> list[tuple[str, str]]:
    return sorted((w.water_id, f"{w.water_share:.{_DIGITS}g}") for w in waters)


def _key(name: str) -> str:
    return name.strip().casefold()
