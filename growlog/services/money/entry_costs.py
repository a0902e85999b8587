"""Costs that come of entries: water, nutrients and labour."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from growlog.records.entry import Entry, Feed, TankCare
from growlog.records.logbook import LogbookFacts
from growlog.records.money import decimals_of
from growlog.services.feed_costs import costs_of_entries
from growlog.services.money.lines import CostKind, CostLine
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

Shared = Sequence[tuple[Entry, float]]  # entries with the crop's share of each


def water_lines(entries: Shared, facts: LogbookFacts, recirculating: set[str]) -> list[CostLine]:
    """Water by its price: of feeds their volume; of tanks whose drain comes back, what was added to the tank."""
    price = facts.water_price_minor_per_m3
    if price is None:
        return []
    per_l = Decimal(price) / 1000
    return [
        CostLine(entry.day, CostKind.WATER, per_l * _decimal(litres * share), entry.detail.summary())
        for entry, share in entries
        if (litres := _water_l(entry, recirculating))
    ]


def nutrient_lines(
    unit: UnitOfWork, entries: Shared, facts: LogbookFacts, until: date
) -> tuple[list[CostLine], list[str]]:
    """Nutrients by what was drawn from the shelf, else by mix and volume; and products that have no price."""
    fed = [(e, s) for e, s in entries if e.kind in ("feed", "tank-care")]
    lines, unpriced = [], dict[str, None]()
    for (entry, _), cost in zip(fed, costs_of_entries(unit, fed, until), strict=True):
        unpriced |= dict.fromkeys(cost.unpriced)
        if cost.amount:
            minor = cost.amount.scaleb(decimals_of(facts.currency))
            lines.append(CostLine(entry.day, CostKind.NUTRIENTS, minor, entry.detail.summary()))
    return lines, list(unpriced)


def labour_lines(entries: Shared, facts: LogbookFacts) -> list[CostLine]:
    """Labour at the worth of an hour, which may be nothing; none where no worth is stated."""
    rate = facts.labour_rate_minor_per_h
    if rate is None:
        return []
    return [
        CostLine(
            e.day, CostKind.LABOUR, Decimal(rate) * _decimal((e.labour_minutes or 0) * share) / 60, say(e.detail.label)
        )
        for e, share in entries
        if e.labour_minutes
    ]


def _water_l(entry: Entry, recirculating: set[str]) -> float:
    detail = entry.detail
    if isinstance(detail, Feed):
        return detail.volume_l or 0.0
    if isinstance(detail, TankCare) and entry.owner.id in recirculating:
        return detail.water_added_l or 0.0
    return 0.0


def _decimal(value: float) -> Decimal:
    return Decimal(f"{value:.9f}")
