"""What lies on the bench while a tank is mixed: shelf, waters, mixes and readings, read once."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date

from growlog.calculations.dose_units import DOSE_UNITS, measure_of
from growlog.calculations.products import BY_WEIGHT, IN_VOLUME, LIQUID, SOLID, Product
from growlog.calculations.water import Water
from growlog.records.crop import Crop
from growlog.records.entry import Entry, OwnerKind
from growlog.records.feed_target import FeedTarget
from growlog.records.recipe import Mix
from growlog.records.room import Tank
from growlog.records.source_water import SourceWater
from growlog.services.entries import own_entries
from growlog.services.mixer.state import MixerDose, MixerState
from growlog.services.mixing import ready_salts
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf.conversion import calc_product
from growlog.services.shelf.stock import ShelfItem, currency_of, shelf_items
from growlog.services.waters import blended
from growlog.sharing.mix_file import MixDose, MixFile
from growlog.storage.unit_of_work import UnitOfWork


@dataclass(frozen=True)
class Bench:
    """By id, what is in the bin included, since old mixes name it. readings: feeds and tank care of the whole logbook
    up to the day, in order; own_ids: those of them that are the crop's or its tanks'.
    """

    day: date
    items: Mapping[str, ShelfItem]
    waters: Mapping[str, SourceWater]
    mixes: Mapping[str, Mix]
    crop: Crop | None
    species: str
    tank: Tank | None
    readings: tuple[Entry, ...]
    own_ids: frozenset[str]
    currency: str
    targets: tuple[FeedTarget, ...] = ()


def bench_of(log: OpenLogbook, state: MixerState) -> Bench:
    """The bench for a state's crop, tank and day."""
    day = state.day or log.today()
    with log.unit() as unit:
        return read_bench(unit, day, state.crop_id, state.tank_id)


def read_bench(unit: UnitOfWork, day: date, crop_id: str | None = None, tank_id: str | None = None) -> Bench:
    """The same in an open unit."""
    crop = unit.crops.find(crop_id) if crop_id else None
    readings = tuple(e for e in unit.entries.all(kind=["feed", "tank-care"]) if e.day <= day)
    return Bench(
        day=day,
        items=shelf_items(unit, day, removed=True),
        waters={w.id: w for w in unit.waters.all(removed=True)},
        mixes={m.id: m for m in unit.mixes.all(removed=True)},
        crop=crop,
        species=unit.cultivars.get(crop.cultivar_id).species if crop else "",
        tank=unit.tanks.find(tank_id) if tank_id else None,
        readings=readings,
        own_ids=_own_ids(unit, crop, tank_id, readings),
        currency=currency_of(unit),
        targets=tuple(unit.feed_targets.all()),
    )


def product_of(bench: Bench, state: MixerState, dose: MixerDose) -> tuple[Product, ShelfItem | None]:
    """The product of a dose line, and its stock where it is on the shelf. One that is nowhere is of unknown content."""
    item = bench.items.get(dose.product_id or "")
    if item is not None:
        return calc_product(item.product), item
    name = _key(dose.product)
    guest = next((p for p in state.guests if _key(p.name) == name), None)
    if guest is not None:
        return guest, None
    item = next((i for i in on_shelf(bench) if _key(i.product.name) == name), None)
    if item is not None:
        return calc_product(item.product), item
    ready = next((s.product for s in ready_salts() if _key(s.product.name) == name), None)
    return ready or _unknown(dose), None


def on_shelf(bench: Bench) -> list[ShelfItem]:
    """What is not in the bin, by name."""
    here = [i for i in bench.items.values() if i.product.removed_at is None]
    return sorted(here, key=lambda i: _key(i.product.name))


def water_of(bench: Bench, state: MixerState) -> Water:
    """The water of a state: its blend, or the one typed or read from a file."""
    if not state.waters and state.typed_water is not None:
        return state.typed_water
    return blended(bench.waters, state.waters)


def content_of(bench: Bench, state: MixerState) -> MixFile:
    """The state as the calculations take it; a tank of 0 L, unknown units and the like are left to be told."""
    products: dict[str, Product] = {}
    doses = []
    for dose in state.doses:
        product = _named_apart(product_of(bench, state, dose)[0], products)
        products[product.name] = product
        doses.append(MixDose(product.name, dose.amount, dose.unit))
    return MixFile(
        tank_l=state.tank_l,
        water=water_of(bench, state),
        products=tuple(products.values()),
        doses=tuple(doses),
        strength=state.strength_percent / 100,
        ph=state.ph,
        name=state.mix_name,
        ignored=state.ignored,
    )


def state_with_mix(bench: Bench, mix: Mix, state: MixerState) -> MixerState:
    """A state with the doses, waters and name of a saved mix; all else stays."""
    doses = []
    for part in mix.parts:
        item = bench.items.get(part.product_id or "")
        doses.append(
            MixerDose(item.product.name if item else part.product, part.dose_per_l, part.unit, part.product_id)
        )
    waters = mix.waters or state.waters
    return replace(state, doses=tuple(doses), waters=waters, mix_name=mix.name, guests=())


def _named_apart(product: Product, taken: Mapping[str, Product]) -> Product:
    """The product under a name that no other one of the mix has."""
    name, number = product.name, 2
    while taken.get(name, replace(product, name=name)) != replace(product, name=name):
        name, number = f"{product.name} ({number})", number + 1
    return replace(product, name=name)


def _unknown(dose: MixerDose) -> Product:
    by_volume = dose.unit not in DOSE_UNITS or measure_of(dose.unit) == "mL"
    return Product(dose.product, LIQUID, IN_VOLUME) if by_volume else Product(dose.product, SOLID, BY_WEIGHT)


def _own_ids(unit: UnitOfWork, crop: Crop | None, tank_id: str | None, readings: tuple[Entry, ...]) -> frozenset[str]:
    own = {e.id for e in own_entries(unit, [crop.id])[crop.id]} if crop else set()
    places = [p for p in unit.placements.all(crop_id=crop.id) if p.tank_id] if crop else []
    for entry in readings:
        if entry.owner.kind is OwnerKind.TANK:
            stood = any(p.tank_id == entry.owner.id and p.covers(entry.day) for p in places)
            if stood or entry.owner.id == tank_id:
                own.add(entry.id)
    return frozenset(own)


def _key(name: str) -> str:
    return name.strip().casefold()
