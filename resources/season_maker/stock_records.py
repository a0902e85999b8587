"""What came to the shelf and what the feeds took from it, bottle by bottle."""

from collections.abc import Iterable, Iterator
from datetime import UTC, date, datetime, time, timedelta
from uuid import UUID

from growlog.records.entry import Entry, Feed
from growlog.records.product import ShelfProduct, StockMove, StockMoveSort
from growlog.records.recipe import Mix

from .identity import identity
from .scenario import LIGHT_STEPS
from .shelf_products import ACID, CALCIUM_PART, EPSOM, SULFATE_PART, product_id

FIRST_BOUGHT = LIGHT_STEPS[0].from_day - timedelta(days=3)
ACID_ML_PER_L = 0.3
BUY_BELOW = 60.0  # mL: then the next pack is bought
COUNTED_ON = date(2026, 2, 15)
COUNTED_SHORT_BY = {CALCIUM_PART: 11.0, SULFATE_PART: 2.0, ACID: 5.0}  # mL: what sticks to syringes and caps


def stock_moves(products: Iterable[ShelfProduct], mixes: Iterable[Mix], entries: Iterable[Entry]) -> list[StockMove]:
    """All moves, those of a day in the order in which they were written."""
    doses = {mix.id: {p.product_id: p.dose_per_l for p in mix.parts} | {product_id(ACID): ACID_ML_PER_L}
             for mix in mixes}  # fmt: skip
    fed = sorted((e for e in entries if isinstance(e.detail, Feed)), key=lambda e: (e.day, e.at or time(), e.id))
    found: list[StockMove] = []
    for product in products:
        if product.name == EPSOM:
            found.append(_bought(product, LIGHT_STEPS[0].from_day))
        else:
            uses = [(e, a) for e in fed if (a := _amount(e, doses, product.id))]
            found += _of_bottle(product, uses)
    return found


def _amount(entry: Entry, doses: dict[str, dict[str | None, float]], of_product: str) -> float:
    feed = entry.detail
    if not isinstance(feed, Feed) or feed.mix_id is None or feed.volume_l is None:
        return 0.0
    return round(doses[feed.mix_id].get(of_product, 0.0) * feed.volume_l, 2)


def _of_bottle(product: ShelfProduct, uses: list[tuple[Entry, float]]) -> Iterator[StockMove]:
    yield _bought(product, FIRST_BOUGHT)
    level, counted = product.pack_amount or 0.0, False
    for entry, amount in uses:
        if not counted and entry.day >= COUNTED_ON:
            counted, level = True, float(round(level - COUNTED_SHORT_BY[product.name]))
            yield _move(product, COUNTED_ON, time(7, 0), StockMoveSort.COUNTED, level)
        if level - amount < BUY_BELOW:
            level += product.pack_amount or 0.0
            yield _bought(product, entry.day - timedelta(days=1))
        level -= amount
        yield _move(product, entry.day, entry.at or time(), StockMoveSort.USED, amount, entry_id=entry.id)


def _bought(product: ShelfProduct, day: date) -> StockMove:
    price = product.pack_price_minor
    return _move(product, day, time(17, 30), StockMoveSort.BOUGHT, product.pack_amount or 0.0, price_minor=price)


def _move(
    product: ShelfProduct, day: date, at: time, sort: StockMoveSort, amount: float,
    price_minor: int | None = None, entry_id: str | None = None,
) -> StockMove:  # fmt: skip
    return StockMove(
        _move_id(day, at, product.name, sort, entry_id), product.id, day, sort, amount, price_minor, entry_id
    )


def _move_id(day: date, at: time, *what: object) -> str:
    """An identity that sorts by the moment (RFC 9562, UUID version 7), its other bits told by what moved."""
    told = UUID(identity("stock", day.isoformat(), *what)).int & (1 << 80) - 1
    moment_ms = int(datetime.combine(day, at, UTC).timestamp() * 1000)
    value = moment_ms << 80 | told
    value = value & ~(0xF << 76) | 7 << 76
    return str(UUID(int=value & ~(0x3 << 62) | 0x2 << 62))
