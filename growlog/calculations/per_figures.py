"""What a crop takes per fruit, per kg and per day; "none yet" instead of a division by nothing."""

from dataclasses import replace
from datetime import date
from decimal import Decimal

from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure, Value
from growlog.calculations.labour_and_money import per_unit
from growlog.words import say


def explain_ratio(
    key: str, total: Input, count: Input, unit: str, method: str, *, decimals: int, estimate: bool, as_of: date
) -> Figure:
    """A total over a count, to so many decimals; its value is None where the count is nought. Neither below 0."""
    found = per_unit(_exact(total.value), _exact(count.value))
    value: Value | None = None if found is None else round(found, decimals)
    if value is not None and not isinstance(total.value, Decimal):
        value = float(value)
    sure = Sure.ESTIMATE if estimate else Sure.PUBLISHED
    return Figure(key, value, unit, (total, count), method, DEFINITION, sure, as_of=as_of)


def cost_per_fruit(cost: Decimal | None, fruit: int, currency: str, decimals: int, as_of: date) -> Figure:
    """The cost of a marketable fruit, to a hundredth of the smallest coin."""
    method = say("The cost so far over the marketable fruit picked so far; none yet before the first.")
    return _of_cost("cost-per-fruit", cost, Input("fruit", fruit), say("fruit"), method, currency, decimals, as_of)


def cost_per_kg(
    cost: Decimal | None, weight_g: float, currency: str, decimals: int, as_of: date, estimate: bool
) -> Figure:
    """The cost of a kg of marketable fruit; an estimate where a part of it was never on a scale."""
    method = say("The cost so far over the weight of the marketable fruit picked so far; none yet before the first.")
    weight = Input("weight", Decimal(f"{weight_g:.3f}") / 1000, "kg")
    found = _of_cost("cost-per-kg", cost, weight, say("kg"), method, currency, decimals, as_of)
    return replace(found, sure=Sure.ESTIMATE) if estimate else found


def cost_per_day(cost: Decimal | None, days: int, currency: str, decimals: int, as_of: date) -> Figure:
    """The cost of a day that the crop stood, day 0 among them."""
    method = say("The cost so far over the days that the crop stood, the day of sowing among them.")
    return _of_cost("cost-per-day", cost, Input("days", days, "d"), say("day"), method, currency, decimals, as_of)


def kwh_per_kg(kwh: float, weight_g: float, as_of: date) -> Figure:
    """Electricity for a kg of marketable fruit."""
    method = say("The crop's share of the electricity so far over the weight of the marketable fruit picked so far.")
    weight = Input("weight", round(weight_g / 1000, 6), "kg")
    total = Input("kwh", round(kwh, 6), "kWh")
    return explain_ratio("kwh-per-kg", total, weight, "kWh/kg", method, decimals=4, estimate=True, as_of=as_of)


def minutes_per_fruit(minutes: float, fruit: int, as_of: date, key: str = "minutes-per-fruit") -> Figure:
    """Labour for a marketable fruit."""
    method = say("The minutes of labour so far over the marketable fruit picked so far; none yet before the first.")
    total, count = Input("minutes", round(minutes, 6), "min"), Input("fruit", fruit)
    unit = say("min/fruit")
    return explain_ratio(key, total, count, unit, method, decimals=4, estimate=False, as_of=as_of)


def _of_cost(
    key: str, cost: Decimal | None, count: Input, what: str, method: str, currency: str, decimals: int, as_of: date
) -> Figure:
    unit = f"{currency}/{what}" if currency else f"/{what}"
    if cost is None:  # nothing is stated that could cost anything
        return Figure(key, None, unit, (count,), method, DEFINITION, Sure.PUBLISHED, as_of=as_of)
    total = Input("cost", cost, currency)
    return explain_ratio(key, total, count, unit, method, decimals=decimals + 2, estimate=False, as_of=as_of)


def _exact(value: Value) -> Decimal:
    return value if isinstance(value, Decimal) else Decimal(str(value))
