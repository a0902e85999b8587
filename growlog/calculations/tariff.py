"""The price of electricity: tariffs with a start, bands by time of day that may cross midnight."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from decimal import ROUND_HALF_EVEN, Decimal
from itertools import pairwise

from growlog.calculations.allowed import require
from growlog.words import say

DAY_MINUTES = 24 * 60


@dataclass(frozen=True)
class TariffBand:
    """A part of the day with its price. From start_minute up to end_minute after midnight, 0 to 1440.

    An end before the start crosses midnight; the same start and end is the whole day. price: per kWh, in the
    currency's main unit.
    """

    start_minute: int
    end_minute: int
    price: Decimal

    def minutes(self) -> set[int]:
        """The minutes of the day that it covers."""
        start, end = self.start_minute % DAY_MINUTES, self.end_minute % DAY_MINUTES
        if start < end:
            return set(range(start, end))
        return set(range(start, DAY_MINUTES)) | set(range(end))


@dataclass(frozen=True)
class Tariff:
    """A tariff from from_day until until_day, inclusive; None: until the next one begins."""

    from_day: date
    bands: tuple[TariffBand, ...]
    until_day: date | None = None


def check_bands(bands: Sequence[TariffBand]) -> None:
    """ValueError where two bands have a minute in common, where a minute has no price, or one is out of range."""
    seen: set[int] = set()
    for band in bands:
        require("start_minute", band.start_minute, 0, DAY_MINUTES, "min")
        require("end_minute", band.end_minute, 0, DAY_MINUTES, "min")
        covered = band.minutes()
        if both := seen & covered:
            raise ValueError(say("Two bands of the tariff hold at {time}.", time=clock(min(both))))
        seen |= covered
    if missing := set(range(DAY_MINUTES)) - seen:
        raise ValueError(say("The tariff has no price at {time}.", time=clock(min(missing))))


def check_tariffs(tariffs: Sequence[Tariff]) -> None:
    """ValueError where two tariffs hold on one day, one ends before it begins, or the bands of one do not fit.

    A tariff without a last day ends the day before the next one begins.
    """
    ordered = sorted(tariffs, key=lambda t: t.from_day)
    for tariff in ordered:
        check_bands(tariff.bands)
        if tariff.until_day is not None and tariff.until_day < tariff.from_day:
            raise ValueError(say("The tariff from {day} ends before it begins.", day=tariff.from_day.isoformat()))
    for earlier, later in pairwise(ordered):
        until = earlier.until_day or later.from_day - timedelta(days=1)
        if until >= later.from_day or earlier.from_day == later.from_day:
            raise ValueError(say("Two tariffs hold on {day}.", day=later.from_day.isoformat()))


def tariff_on(tariffs: Sequence[Tariff], day: date) -> Tariff | None:
    """The tariff of a day, None where none holds. Of tariffs without a last day the one begun last holds."""
    begun = [t for t in tariffs if t.from_day <= day]
    latest = max(begun, key=lambda t: t.from_day, default=None)
    if latest is None or (latest.until_day is not None and latest.until_day < day):
        return None
    return latest


def minutes_by_band(on_at_minute: int, on_minutes: int, bands: Sequence[TariffBand]) -> list[int]:
    """How many minutes a day each band covers of lamps that come on every day at on_at_minute.

    on_at_minute: 0 to 1440 after midnight; on_minutes: 0 to 1440. The rule for lamps on past midnight: each calendar
    day counts its own minutes, so what runs over is counted at its start. ValueError as check_bands.
    """
    require("on_at_minute", on_at_minute, 0, DAY_MINUTES, "min")
    require("on_minutes", on_minutes, 0, DAY_MINUTES, "min")
    check_bands(bands)
    lit = {(on_at_minute + i) % DAY_MINUTES for i in range(on_minutes)}
    return [len(lit & band.minutes()) for band in bands]


def cost_of_kwh(kwh: Decimal, price: Decimal) -> Decimal:
    """The cost of kWh, 0 or more, at a price per kWh of -10000 to 10000; not rounded. ValueError outside.

    Prices below zero occur in tariffs that follow the market.
    """
    require("kwh", float(kwh), 0, 1e9, "kWh")
    require("price", float(price), -10_000, 10_000)
    return kwh * price


def daily_cost(power_w: Decimal, on_at_minute: int, on_minutes: int, bands: Sequence[TariffBand]) -> Decimal:
    """The cost of one day of a device of so many watts at the wall, on every day at the same time; not rounded."""
    minutes = minutes_by_band(on_at_minute, on_minutes, bands)
    return sum(
        (cost_of_kwh(power_w * m / 60 / 1000, band.price) for m, band in zip(minutes, bands, strict=True)), Decimal(0)
    )


def minor_units(amount: Decimal, decimals: int = 2) -> int:
    """An amount in whole minor units of a currency with so many decimals, rounded half to even."""
    return int(amount.scaleb(decimals).to_integral_value(ROUND_HALF_EVEN))


def clock(minute: int) -> str:
    """A minute of the day as a clock shows it."""
    return f"{minute // 60:02d}:{minute % 60:02d}"
