"""The shelf as it stands: level, days left and cost of each product, and the moves behind them."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from growlog.calculations import stock
from growlog.calculations.explained_figure import Figure
from growlog.records.change import Change
from growlog.records.money import decimals_of
from growlog.records.problems import Problem, refuse
from growlog.records.product import ShelfProduct, StockMove, StockMoveSort
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.shelf.move_ids import move_id
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

LOW_DAYS = 7


@dataclass(frozen=True)
class ShelfItem:
    """A product and its stock, in the product's own measure (mL or g).

    level: None where nothing was ever bought or counted. days_left: at the present use, None where nothing is used.
    cost_per_unit: exact, in the currency's main unit per mL or g, None without a price. low: under a week is left.
    """

    product: ShelfProduct
    level: float | None
    use_per_day: float
    days_left: float | None
    cost_per_unit: Decimal | None

    @property
    def low(self) -> bool:
        """Whether it is worth buying now."""
        return self.level == 0 or (self.days_left is not None and self.days_left < LOW_DAYS)


def shelf(log: OpenLogbook, until: date | None = None) -> list[ShelfItem]:
    """All products by name, with their stock at the end of a day (None: today)."""
    with log.unit() as unit:
        items = shelf_items(unit, until or log.today())
    return sorted(items.values(), key=lambda i: i.product.name.casefold())


def shelf_items(unit: UnitOfWork, until: date, *, removed: bool = False) -> dict[str, ShelfItem]:
    """The same by product id, in an open unit; removed: those of the bin too, for what was mixed with them."""
    moves = _moves_by_product(unit)
    decimals = decimals_of(currency_of(unit))
    return {p.id: _item(p, moves.get(p.id, []), until, decimals) for p in unit.products.all(removed=removed)}


def moves_of(log: OpenLogbook, product_id: str) -> list[StockMove]:
    """What came to and went from a product, the latest first."""
    with log.unit() as unit:
        moves = unit.stock_moves.all(product_id=product_id)
    return sorted(moves, key=lambda m: m.day)[::-1]


def bought(log: OpenLogbook, product_id: str, day: date, amount: float, price_minor: int | None = None) -> Change:
    """Writes what was bought in all (mL or g) and what was paid for it; RecordRefused."""
    return _write(log, product_id, day, StockMoveSort.BOUGHT, amount, price_minor)


def counted(log: OpenLogbook, product_id: str, day: date, amount: float) -> Change:
    """Writes what is in the bottle now (mL or g); RecordRefused."""
    return _write(log, product_id, day, StockMoveSort.COUNTED, amount)


def thrown_away(log: OpenLogbook, product_id: str, day: date, amount: float) -> Change:
    """Writes what was spilled or thrown away (mL or g); RecordRefused."""
    return _write(log, product_id, day, StockMoveSort.THROWN_AWAY, amount)


def remove_move(log: OpenLogbook, removed_id: str) -> Change:
    """Puts a stock move into the bin."""
    group = new_id()
    with log.unit() as unit:
        move = unit.stock_moves.get(removed_id)
        unit.remove(group, move)
        unit.commit()
    return Change(group, say("Remove a stock move"), (removed_id,), None)


def stock_figures(log: OpenLogbook, product_id: str, until: date | None = None) -> tuple[Figure, ...]:
    """Level, days left and cost of a product, each with how it is worked out."""
    day = until or log.today()
    with log.unit() as unit:
        product = unit.products.get(product_id)
        moves = calc_moves(unit.stock_moves.all(product_id=product_id))
    return (
        stock.explain_level(moves, day, product.measure),
        stock.explain_days_left(moves, day, product.measure),
        stock.explain_cost(moves, product.pack_amount, product.pack_price_minor, product.measure),
    )


def calc_moves(moves: Sequence[StockMove]) -> list[stock.Move]:
    """Moves as the calculations take them, in the order they were written."""
    return [stock.Move(m.day, m.sort.value, m.amount, m.price_minor) for m in moves]


def currency_of(unit: UnitOfWork) -> str:
    """The logbook's currency, "" until the grower names one."""
    return next((facts.currency for facts in unit.logbook.all()), "")


def _write(
    log: OpenLogbook, product_id: str, day: date, sort: StockMoveSort, amount: float, price_minor: int | None = None
) -> Change:
    group = new_id()
    with log.unit() as unit:
        move = StockMove(move_id(unit.now), product_id, day, sort, amount, price_minor)
        product = unit.products.get(product_id)
        refuse(move.problems() + _day_problems(day, log.today()))
        unit.add(group, move)
        unit.commit()
    return Change(group, say("Stock of {name}", name=product.name), (move.id,), None)


def _day_problems(day: date, today: date) -> list[Problem]:
    return [Problem("day", say("This day has not come yet."))] if day > today else []


def _moves_by_product(unit: UnitOfWork) -> Mapping[str, list[stock.Move]]:
    found: dict[str, list[stock.Move]] = defaultdict(list)
    for move in unit.stock_moves.all():
        found[move.product_id].append(stock.Move(move.day, move.sort.value, move.amount, move.price_minor))
    return found


def _item(product: ShelfProduct, moves: list[stock.Move], until: date, decimals: int) -> ShelfItem:
    level = stock.stock_level(moves, until).amount
    per_day = stock.use_per_day(moves, until)
    minor = stock.cost_per_unit(moves, product.pack_amount, product.pack_price_minor)
    cost = None if minor is None else minor.scaleb(-decimals)
    return ShelfItem(product, level, per_day, stock.days_left(level, per_day), cost)
