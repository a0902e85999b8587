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
    """The mix of the last feed of this crop or tank."""
    for entry in reversed(bench.readings):
        detail = entry.detail
        if entry.id in bench.own_ids and isinstance(detail, Feed) and detail.mix_id and detail.mix_id in bench.mixes:
            asked = replace(
                state,
                strength_percent=detail.strength_percent or 100.0,
                tank_l=state.tank_l or detail.volume_l,
            )
            return state_with_mix(bench, bench.mixes[detail.mix_id], asked)
    return state
