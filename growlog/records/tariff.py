"""What electricity costs: tariffs from a day on, with bands by the time of day."""

from dataclasses import dataclass
from datetime import date, datetime, time
from decimal import Decimal, InvalidOperation

from growlog.records.problems import Problem, check_quantity
from growlog.words import say


@dataclass(frozen=True)
class TariffBand:
    """From a time of day until another; the same time twice is the whole day. price_per_kwh: decimal text."""

    from_at: time
    until_at: time
    price_per_kwh: str


@dataclass(frozen=True)
class Tariff:
    """A tariff from from_day on, until the next. daily_charge_minor: what a day costs with nothing used."""

    id: str
    name: str
    from_day: date
    bands: tuple[TariffBand, ...] = ()
    daily_charge_minor: int | None = None
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it: prices that are numbers, bands that cover the day once."""
        found = [] if self.name.strip() else [Problem("name", say("Give it a name."))]
        found += check_quantity("price_minor", self.daily_charge_minor, "daily_charge_minor")
        wrong = [b.price_per_kwh for b in self.bands if not _is_price(b.price_per_kwh)]
        found += [Problem("bands", say("{price} is not a price of a kWh.", price=t or "?")) for t in wrong]
        if not self.bands:
            found.append(Problem("bands", say("Say what a kWh costs.")))
        return found or self._cover_problems()

    def _cover_problems(self) -> list[Problem]:
        covered = [0] * 1440
        for band in self.bands:
            for minute in _minutes(band):
                covered[minute] += 1
        if max(covered) > 1:
            return [Problem("bands", say("The bands overlap: at some time of day two prices would count."))]
        if min(covered) < 1:
            return [Problem("bands", say("The bands leave a gap: at some time of day no price would count."))]
        return []


def _is_price(text: str) -> bool:
    try:
        price = Decimal(text)
    except InvalidOperation:
        return False
    return price.is_finite() and 0 <= price <= 1000


def _minutes(band: TariffBand) -> list[int]:
    start = band.from_at.hour * 60 + band.from_at.minute
    end = band.until_at.hour * 60 + band.until_at.minute
    return [m % 1440 for m in range(start, end if end > start else end + 1440)]
