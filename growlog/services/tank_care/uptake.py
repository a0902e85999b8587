"""What the plants of a tank took up between two readings."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from growlog.calculations import tank
from growlog.calculations.explained_figure import Figure
from growlog.calculations.nutrients import elements, scaled
from growlog.calculations.tank import Tank
from growlog.records.entry import Entry, Feed, Owner, OwnerKind, TankCare
from growlog.services.mixer.bench import Bench, content_of, read_bench, state_with_mix
from growlog.services.mixer.state import MixerState
from growlog.services.mixing import result_of
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say, show_number


@dataclass(frozen=True)
class UptakeView:
    """What the plants took up between two readings: L, mS/cm of that water, and by element in mg/L where the mix in the
    tank is known (its proportions taken for those of the uptake). words: in a sentence."""

    water_l: float
    ec_ms_per_cm: float
    difference_ms_per_cm: float
    elements_mg_per_l: dict[str, float]
    words: str
    figure: Figure


@dataclass(frozen=True)
class TankReading:
    """An entry of a tank. as_found: before it was cared for; as_left: after. None: volume or EC was not measured."""

    entry_id: str
    day: date
    as_found: Tank | None
    as_left: Tank | None


def tank_readings(bench: Bench, tank_id: str) -> list[TankReading]:
    """The entries of a tank that state volume and EC, before or after, in order."""
    own = [e for e in bench.readings if e.owner == Owner(OwnerKind.TANK, tank_id)]
    found = [TankReading(e.id, e.day, _tank_before(e), _tank_after(e)) for e in own]
    return [r for r in found if r.as_found or r.as_left]


def uptake_of(
    log: OpenLogbook, before: Tank, after: Tank, added: Tank, *, drained: Tank | None = None, mix_id: str | None = None
) -> UptakeView | None:
    """What the plants of a tank took up between two readings; None where no water was used. ValueError as uptake."""
    found = tank.uptake(before, after, added, drained)
    if found is None:
        return None
    contents: dict[str, float] = {}
    if mix_id is not None:
        with log.unit() as unit:
            contents = _by_mix(read_bench(unit, log.today()), mix_id, found.ec_ms_per_cm)
    figure = tank.explain_uptake(before, after, added, drained)
    return UptakeView(
        found.water_l, found.ec_ms_per_cm, found.difference_ms_per_cm, contents, _uptake_words(found), figure
    )


def uptake_between(log: OpenLogbook, earlier_id: str, later_id: str) -> UptakeView | None:
    """The same from two entries of one tank that state volume and EC: what was added between counts as added.

    None where a volume or EC was not measured, at either end or when something was added or let out between, where the
    tank was filled anew between, or where no water was used.
    """
    with log.unit() as unit:
        entries = _of_tank(unit, unit.entries.get(earlier_id).owner.id)
    ids = [e.id for e in entries]
    return _uptake_over(log, entries[ids.index(earlier_id) : ids.index(later_id) + 1])


def latest_uptake(log: OpenLogbook, tank_id: str, until: date | None = None) -> UptakeView | None:
    """What was taken up between the last two readings of a recirculating tank up to a day (None: today).

    None for a tank whose drain goes to waste: there each feed tells it (see drain_series).
    """
    with log.unit() as unit:
        if not unit.tanks.get(tank_id).recirculates:
            return None
        entries = [e for e in _of_tank(unit, tank_id) if e.day <= (until or log.today())]
    last = max((n for n, e in enumerate(entries) if _tank_before(e)), default=0)
    first = max((n for n, e in enumerate(entries[:last]) if _tank_after(e)), default=None)
    return None if first is None else _uptake_over(log, entries[first : last + 1])


def _uptake_over(log: OpenLogbook, entries: list[Entry]) -> UptakeView | None:
    """From the first of a tank's entries, in their order, to the last."""
    if len(entries) < 2:
        return None
    start, end, between = _tank_after(entries[0]), _tank_before(entries[-1]), entries[1:-1]
    if start is None or end is None or any(_leaves_open(e) for e in between):
        return None
    added, drained = _between(between)
    mix_ids = [m for e in entries[:-1] if (m := getattr(e.detail, "mix_id", None))]
    return uptake_of(log, start, end, added, drained=drained, mix_id=mix_ids[-1] if mix_ids else None)


def _of_tank(unit: UnitOfWork, tank_id: str) -> list[Entry]:
    return unit.entries.all(tank_id=tank_id, kind=["feed", "tank-care"])


def _leaves_open(entry: Entry) -> bool:
    """Whether something came or went that was not measured, or the tank was filled anew."""
    detail = entry.detail
    if not isinstance(detail, TankCare):
        return True
    changed = detail.water_added_l or detail.drained_l
    return bool(changed) and (_tank_before(entry) is None or _tank_after(entry) is None)


def _by_mix(bench: Bench, mix_id: str, ec_ms_per_cm: float) -> dict[str, float]:
    state = state_with_mix(bench, bench.mixes[mix_id], MixerState())
    result = result_of(content_of(bench, state))
    if result.unknown_products or result.ec.estimate <= 0:
        return {}
    return elements(scaled(result.nutrients_mg_per_l, max(ec_ms_per_cm, 0.0) / result.ec.estimate))


def _uptake_words(found: tank.Uptake) -> str:
    if found.ec_ms_per_cm < 0:
        return say("More salts are left than were there: a reading is off, or an addition was not written down.")
    strength = show_number(found.ec_ms_per_cm, 2)
    if found.difference_ms_per_cm > 0.1:
        return say("The plants took up {ec} mS/cm, stronger than the tank.", ec=strength)
    if found.difference_ms_per_cm < -0.1:
        return say("The plants took up {ec} mS/cm, weaker than the tank.", ec=strength)
    return say("The plants took up {ec} mS/cm, as strong as the tank.", ec=strength)


def _tank_after(entry: Entry) -> Tank | None:
    detail = entry.detail
    if isinstance(detail, Feed):
        return _tank(detail.volume_l, detail.ec_ms_per_cm)
    if isinstance(detail, TankCare) and detail.volume_before_l is not None:
        left = detail.volume_before_l - (detail.drained_l or 0.0) + (detail.water_added_l or 0.0)
        return _tank(left, detail.ec_after_ms_per_cm)
    return None


def _tank_before(entry: Entry) -> Tank | None:
    detail = entry.detail
    return _tank(detail.volume_before_l, detail.ec_before_ms_per_cm) if isinstance(detail, TankCare) else None


def _tank(volume_l: float | None, ec_ms_per_cm: float | None) -> Tank | None:
    return None if volume_l is None or ec_ms_per_cm is None else Tank(volume_l, ec_ms_per_cm)


def _between(entries: Iterable[Entry]) -> tuple[Tank, Tank | None]:
    """What came in between, by what it did to the tank's salts, and what was let out."""
    water_l = salts = drained_l = drained_salts = 0.0
    for entry in entries:
        before, after = _tank_before(entry), _tank_after(entry)
        detail = entry.detail
        if not isinstance(detail, TankCare) or before is None or after is None:
            continue
        out = detail.drained_l or 0.0
        water_l += detail.water_added_l or 0.0
        drained_l += out
        drained_salts += out * before.ec_ms_per_cm
        salts += after.salts - (before.salts - out * before.ec_ms_per_cm)
    added = Tank(water_l, salts / water_l if water_l > 0 else 0.0)
    return added, Tank(drained_l, drained_salts / drained_l) if drained_l > 0 else None
