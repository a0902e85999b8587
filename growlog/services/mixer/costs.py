"""What a tank costs by the packs its products came in."""

from collections.abc import Sequence
from decimal import Decimal

from growlog.records.money import money_of
from growlog.services.mixer.lines import DoseRow
from growlog.services.mixer.shown import BatchCost


def batch_cost(rows: Sequence[DoseRow], tank_l: float | None, currency: str) -> BatchCost:
    """Per litre and per tank; what has no price is named and left out."""
    priced: list[Decimal] = []
    unpriced: list[str] = []
    for row in rows:
        per_l = row.own_per_l
        if per_l == 0:
            continue
        cost = row.item.cost_per_unit if row.item else None
        if cost is None or per_l is None:
            unpriced.append(row.product.name)
        else:
            priced.append(cost * Decimal(repr(per_l)))
    missing = tuple(dict.fromkeys(unpriced))
    if not priced:
        return BatchCost(None, None, None, currency, missing)
    per_l_in_all = sum(priced, Decimal(0))
    if not tank_l or tank_l <= 0:
        return BatchCost(per_l_in_all, None, None, currency, missing)
    per_tank = per_l_in_all * Decimal(repr(tank_l))
    return BatchCost(per_l_in_all, per_tank, money_of(per_tank, currency), currency, missing)
