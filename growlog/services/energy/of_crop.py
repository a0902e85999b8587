"""A crop's share of the electricity of the rooms it stood in."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from growlog.calculations.plant_age import age_on
from growlog.records.crop import Crop
from growlog.services.energy.day_use import EnergyDay, energy_days, room_power
from growlog.services.energy.shares import shares_on
from growlog.services.light.statements import standing_in, stands
from growlog.services.open_logbook import OpenLogbook
from growlog.storage.unit_of_work import UnitOfWork


@dataclass(frozen=True)
class CropEnergyDay:
    """A crop's part of a day. share: of the room's use, 0 to 1. cost: main unit, not rounded, None without a tariff."""

    day: date
    age: int
    room_id: str
    share: float
    kwh: float
    cost: Decimal | None
    room_day: EnergyDay


@dataclass(frozen=True)
class CropEnergy:
    """A crop's electricity so far. cost: of the days that have one, None where none has."""

    crop_id: str
    currency: str
    days: tuple[CropEnergyDay, ...]
    notes: tuple[str, ...]

    @property
    def kwh(self) -> float:
        """All days together."""
        return sum(d.kwh for d in self.days)

    @property
    def cost(self) -> Decimal | None:
        """In the currency's main unit, not rounded."""
        known = [d.cost for d in self.days if d.cost is not None]
        return sum(known, Decimal(0)) if known else None


def energy_of_crop(log: OpenLogbook, crop_id: str, as_of: date | None = None) -> CropEnergy:
    """A crop's electricity up to a day, today if none is said; LogbookProblem if the crop is not there."""
    with log.unit() as unit:
        return crop_energy(unit, unit.crops.get(crop_id), as_of or log.today())


def crop_energy(unit: UnitOfWork, crop: Crop, until: date) -> CropEnergy:
    """A crop's electricity up to a day, within a unit of work."""
    notes: dict[str, None] = {}
    days: dict[date, CropEnergyDay] = {}
    currency = next((f.currency for f in unit.logbook.all()), "")
    for placement in sorted(unit.placements.all(crop_id=crop.id), key=lambda p: p.from_day):
        ends = [d for d in (until, crop.cleared_on, placement.until_day) if d is not None]
        first, last = max(placement.from_day, crop.day_zero), min(ends)
        if first > last:
            continue
        power = room_power(unit, placement.room_id, first, last)
        notes |= dict.fromkeys(power.notes(first, last))
        standing = standing_in(unit, placement.room_id)
        for day in energy_days(power, first, last):
            if stands(crop, placement, day.day):
                share = shares_on(standing, power.room.energy_sharing, day.day).get(crop.id, 0.0)
                days[day.day] = _part(crop, placement.room_id, share, day)
    return CropEnergy(crop.id, currency, tuple(days[d] for d in sorted(days)), tuple(notes))


def _part(crop: Crop, room_id: str, share: float, day: EnergyDay) -> CropEnergyDay:
    cost = None if day.cost is None else day.cost * Decimal(f"{share:.9f}")
    return CropEnergyDay(day.day, age_on(crop.day_zero, day.day), room_id, share, day.kwh * share, cost, day)
