"""The money of a crop."""

from collections.abc import Iterator
from decimal import Decimal

from growlog.calculations.explained_figure import Figure, Input
from growlog.records.money import decimals_of
from growlog.services.facts.family import FactFamily, FactKey, of_definition
from growlog.services.facts.source import FactSource
from growlog.services.money.lines import CostKind
from growlog.words import mark, say

_MEANINGS = {
    CostKind.ENERGY: mark("Cost of electricity"),
    CostKind.NUTRIENTS: mark("Cost of nutrients"),
    CostKind.WATER: mark("Cost of water"),
    CostKind.SEED: mark("Cost of seed"),
    CostKind.MEDIUM: mark("Cost of the medium"),
    CostKind.CONTAINERS: mark("Cost of containers"),
    CostKind.GEAR: mark("Cost of gear"),
    CostKind.LABOUR: mark("Cost of labour"),
    CostKind.OTHER: mark("Other costs"),
}


def _work(source: FactSource) -> Iterator[Figure]:
    costs = source.costs
    decimals = decimals_of(costs.currency)
    stated = any(costs.lines)

    def amount(minor: int) -> Decimal:
        return Decimal(minor).scaleb(-decimals)

    kinds = tuple(Input(kind.value, amount(minor), costs.currency) for kind, minor in costs.by_kind.items())
    method = say("All that the crop bears: purchases or their parts, electricity, water, nutrients and labour.")
    yield of_definition("cost", costs.total if stated else None, costs.currency, kinds, method, source.as_of)
    for kind in CostKind:
        lines = [line for line in costs.lines if line.kind is kind]
        value = amount(costs.by_kind.get(kind, 0)) if lines else None
        given = (Input("single costs", len(lines)), Input("days", len({line.day for line in lines}), "d"))
        yield of_definition(f"cost-{kind}", value, costs.currency, given, _method(kind), source.as_of)
    yield from (costs.per.per_fruit, costs.per.per_kg, costs.per.per_day)
    for key, minor, what in (
        ("shop-price-per-kg", costs.per.shop_per_kg_minor, say("kg")),
        ("shop-price-per-fruit", costs.per.shop_per_fruit_minor, say("fruit")),
    ):
        unit = f"{costs.currency}/{what}" if costs.currency else f"/{what}"
        value = None if minor is None else amount(minor)
        yield of_definition(key, value, unit, (), say("As you stated it with the crop."), source.as_of)


def _method(kind: CostKind) -> str:
    if kind is CostKind.ENERGY:
        return say("The crop's share of each day's kWh by the bands of the tariff, with the daily charge.")
    if kind is CostKind.NUTRIENTS:
        return say("What feeds took from the shelf at the price of the bottle, and purchases of nutrients.")
    if kind is CostKind.WATER:
        return say("Litres of feeds, and of water added to tanks whose drain comes back, at the price of water.")
    if kind is CostKind.LABOUR:
        return say("Minutes of labour at the worth of an hour; of a room's or tank's work an equal part.")
    if kind is CostKind.GEAR:
        return say("Gear by the days or crops of its life, and lamps by the hours of theirs, shared by the crops that "
                   "stood.")  # fmt: skip
    return say("Purchases of this kind, alone or in equal parts with the crops that stood.")


MONEY_FACTS = FactFamily(
    "money",
    mark("Money"),
    (
        FactKey("cost", "", mark("Cost so far")),
        *(FactKey(f"cost-{kind}", "", _MEANINGS[kind]) for kind in CostKind),
        FactKey("cost-per-fruit", "", mark("Cost of a marketable fruit")),
        FactKey("cost-per-kg", "", mark("Cost of a kg of marketable fruit")),
        FactKey("cost-per-day", "", mark("Cost of a day")),
        FactKey("shop-price-per-kg", "", mark("What a shop asks for a kg")),
        FactKey("shop-price-per-fruit", "", mark("What a shop asks for a fruit")),
    ),
    _work,
)
