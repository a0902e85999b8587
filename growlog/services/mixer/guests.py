"""Products and water that came with a file: put on the shelf and among the waters, so that a saved mix keeps them."""

from dataclasses import replace

from growlog.calculations.water import RAIN_OR_REVERSE_OSMOSIS
from growlog.records.change import Change
from growlog.records.problems import RecordRefused
from growlog.records.product import ShelfProduct
from growlog.records.recipe import WaterShare
from growlog.records.source_water import SourceWater
from growlog.services.mixer.state import MixerState
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.shelf.conversion import shelf_product
from growlog.services.shelf.products import standing_product_problems
from growlog.services.waters import source_water
from growlog.words import say


def keep_guests(log: OpenLogbook, state: MixerState) -> tuple[MixerState, Change | None]:
    """Writes a state's guests to the shelf and its typed water to the waters, as one undoable change.

    The state with both as the logbook has them; None where there was nothing to keep. RecordRefused, fields "guests"
    for labels that cannot be or names that the shelf has already.
    """
    products = [shelf_product(guest, new_id()) for guest in state.guests]
    water = _water_of(log, state)
    if not products and water is None:
        return state, None
    group = new_id()
    with log.unit() as unit:
        problems = [replace(p, field="guests") for made in products for p in standing_product_problems(unit, made)]
        firm = [p for p in problems if not p.asks]
        if firm:
            raise RecordRefused(firm)
        unit.add(group, *products, *([water] if water else []))
        unit.commit()
    kept = _with(state, products, water)
    ids = (*(p.id for p in products), *([water.id] if water else []))
    return kept, Change(group, say("Keep what came with {name}", name=state.mix_name or say("the file")), ids, None)


def _water_of(log: OpenLogbook, state: MixerState) -> SourceWater | None:
    if state.waters or state.typed_water in (None, RAIN_OR_REVERSE_OSMOSIS):
        return None
    wanted = say("water of {mix}", mix=state.mix_name) if state.mix_name else say("water")
    with log.unit() as unit:
        taken = {w.name.strip().casefold() for w in unit.waters.all()}
    name, number = wanted, 2
    while name.casefold() in taken:
        name, number = f"{wanted} {number}", number + 1
    return source_water(state.typed_water or RAIN_OR_REVERSE_OSMOSIS, name)


def _with(state: MixerState, products: list[ShelfProduct], water: SourceWater | None) -> MixerState:
    ids = {p.name: p.id for p in products}
    doses = tuple(d if d.product_id else replace(d, product_id=ids.get(d.product)) for d in state.doses)
    if water is None:
        return replace(state, doses=doses, guests=())
    return replace(state, doses=doses, guests=(), waters=(WaterShare(water.id, 1.0),), typed_water=None)
