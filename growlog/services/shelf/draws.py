"""What the care of a tank takes from bottles."""

from dataclasses import replace

from growlog.calculations.products import in_own_measure
from growlog.records.entry import Entry, TankCare
from growlog.records.product import StockMove, StockMoveSort
from growlog.services.shelf.conversion import calc_product
from growlog.services.shelf.move_ids import move_id
from growlog.storage.unit_of_work import UnitOfWork


def draws_of(unit: UnitOfWork, entry: Entry) -> list[StockMove]:
    """The stock moves that an entry stands for, not yet written: the doses of tank care that name a product.

    What was mixed for a feed is drawn by the mixer, which knows the whole tank.
    """
    if not isinstance(entry.detail, TankCare):
        return []
    moves = []
    for dose in entry.detail.doses:
        product = unit.products.find(dose.product_id) if dose.product_id else None
        amount = None if product is None else in_own_measure(calc_product(product), dose.dose_amount, dose.unit)
        if product is not None and amount:
            used = StockMoveSort.USED
            moves.append(StockMove(move_id(unit.now), product.id, entry.day, used, amount, entry_id=entry.id))
    return moves


def follow_entry(unit: UnitOfWork, group_id: str, before: Entry, entry: Entry) -> None:
    """Brings the stock moves of a corrected entry in line: tank care draws anew, a feed's moves follow its day."""
    moves = unit.stock_moves.all(entry_id=entry.id)
    if isinstance(entry.detail, TankCare):
        if (entry.day, entry.detail) == (before.day, before.detail):
            return
        for move in moves:
            unit.remove(group_id, move)
        unit.add(group_id, *draws_of(unit, entry))
        return
    for move in moves:
        if move.day != entry.day:
            unit.change(group_id, replace(move, day=entry.day))
