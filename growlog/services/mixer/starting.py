"""The state in which the mixer opens: the planned feed of the day, or the mix last used."""

from dataclasses import replace
from datetime import date

from growlog.records.entry import Feed
from growlog.services.feed_plan import planned_in
from growlog.services.mixer.bench import Bench, read_bench, state_with_mix
from growlog.services.mixer.state import MixerState
from growlog.services.open_logbook import OpenLogbook


def starting_state(
    log: OpenLogbook, crop_id: str | None = None, tank_id: str | None = None, day: date | None = None
) -> MixerState:
    """Tank, mix, strength and volume for a crop or a tank on a day (None: today); empty where nothing is known."""
    on = day or log.today()
    with log.unit() as unit:
        places = [p for p in unit.placements.all(crop_id=crop_id) if p.covers(on)] if crop_id else []
        tank_id = tank_id or next((p.tank_id for p in places if p.tank_id), None)
        bench = read_bench(unit, on, crop_id, tank_id)
        planned = planned_in(unit, crop_id, on) if crop_id else None
    state = MixerState(bench.tank.tank_l if bench.tank else None, crop_id=crop_id, tank_id=tank_id, day=on)
    if planned is not None:
        planned_state = replace(
            state, strength_percent=planned.strength_percent, tank_l=planned.volume_l or state.tank_l
        )
        return state_with_mix(bench, planned.mix, planned_state)
    return _as_last(bench, state)


def _as_last(bench: Bench, state: MixerState) -> MixerState:
    """The mix of the last feed of this crop or tank, or the one that its tank was filled or topped up with since."""
    for entry in reversed(bench.readings):
        detail = entry.detail
        mix = bench.mixes.get(getattr(detail, "mix_id", None) or "")
        if entry.id not in bench.own_ids or mix is None:
            continue
        if isinstance(detail, Feed):
            strength = detail.strength_percent or 100.0
            state = replace(state, strength_percent=strength, tank_l=state.tank_l or detail.volume_l)
        return state_with_mix(bench, mix, state)
    return state
