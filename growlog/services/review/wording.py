"""Amounts as the review says them: money, spans of work, days of the crop, and figures with their unit."""

from collections.abc import Iterable
from decimal import Decimal

from growlog.calculations.explained_figure import Figure, Value
from growlog.records.display import THIN, fixed, weight
from growlog.records.money import decimals_of
from growlog.words import say, say_count, show_number


def money(amount: Decimal | int | float, currency: str, more_decimals: int = 0) -> str:
    """An amount in the currency's main unit; without a currency the number alone."""
    number = show_number(float(amount), decimals_of(currency) + more_decimals)
    return f"{number}{THIN}{currency}" if currency else number


def minor_money(minor: int, currency: str) -> str:
    """An amount in minor units."""
    return money(Decimal(minor).scaleb(-decimals_of(currency)), currency)


def work(minutes: float) -> str:
    """A span of work: 17 h 20 min."""
    hours, rest = divmod(round(minutes), 60)
    parts = [f"{hours}{THIN}h"] if hours else []
    return "\u00a0".join([*parts, f"{rest}{THIN}min"] if rest or not hours else parts)


def day_of_crop(age: int) -> str:
    """A plant age as a day of the crop."""
    return say("day {age}", age=age)


def days(count: int) -> str:
    """So many days."""
    return say_count("{n} day", "{n} days", count)


def amount(value: Value | None, decimals: int, unit: str) -> str:
    """A figure's value with its unit; "" where there is none."""
    return "" if value is None else fixed(float(value), decimals, unit)


def of_figure(figure: Figure | None, decimals: int, unit: str | None = None) -> str:
    """A figure in words, "" where it has no value; an estimate is named one."""
    if figure is None or figure.value is None or isinstance(figure.value, str):
        return ""
    return amount(figure.value, decimals, figure.unit if unit is None else unit)


def grams(value_g: float | None) -> str:
    """A weight, "" where there is none."""
    return "" if not value_g else weight(value_g)


def joined(*parts: str) -> str:
    """The parts that say something, behind each other."""
    return ", ".join(p for p in parts if p)


def shortened(names: Iterable[str], most: int = 4) -> str:
    """Names behind each other, at most so many."""
    listed = list(dict.fromkeys(n for n in names if n))
    if len(listed) <= most:
        return ", ".join(listed)
    return say("{names} and {n} more", names=", ".join(listed[:most]), n=len(listed) - most)
