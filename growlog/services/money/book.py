"""All that the money dialog shows, read in one go so that it can be read off the window's thread."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from growlog.calculations.explained_figure import Figure
from growlog.records.crop import Crop
from growlog.records.logbook import LogbookFacts
from growlog.records.purchase import Purchase
from growlog.records.tariff import Tariff
from growlog.services.energy.meter import MeterCheck, room_meter_checks
from growlog.services.facts.energy_facts import ENERGY_FACTS
from growlog.services.facts.labour_facts import LABOUR_FACTS
from growlog.services.facts.money_facts import MONEY_FACTS
from growlog.services.facts.source import fact_source
from growlog.services.money.costs import CropCosts
from growlog.services.money.labour import LabourOfCrop, crop_labour
from growlog.services.money.prices import facts_in
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

_FAMILIES = (MONEY_FACTS, ENERGY_FACTS, LABOUR_FACTS)


@dataclass(frozen=True)
class CropMoney:
    """What one crop costs. figures: each explained, by its key; names: what each is called."""

    crop: Crop
    costs: CropCosts
    labour: LabourOfCrop
    others: tuple[LabourOfCrop, ...]
    figures: Mapping[str, Figure]
    names: Mapping[str, str]


@dataclass(frozen=True)
class MeteredRoom:
    """A room's meter against the estimate."""

    room_id: str
    name: str
    checks: tuple[MeterCheck, ...]


@dataclass(frozen=True)
class MoneyBook:
    """Purchases, prices and tariffs of the logbook, and what the chosen crop costs (None: no crop has begun)."""

    today: date
    facts: LogbookFacts
    crops: tuple[Crop, ...]
    purchases: tuple[Purchase, ...]
    tariffs: tuple[Tariff, ...]
    metered: tuple[MeteredRoom, ...]
    money: CropMoney | None

    @property
    def holds_amounts(self) -> bool:
        """Whether any amount of money is kept, whose minor units another currency might read differently."""
        facts = self.facts
        stated = (facts.labour_rate_minor_per_h, facts.water_price_minor_per_m3)
        return bool(self.purchases) or any(stated) or any(t.daily_charge_minor for t in self.tariffs)


def money_book(log: OpenLogbook, crop_id: str = "") -> MoneyBook:
    """The book with one crop's money; may take a few tenths of a second with many entries."""
    today = log.today()
    with log.unit() as unit:
        crops = sorted(unit.crops.all(), key=lambda c: (c.cleared_on is not None, c.name.casefold()))
        chosen = next((c for c in crops if c.id == crop_id), None)
        rooms = sorted(unit.rooms.all(), key=lambda r: r.name.casefold())
        metered = (MeteredRoom(r.id, r.name, tuple(room_meter_checks(unit, r.id, today))) for r in rooms)
        purchases = sorted(unit.purchases.all(), key=lambda p: (p.day, p.name), reverse=True)
        return MoneyBook(
            today,
            facts_in(unit),
            tuple(crops),
            tuple(purchases),
            tuple(sorted(unit.tariffs.all(), key=lambda t: t.from_day)),
            tuple(room for room in metered if room.checks),
            _crop_money(unit, chosen, crops, today) if chosen is not None and chosen.day_zero <= today else None,
        )


def _crop_money(unit: UnitOfWork, crop: Crop, crops: list[Crop], today: date) -> CropMoney:
    source = fact_source(unit, crop.id, today)
    figures = {figure.key: figure for family in _FAMILIES for figure in family.work(source)}
    names = {key.key: say(key.meaning) for family in _FAMILIES for key in family.keys}
    others = [crop_labour(unit, c, today) for c in crops if c.id != crop.id and c.day_zero <= today]
    worked = tuple(other for other in others if other.minutes)
    return CropMoney(source.crop, source.costs, source.labour, worked, figures, names)
