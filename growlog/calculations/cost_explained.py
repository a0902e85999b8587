"""The cost of electricity, labour and fruit with the explanation of each."""

from collections.abc import Sequence
from decimal import Decimal

from growlog.calculations.allowed import require
from growlog.calculations.explained_figure import DEFINITION, Figure, Input, Sure
from growlog.calculations.labour_and_money import labour_cost_minor, per_unit
from growlog.calculations.tariff import TariffBand, clock, cost_of_kwh, daily_cost, minor_units
from growlog.words import say


def explain_cost(kwh: Decimal, price: Decimal, currency: str = "", decimals: int = 2) -> Figure:
    """The cost of kWh at one price, rounded to the currency's minor unit; ranges as cost_of_kwh."""
    given = (Input("kwh", kwh, "kWh"), Input("price", price, _per(currency, "kWh")))
    value = _amount(minor_units(cost_of_kwh(kwh, price), decimals), decimals)
    method = say("The kWh times the price of one, rounded to the smallest coin.")
    return Figure("cost", value, currency, given, method, DEFINITION, Sure.PUBLISHED)


def explain_cost_by_bands(
    power_w: Decimal, on_at: int, on_minutes: int, days: Decimal, bands: Sequence[TariffBand],
    currency: str = "", decimals: int = 2,
) -> Figure:  # fmt: skip
    """The cost of a device on at the same time every day under prices by time of day; ranges as daily_cost."""
    given = [
        Input("watts", power_w, "W"),
        Input("on_at", clock(on_at)),
        Input("hours", Decimal(on_minutes) / 60, "h/d"),
        Input("days", days, "d"),
    ]
    for band in bands:
        hours = f"{clock(band.start_minute)}-{clock(band.end_minute)}"
        given.append(Input(f"price {hours}", band.price, _per(currency, "kWh")))
    exact = daily_cost(power_w, on_at, on_minutes, bands) * days
    method = say(
        "The minutes of each band in which the device is on, its kWh in them times the band's price, added up and "
        "taken times the days. What runs past midnight counts on the day on which it runs."
    )
    value = _amount(minor_units(exact, decimals), decimals)
    return Figure("cost", value, currency, tuple(given), method, DEFINITION, Sure.PUBLISHED)


def explain_labour_cost(minutes: Decimal, rate: Decimal, currency: str = "", decimals: int = 2) -> Figure:
    """The cost of labour; ranges as labour_cost_minor."""
    given = (Input("minutes", minutes, "min"), Input("rate", rate, _per(currency, "h")))
    value = _amount(labour_cost_minor(minutes, rate, decimals), decimals)
    method = say("Minutes times the rate of an hour, over sixty.")
    return Figure("labour-cost", value, currency, given, method, DEFINITION, Sure.PUBLISHED)


def explain_cost_per_fruit(cost: Decimal, fruit: int, currency: str = "", decimals: int = 2) -> Figure:
    """The cost of one fruit, to a hundredth of the smallest coin; None before the first fruit. cost: 0 to 1e12."""
    require("cost", float(cost), 0, 1e12)
    given = (Input("cost", cost, currency), Input("fruit", fruit))
    each = per_unit(cost, fruit)
    value = None if each is None else round(each, decimals + 2)
    method = say("The cost so far over the marketable fruit picked so far; none yet before the first.")
    return Figure("cost-per-fruit", value, _per(currency, say("fruit")), given, method, DEFINITION, Sure.PUBLISHED)


def _per(currency: str, unit: str) -> str:
    return f"{currency}/{unit}" if currency else f"/{unit}"


def _amount(minor: int, decimals: int) -> Decimal:
    return Decimal(minor).scaleb(-decimals)
