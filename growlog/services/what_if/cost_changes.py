"""By how much each cost of a crop changes with the way it is grown."""

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal

from growlog.calculations.labour_and_money import gear_cost_of_crop_minor
from growlog.records.money import decimals_of
from growlog.services.money.labour import Work
from growlog.services.money.lines import CostKind
from growlog.services.money.prices import facts_in
from growlog.services.review.crop_figures import CropFigures
from growlog.services.what_if.energy import PowerUse, power_of
from growlog.services.what_if.inputs import WhatIf
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

# Costs that follow the number of plants in proportion; common practice, no source.
_BY_PLANT = (CostKind.SEED, CostKind.MEDIUM, CostKind.CONTAINERS, CostKind.WATER)


@dataclass(frozen=True)
class CostChange:
    """lines: (what, change in the main unit; below 0 cheaper). without_picking: the same added up, without the picking
    that follows the yield. notes: what could not be counted."""

    lines: tuple[tuple[str, Decimal], ...]
    without_picking: Decimal
    notes: tuple[str, ...]


def cost_changes(
    unit: UnitOfWork, crop: CropFigures, change: WhatIf, yield_change: Decimal | None, plants_now: int
) -> CostChange:
    """All changes of costs; yield_change in per cent, None where it is not known: then picking stays as it is."""
    notes: list[str] = []
    more_plants = Decimal(change.plants or plants_now) / plants_now
    fixed = [
        *_power(unit, crop, change, notes),
        *_lamps(crop, change, notes),
        *_materials(crop, change, more_plants),
        *_work(unit, crop, change, more_plants, notes),
        *((other.label, _main(crop, Decimal(other.minor))) for other in change.other_costs),
    ]
    picking = picking_cost(crop) * (yield_change or Decimal(0)) / 100
    by_yield = [(say("picking, as the yield"), picking)] if picking else []
    return CostChange((*fixed, *by_yield), sum((amount for _, amount in fixed), Decimal(0)), tuple(notes))


def picking_cost(crop: CropFigures) -> Decimal:
    """What picking cost at the worth of an hour; 0 where that is not stated."""
    minutes = crop.number(f"minutes-{Work.PICKING}") or 0.0
    return _labour(crop, minutes)


def _power(unit: UnitOfWork, crop: CropFigures, change: WhatIf, notes: list[str]) -> Iterator[tuple[str, Decimal]]:
    if not change.changes_power:
        return
    now, then = power_of(unit, crop.crop, crop.as_of), power_of(unit, crop.crop, crop.as_of, change)
    if now.cost is None and change.has_price:
        only_price = WhatIf(price_per_kwh=change.price_per_kwh, tariff_bands=change.tariff_bands)
        notes.append(say("No tariff was stated for this crop, so its power of now is counted at the new price too."))
        now = power_of(unit, crop.crop, crop.as_of, only_price)
    if now.cost is None or then.cost is None:
        notes.append(say("No tariff is stated, so the change of the power has no price. State a price of a kWh."))
        return
    yield say("power"), then.cost - now.cost
    wear = _bulbs(crop, change, now, then)
    if wear:
        yield say("bulbs"), wear


def _bulbs(crop: CropFigures, change: WhatIf, now: PowerUse, then: PowerUse) -> Decimal:
    """What bulbs lose by burning; of other lamps only where their price is known, which comes by itself."""
    if change.lamp_w is None:
        return _main(crop, then.wear_minor - now.wear_minor)
    return Decimal(0) if change.lamp_price_minor is None else _main(crop, -now.wear_minor)


def _lamps(crop: CropFigures, change: WhatIf, notes: list[str]) -> Iterator[tuple[str, Decimal]]:
    if change.lamp_w is not None and change.lamp_price_minor is None:
        notes.append(
            say("What the new lamps cost is not given, so neither their price nor the wear of bulbs is counted.")
        )
    if change.lamp_price_minor:
        minor = gear_cost_of_crop_minor(change.lamp_price_minor, change.lamp_life_crops, 1)
        yield say("new lamps, this crop's part"), _main(crop, Decimal(minor))


def _materials(crop: CropFigures, change: WhatIf, more_plants: Decimal) -> Iterator[tuple[str, Decimal]]:
    strength = Decimal(str(100.0 if change.feed_strength_percent is None else change.feed_strength_percent)) / 100
    factors = {CostKind.NUTRIENTS: strength * more_plants} | dict.fromkeys(_BY_PLANT, more_plants)
    for kind, factor in factors.items():
        now = _main(crop, Decimal(crop.costs.by_kind.get(kind, 0)))
        if now and factor != 1:
            yield say(kind.label), now * (factor - 1)


def _work(
    unit: UnitOfWork, crop: CropFigures, change: WhatIf, more_plants: Decimal, notes: list[str]
) -> Iterator[tuple[str, Decimal]]:
    pollinating = crop.number(f"minutes-{Work.POLLINATION}") or 0.0
    others = crop.labour.minutes - pollinating - (crop.number(f"minutes-{Work.PICKING}") or 0.0)
    spent = {
        say("pollination by hand"): pollinating * (0.0 if change.sets_alone else float(more_plants)) - pollinating,
        say("work by the plants"): others * (float(more_plants) - 1),
        say("other work"): float(change.minutes_change),
    }
    if any(spent.values()) and facts_in(unit).labour_rate_minor_per_h is None:
        notes.append(say("What an hour of labour is worth is not stated, so the change of work has no price."))
        return
    for label, minutes in spent.items():
        if minutes:
            yield label, _labour(crop, minutes)


def _labour(crop: CropFigures, minutes: float) -> Decimal:
    """Minutes at what an hour cost this crop."""
    total, spent = crop.costs.by_kind.get(CostKind.LABOUR, 0), crop.labour.minutes
    return _main(crop, Decimal(total) * Decimal(f"{minutes / spent:.9f}")) if spent else Decimal(0)


def _main(crop: CropFigures, minor: Decimal) -> Decimal:
    return minor.scaleb(-decimals_of(crop.currency))
