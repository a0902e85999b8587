"""Amounts of money as they are read."""

from decimal import Decimal

from growlog.records.display import THIN
from growlog.records.money import decimals_of
from growlog.words import say, show_number


def money_text(minor: int | None, currency: str) -> str:
    """An amount with its currency, "not stated" where there is none."""
    if minor is None:
        return say("not stated")
    return amount_text(Decimal(minor).scaleb(-decimals_of(currency)), currency)


def amount_text(amount: Decimal, currency: str, decimals: int | None = None) -> str:
    """An amount of the main unit with its currency, to the smallest coin unless told otherwise."""
    text = show_number(float(amount), decimals_of(currency) if decimals is None else decimals)
    return f"{text}{THIN}{currency}" if currency else text
