"""The stock of the shelf."""

import uuid
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal

import pytest

from growlog.records.problems import RecordRefused
from growlog.records.product import ShelfProduct, StockMove, StockMoveSort
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.services.shelf import (
    ShelfItem,
    add_product,
    bought,
    counted,
    moves_of,
    remove_move,
    shelf,
    stock_figures,
    thrown_away,
)
from growlog.services.shelf.move_ids import move_id
from growlog.services.undo import undo
from tests.logbooks import TODAY
from tests.services.mixer.bottles import bottle


@pytest.fixture
def product(log: OpenLogbook) -> ShelfProduct:
    made = replace(bottle("Leaf part", k2o=5), pack_amount=1000.0, pack_price_minor=1200)
    add_product(log, made)
    return made


def item(log: OpenLogbook) -> ShelfItem:
    """The only product with its stock."""
    (found,) = shelf(log)
    return found


def use(log: OpenLogbook, product: ShelfProduct, day: date, amount: float) -> None:
    """Some of it used."""
    with log.unit() as unit:
        unit.add(new_id(), StockMove(new_id(), product.id, day, StockMoveSort.USED, amount))
        unit.commit()


def test_a_bottle_that_was_never_counted_has_no_level_but_a_price(log: OpenLogbook, product: ShelfProduct) -> None:
    assert (item(log).level, item(log).days_left, item(log).low) == (None, None, False)
    assert item(log).cost_per_unit == Decimal("0.012")


def test_the_level_follows_the_moves_and_a_count_resets_it(log: OpenLogbook, product: ShelfProduct) -> None:
    bought(log, product.id, TODAY - timedelta(days=9), 1000, 900)
    use(log, product, TODAY - timedelta(days=6), 70)
    thrown_away(log, product.id, TODAY - timedelta(days=5), 30)
    assert (item(log).level, item(log).use_per_day, item(log).days_left) == (900, 10, 90)
    assert item(log).cost_per_unit == Decimal("0.009")
    count = counted(log, product.id, TODAY, 40)
    assert (item(log).level, item(log).days_left, item(log).low) == (40, 4, True)
    use(log, product, TODAY, 5)
    assert item(log).level == 35
    assert [m.sort.value for m in moves_of(log, product.id)] == ["used", "counted", "thrown-away", "used", "bought"]
    undo(log, count)
    assert item(log).level == 895


def test_moves_of_one_day_sort_by_the_moment_they_were_written() -> None:
    moments = [datetime(2026, 3, 1, 8, 0, second, tzinfo=UTC) for second in range(20)]
    ids = [move_id(moment) for moment in moments]
    assert sorted(ids) == ids
    assert {uuid.UUID(id_).version for id_ in ids} == {7}
    assert len({move_id(moments[0]) for _ in range(20)}) == 20


def test_a_move_is_removed_and_comes_back(log: OpenLogbook, product: ShelfProduct) -> None:
    change = bought(log, product.id, TODAY, 500)
    removed = remove_move(log, change.record_ids[0])
    assert item(log).level is None
    undo(log, removed)
    assert item(log).level == 500


@pytest.mark.parametrize(("amount", "day", "field"), [(-1, TODAY, "amount"), (1, TODAY + timedelta(days=1), "day")])
def test_what_cannot_be_is_refused(
    log: OpenLogbook, product: ShelfProduct, amount: float, day: date, field: str
) -> None:
    with pytest.raises(RecordRefused) as refused:
        counted(log, product.id, day, amount)
    assert [p.field for p in refused.value.problems] == [field]


def test_stock_figures_explain_themselves(log: OpenLogbook, product: ShelfProduct) -> None:
    counted(log, product.id, TODAY, 70)
    use(log, product, TODAY, 7)
    level, days, cost = stock_figures(log, product.id)
    assert (level.value, days.value, cost.value) == (63, 63, Decimal("1.2"))
    assert [i.name for i in level.inputs] == ["counted", "used"]
