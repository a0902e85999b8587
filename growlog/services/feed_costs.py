"""What feeds cost: of one feed and of a whole crop, by what was drawn from the bottles."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import Any

from growlog.calculations.dose_units import DosePerLitre, dose_per_litre
from growlog.calculations.products import in_own_measure
from growlog.records.crop import Crop
from growlog.records.entry import Entry, Feed, OwnerKind
from growlog.records.money import Money, money_of
from growlog.records.product import StockMove, StockMoveSort
from growlog.records.recipe import Mix, MixPart
from growlog.services.entries import entries_of_crop
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf.conversion import calc_product
from growlog.services.shelf.stock import ShelfItem, currency_of, shelf_items
from growlog.storage.unit_of_work import UnitOfWork


@dataclass(frozen=True)
class FeedCost:
    """amount: exact, in the currency's main unit; litres: given in those feeds. unpriced: products without a price and
    mixes whose bottles or amounts are not known, missing from the sum."""

    amount: Decimal
    litres: float
    unpriced: tuple[str, ...]
    currency: str

    @property
    def money(self) -> Money:
        """Rounded to the currency's smallest coin."""
        return money_of(self.amount, self.currency)

    @property
    def per_l(self) -> Decimal | None:
        """A litre; None where no volume is known."""
        return self.amount / Decimal(repr(self.litres)) if self.litres > 0 else None


def feed_cost(log: OpenLogbook, entry_id: str) -> FeedCost:
    """The cost of one feed or care of a tank."""
    with log.unit() as unit:
        prices = _Prices(unit, log.today())
        return prices.of([(unit.entries.get(entry_id), 1.0)])


def crop_feed_cost(log: OpenLogbook, crop_id: str) -> FeedCost:
    """The cost of all feeds of a crop up to today.

    What went into a tank is shared equally by the crops that stood by it that day. A feed logged without drawing
    bottles down counts by its mix, strength and volume.
    """
    with log.unit() as unit:
        crop = unit.crops.get(crop_id)
        shares = [(e, _share(unit, crop, e)) for e in entries_of_crop(unit, crop) if e.day <= log.today()]
        return _Prices(unit, log.today()).of([(e, s) for e, s in shares if e.kind in ("feed", "tank-care")])


def costs_of_entries(unit: UnitOfWork, entries: Iterable[tuple[Entry, float]], today: date) -> list[FeedCost]:
    """The cost of each of these feeds and cares of tanks, by the share that counts of it."""
    prices = _Prices(unit, today)
    return [prices.of([(entry, share)]) for entry, share in entries]


class _Prices:
    """Prices, mixes and stock moves, read once."""

    def __init__(self, unit: UnitOfWork, today: date) -> None:
        self.items = shelf_items(unit, today, removed=True)
        self.by_name = {i.product.name.strip().casefold(): i for i in self.items.values()}
        self.mixes: Mapping[str, Mix] = {m.id: m for m in unit.mixes.all(removed=True)}
        self.currency = currency_of(unit)
        self.moves: dict[str, list[StockMove]] = {}
        for move in unit.stock_moves.all():
            if move.entry_id and move.sort is StockMoveSort.USED:
                self.moves.setdefault(move.entry_id, []).append(move)

    def of(self, entries: Iterable[tuple[Entry, float]]) -> FeedCost:
        """The sum of entries, each by its share."""
        amount, litres, unpriced = Decimal(0), 0.0, list[str]()
        for entry, share in entries:
            litres += (getattr(entry.detail, "volume_l", None) or 0.0) * share
            for item, name, used in self._used(entry):
                if item is None or item.cost_per_unit is None or used is None:
                    unpriced.append(name)
                else:
                    amount += item.cost_per_unit * Decimal(repr(used)) * Decimal(repr(share))
        return FeedCost(amount, litres, tuple(dict.fromkeys(unpriced)), self.currency)

    def _used(self, entry: Entry) -> list[tuple[ShelfItem | None, str, float | None]]:
        """Each product of an entry with its name and amount, by its stock moves, else by its mix."""
        moves = self.moves.get(entry.id)
        if moves:
            items = [(self.items[m.product_id], m.amount) for m in moves]
            return [(item, item.product.name, amount) for item, amount in items]
        detail = entry.detail
        if not isinstance(detail, Feed) or detail.mix_id not in self.mixes or detail.volume_l is None:
            return []
        factor = detail.volume_l * (100.0 if detail.strength_percent is None else detail.strength_percent) / 100
        return [self._part(part, factor) for part in self.mixes[detail.mix_id or ""].parts]

    def _part(self, part: MixPart, litres: float) -> tuple[ShelfItem | None, str, float | None]:
        item = self.items.get(part.product_id or "") or self.by_name.get(part.product.strip().casefold())
        if item is None:
            return None, part.product, None
        try:
            dose: DosePerLitre = dose_per_litre(part.dose_per_l, part.unit)
        except ValueError:  # a unit that nothing here knows, or one per tank: how much it was is not known
            return item, part.product, None
        return item, part.product, in_own_measure(calc_product(item.product), dose.amount * litres, dose.measure)


def _share(unit: UnitOfWork, crop: Crop, entry: Entry) -> float:
    """1 for the crop's own; of a tank's or a room's entry, one of the crops that stood there that day."""
    if entry.owner.kind in (OwnerKind.CROP, OwnerKind.PLANT):
        return 1.0
    place: dict[str, Any] = {"tank_id" if entry.owner.kind is OwnerKind.TANK else "room_id": entry.owner.id}
    there = {p.crop_id for p in unit.placements.all(**place) if p.covers(entry.day)}
    gone = {c.id for c in unit.crops.all(removed=True) if c.removed_at or (c.cleared_on and c.cleared_on < entry.day)}
    return 1 / max(len((there | {crop.id}) - gone), 1)
