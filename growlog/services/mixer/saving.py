"""Mixes of the mixer: saved as the next edition, taken from a saved one, and as a file."""

from dataclasses import replace
from pathlib import Path

from growlog.calculations.dose_units import dose_per_litre
from growlog.calculations.products import Product
from growlog.records.change import Change
from growlog.records.problems import refuse
from growlog.records.recipe import Mix, MixPart
from growlog.services.mixer.bench import Bench, bench_of, content_of, on_shelf, state_with_mix
from growlog.services.mixer.lines import DoseRow, dose_rows
from growlog.services.mixer.state import MixerDose, MixerState, OwnTarget, Range
from growlog.services.mixer.view import view_at
from growlog.services.mixes import edition_of
from growlog.services.mixing import read_mix, write_mix
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.shelf.conversion import calc_product
from growlog.words import say


def save_state(log: OpenLogbook, state: MixerState, name: str, note: str = "") -> tuple[Mix, Change | None]:
    """Saves the doses at 100 % strength with their waters as the next edition of a mix of that name.

    The newest edition and None where it says the same already. RecordRefused with all that is wrong.
    """
    bench = bench_of(log, state)
    refuse(view_at(bench, state).problems)
    group = new_id()
    with log.unit() as unit:
        mix, is_new = edition_of(unit, name, parts_of(bench, state), state.waters, note)
        if not is_new:
            return mix, None
        unit.add(group, mix)
        unit.commit()
    return mix, Change(group, say("Save mix {name}", name=mix.name), (mix.id,), None)


def state_of_mix(log: OpenLogbook, mix_id: str, state: MixerState) -> MixerState:
    """A state with the doses, waters and name of a saved mix; tank, strength and target stay."""
    bench = bench_of(log, state)
    return state_with_mix(bench, bench.mixes[mix_id], state)


def file_of_state(log: OpenLogbook, state: MixerState, path: Path) -> None:
    """Writes the state as a mix file, with its products and its water; RecordRefused with all that is wrong."""
    bench = bench_of(log, state)
    refuse(view_at(bench, state).problems)
    write_mix(path, replace(content_of(bench, state), ignored=()))


def state_of_file(log: OpenLogbook, path: Path, state: MixerState) -> MixerState:
    """A state with the doses, products, water and target of a mix file; RecordRefused naming the file and field.

    A product of the file that the shelf has with the same label is that one; the others come as guests.
    """
    content = read_mix(path)
    bench = bench_of(log, state)
    ids = {i.product.name: i.product.id for i in on_shelf(bench) if calc_product(i.product) in content.products}
    target = OwnTarget({k: Range(mg, mg) for k, mg in content.target_mg_per_l.items()}, path.stem)
    return replace(
        state,
        tank_l=state.tank_l if content.tank_l is None else content.tank_l,
        strength_percent=content.strength * 100,
        doses=tuple(MixerDose(d.product, d.amount, d.unit, ids.get(d.product)) for d in content.doses),
        waters=() if content.water is not None else state.waters,
        typed_water=content.water,
        target=target if content.target_mg_per_l else state.target,
        ph=content.ph,
        mix_name=content.name or path.stem,
        guests=tuple(p for p in content.products if p.name not in ids),
        ignored=content.ignored,
    )


def parts_of(bench: Bench, state: MixerState) -> tuple[MixPart, ...]:
    """The doses per litre at 100 % strength, in mL/L or g/L; lines of 0 are left out."""
    return tuple(_part(row, state) for row in dose_rows(bench, state) if row.dose.amount > 0)


def _part(row: DoseRow, state: MixerState) -> MixPart:
    per_l = dose_per_litre(row.dose.amount, row.dose.unit, state.tank_l)
    product: Product = row.product
    return MixPart(product.name, per_l.amount, f"{per_l.measure}/L", row.item.product.id if row.item else None)
