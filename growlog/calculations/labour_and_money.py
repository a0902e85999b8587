"""What labour and things cost, and what that is per fruit: minor units in, whole minor units or decimals out."""

from collections.abc import Sequence
from decimal import Decimal

from growlog.calculations.allowed import require, require_above
from growlog.calculations.tariff import minor_units


def labour_cost_minor(minutes: Decimal, rate_an_hour: Decimal, decimals: int = 2) -> int:
    """Minor units of so many minutes, 0 or more, at a rate an hour of 0 or more in the main unit. By definition."""
    require("minutes", float(minutes), 0, 1e7, "min")
    require("rate_an_hour", float(rate_an_hour), 0, 1e6)
    return minor_units(minutes * rate_an_hour / 60, decimals)


def per_unit(total: Decimal | int, count: Decimal | int) -> Decimal | None:
    """A total per fruit, kg or day; None where there is none yet. count: 0 or more; ValueError below."""
    require("count", float(count), 0, 1e12)
    return None if count == 0 else Decimal(total) / Decimal(count)


def gear_cost_minor(price_minor: int, life_days: int, days_before: int, days_used: int) -> int:
    """The part of a thing's price that falls on days_used days after days_before, in minor units.

    life_days: 1 to 20000, over which the price is spread evenly; past its life it costs nothing more. The parts of
    days that follow each other add up to the price exactly. Common practice, no source.
    """
    require("life_days", life_days, 1, 20_000, "d")
    require("days_before", days_before, 0, 100_000, "d")
    require("days_used", days_used, 0, 100_000, "d")
    return _spent(price_minor, life_days, days_before + days_used) - _spent(price_minor, life_days, days_before)


def gear_cost_of_crop_minor(price_minor: int, life_crops: int, crop_number: int) -> int:
    """The part of a thing's price on its crop_number-th crop, from 1, where it lasts life_crops, 1 to 1000."""
    require("life_crops", life_crops, 1, 1000)
    require("crop_number", crop_number, 1, 100_000)
    return gear_cost_minor(price_minor, life_crops, crop_number - 1, 1)


def share_out_minor(total_minor: int, weights: Sequence[Decimal]) -> list[int]:
    """A total shared out by weights, 0 or more, to the last minor unit: the shares add up to the total exactly.

    The units left over by rounding down go to the largest remainders, of equal ones to the first. ValueError where
    a weight is below 0 or all are 0.
    """
    for weight in weights:
        require("weight", float(weight), 0, 1e12)
    whole = sum(weights, Decimal(0))
    require_above("sum of weights", float(whole), 0, 1e12)
    sign = -1 if total_minor < 0 else 1
    exact = [abs(total_minor) * weight / whole for weight in weights]
    shares = [int(part) for part in exact]
    by_remainder = sorted(range(len(exact)), key=lambda i: (int(exact[i]) - exact[i], i))
    for i in by_remainder[: abs(total_minor) - sum(shares)]:
        shares[i] += 1
    return [sign * share for share in shares]


def _spent(price_minor: int, life: int, used: int) -> int:
    return minor_units(Decimal(price_minor * min(used, life)) / life, 0)
