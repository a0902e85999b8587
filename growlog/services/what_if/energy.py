"""A crop's electricity under other lamps, hours or prices, by the minutes of each day as it was grown."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, time
from decimal import Decimal

from growlog.calculations.light_programme import LightSetting
from growlog.records.crop import Crop, Placement
from growlog.records.room import Lamp
from growlog.records.tariff import Tariff, TariffBand
from growlog.services.energy.day_use import RoomPower, energy_days, room_power
from growlog.services.energy.shares import shares_on
from growlog.services.light.lamps import burning, drawn_w
from growlog.services.light.statements import standing_in, stands
from growlog.services.what_if.inputs import WhatIf
from growlog.storage.unit_of_work import UnitOfWork


@dataclass(frozen=True)
class PowerUse:
    """kwh: the crop's share. cost: main unit, None where no day has a tariff. wear_minor: what bulbs lost in worth."""

    kwh: float
    cost: Decimal | None
    wear_minor: Decimal


@dataclass(frozen=True)
class PowerNow:
    """What a form starts from: watts and hours of the last day on which lamps burnt, the last price; None: unknown."""

    lamp_w: float | None
    photoperiod_h: float | None
    price_per_kwh: Decimal | None


def power_of(unit: UnitOfWork, crop: Crop, until: date, change: WhatIf | None = None) -> PowerUse:
    """The crop's part of its rooms' electricity up to a day, as it was or under a change of lamps, hours and price."""
    kwh, cost, wear, priced = 0.0, Decimal(0), Decimal(0), False
    last_w = None if change is None or change.lamp_w is None else power_now(unit, crop, until).lamp_w
    for power, first, last, placement in _stays(unit, crop, until):
        standing = standing_in(unit, placement.room_id)
        for day in energy_days(power if change is None else _changed(power, change, first, last_w), first, last):
            if not stands(crop, placement, day.day):
                continue
            share = shares_on(standing, power.room.energy_sharing, day.day).get(crop.id, 0.0)
            part = Decimal(f"{share:.9f}")
            kwh += day.kwh * share
            wear += day.wear_minor * part
            if day.cost is not None:
                cost, priced = cost + day.cost * part, True
    return PowerUse(kwh, cost if priced else None, wear)


def power_now(unit: UnitOfWork, crop: Crop, until: date) -> PowerNow:
    """Lamps, hours and price as they stood last."""
    for power, first, last, _ in reversed(_stays(unit, crop, until)):
        day = max((d for d in power.settings if first <= d <= last), default=None)
        begun = [t for t in power.tariffs if t.from_day <= last]
        latest = max(begun, key=lambda t: t.from_day, default=None)
        price = Decimal(latest.bands[0].price_per_kwh) if latest and len(latest.bands) == 1 else None
        if day is None:
            return PowerNow(None, None, price)
        setting = power.settings[day]
        watts = drawn_w(burning(power.lamps, setting, day), setting, day)
        return PowerNow(watts or None, setting.photoperiod_h, price)
    return PowerNow(None, None, None)


def _stays(unit: UnitOfWork, crop: Crop, until: date) -> list[tuple[RoomPower, date, date, Placement]]:
    """Each place of the crop with its room's power and its first and last day there."""
    found = []
    for placement in sorted(unit.placements.all(crop_id=crop.id), key=lambda p: p.from_day):
        ends = [d for d in (until, crop.cleared_on, placement.until_day) if d is not None]
        first, last = max(placement.from_day, crop.day_zero), min(ends)
        if first <= last:
            found.append((room_power(unit, placement.room_id, first, last), first, last, placement))
    return found


def _changed(power: RoomPower, change: WhatIf, first: date, last_w: float | None) -> RoomPower:
    if change.photoperiod_h is not None:
        hours = change.photoperiod_h
        power = replace(power, settings={d: replace(s, photoperiod_h=hours) for d, s in power.settings.items()})
    if change.lamp_w is not None:
        power = _under_lamps(power, change.lamp_w, last_w)
    if change.on_at is not None:
        power = replace(power, settings={d: replace(s, on_at=change.on_at) for d, s in power.settings.items()})
    if change.has_price:
        power = replace(power, tariffs=_at_prices(_bands(change), power.tariffs, first))
    return power


def _under_lamps(power: RoomPower, lamp_w: float, last_w: float | None) -> RoomPower:
    """One lamp of so many watts in place of all. A day on which the lamps of now drew half of their last day's watts
    is one of half the watts: who dimmed over seedlings will do so again."""
    parts = {day: _part_of_last(power, setting, day, last_w) for day, setting in power.settings.items()}
    most = max(parts.values(), default=0.0) or 1.0
    lamp = Lamp("what-if", power.room.id, "what-if", wall_w=lamp_w * most)
    settings = {
        day: replace(s, lamp_ids=(), dimming_percent=100 * parts[day] / most) for day, s in power.settings.items()
    }
    return replace(power, lamps=(lamp,), settings=settings)


def _part_of_last(power: RoomPower, setting: LightSetting, day: date, last_w: float | None) -> float:
    """What the lamps drew on a day as a part of their last day's watts; as dimmed, where their watts are unknown."""
    full_w = drawn_w(power.lamps, replace(setting, dimming_percent=None), day)
    return full_w * setting.output / last_w if full_w and last_w else setting.output


def _bands(change: WhatIf) -> tuple[TariffBand, ...]:
    return change.tariff_bands or (TariffBand(time(0), time(0), str(change.price_per_kwh)),)


def _at_prices(bands: tuple[TariffBand, ...], tariffs: Sequence[Tariff], first: date) -> tuple[Tariff, ...]:
    """Other prices of a kWh; what a day costs with nothing used stays as it was."""
    begun = [t for t in tariffs if t.from_day <= first]
    charge = max(begun, key=lambda t: t.from_day).daily_charge_minor if begun else None
    other = [Tariff("what-if", "what-if", first, bands, charge)]
    return tuple(other + [replace(t, bands=bands) for t in tariffs if t.from_day > first])
