"""Money as integer minor units of the logbook's currency; rates are decimal text. Never binary fractions."""

from dataclasses import dataclass
from decimal import ROUND_HALF_EVEN, Decimal

# Currencies without or with three decimals, from ISO 4217; all others have two.
_DECIMALS = {
    "JPY": 0,
    "KRW": 0,
    "ISK": 0,
    "CLP": 0,
    "VND": 0,
    "BHD": 3,
    "KWD": 3,
    "JOD": 3,
    "TND": 3,
    "OMR": 3,
}


@dataclass(frozen=True)
class Money:
    """An amount. minor: whole minor units (cents). currency: ISO 4217, "" where the grower named none."""

    minor: int
    currency: str = ""

    @property
    def amount(self) -> Decimal:
        """The amount in the currency's main unit."""
        return Decimal(self.minor).scaleb(-decimals_of(self.currency))

    def __add__(self, other: "Money") -> "Money":
        if other.currency != self.currency:
            raise ValueError(f"currency {other.currency!r} cannot be added to {self.currency!r}")
        return Money(self.minor + other.minor, self.currency)


def decimals_of(currency: str) -> int:
    """How many decimals the currency's minor unit has (ISO 4217)."""
    return _DECIMALS.get(currency, 2)


def money_of(amount: Decimal, currency: str = "") -> Money:
    """An amount rounded half to even to whole minor units."""
    scaled = amount.scaleb(decimals_of(currency)).to_integral_value(ROUND_HALF_EVEN)
    return Money(int(scaled), currency)
