"""What a room draws at each minute of a day, and what that costs under the tariff of the day."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, time, timedelta
from decimal import Decimal

import numpy as np
from numpy.typing import NDArray

from growlog.calculations import tariff as prices
from growlog.calculations.light_programme import DAY_MINUTES, LightSetting, days_between, watts_by_minute
from growlog.records.money import decimals_of
from growlog.records.room import Device, Lamp, Room
from growlog.records.tariff import Tariff
from growlog.services.light.lamps import burning, drawn_w, lamp_watts
from growlog.services.light.programme import room_settings
from growlog.storage.unit_of_work import UnitOfWork
from growlog.words import say

Watts = NDArray[np.float64]


@dataclass(frozen=True)
class EnergyDay:
    """A calendar day of a room by the clock: what lamps burn past midnight counts on the day on which they burn.

    cost: in the currency's main unit with the tariff's daily charge, not rounded; None where no tariff holds.
    lit_h: hours in which the lamps were on. wear_minor: what the lamps' bulbs lost in worth, in minor units.
    """

    day: date
    lamps_kwh: float
    devices_kwh: float
    cost: Decimal | None
    lit_h: float
    wear_minor: Decimal = Decimal(0)

    @property
    def kwh(self) -> float:
        """Lamps and devices together."""
        return self.lamps_kwh + self.devices_kwh


@dataclass(frozen=True)
class RoomPower:
    """What is needed to know a room's days: its lamps, devices, tariffs and the settings of its lamps."""

    room: Room
    lamps: tuple[Lamp, ...]
    devices: tuple[Device, ...]
    tariffs: tuple[Tariff, ...]
    settings: dict[date, LightSetting]
    currency: str

    def minutes(self, day: date) -> tuple[Watts, Watts, Watts]:
        """Watts of lamps, watts of devices, and the part of each minute in which lamps were on."""
        before, today = self.drawn(day - timedelta(days=1)), self.drawn(day)
        lamps = watts_by_minute(before, today)
        lit = watts_by_minute(_alight(before), _alight(today))
        devices = np.zeros(DAY_MINUTES)
        for device in self.devices_on(day):
            devices += _device_watts(device, lit)
        return lamps, devices, lit

    def wear_minor(self, day: date) -> Decimal:
        """The price of lamps that burn, spread over their rated hours (common practice, no source); minor units."""
        setting = self.settings.get(day)
        if setting is None:
            return Decimal(0)
        priced = [b for b in burning(self.lamps, setting, day) if b.price_minor and b.rated_life_h]
        worth = sum((_worth_of_an_hour(lamp) for lamp in priced), Decimal(0))
        return worth * Decimal(f"{setting.photoperiod_h:.4f}")

    def notes(self, first: date, last: date) -> list[str]:
        """Sentences on what is missing for a sure figure."""
        found = []
        unknown = [lamp.name for lamp in self.lamps if lamp_watts(lamp) is None]
        unknown += [device.name for device in self.devices if device.device_w is None]
        if unknown:
            found.append(say("No watts are stated for {names}, so these count for nothing.", names=", ".join(unknown)))
        if self.lamps and not self.settings:
            found.append(say("No light programme is stated for {room}.", room=self.room.name))
        if any(s.on_at is None for d, s in self.settings.items() if first <= d) and self._varies():
            found.append(say("When the lamps go on is not stated; their use was spread over the day."))
        if not self.tariffs:
            found.append(say("No tariff is stated, so nothing is known of the cost of electricity."))
        elif min(t.from_day for t in self.tariffs) > first:
            found.append(say("Some days lie before the first tariff and have no cost."))
        return found

    def _varies(self) -> bool:
        return any(len(t.bands) > 1 for t in self.tariffs)

    def drawn(self, day: date) -> tuple[LightSetting, float] | None:
        """The lamps' setting of a day and the watts they draw under it; None where no lamp burns."""
        setting = self.settings.get(day)
        if setting is None or not burning(self.lamps, setting, day):
            return None
        return setting, drawn_w(self.lamps, setting, day)

    def devices_on(self, day: date) -> list[Device]:
        """The devices that stood there on a day."""
        return [
            d
            for d in self.devices
            if (d.from_day is None or d.from_day <= day) and (d.until_day is None or day <= d.until_day)
        ]


def room_power(unit: UnitOfWork, room_id: str, first: date, last: date) -> RoomPower:
    """All that a room's use between two days is worked out from."""
    facts = next(iter(unit.logbook.all()), None)
    return RoomPower(
        unit.rooms.get(room_id),
        tuple(unit.lamps.all(room_id=room_id)),
        tuple(unit.devices.all(room_id=room_id)),
        tuple(sorted(unit.tariffs.all(), key=lambda t: t.from_day)),
        room_settings(unit, room_id, first - timedelta(days=1), last),
        facts.currency if facts else "",
    )


def energy_days(power: RoomPower, first: date, last: date) -> Iterator[EnergyDay]:
    """Each day's use and cost."""
    seen: dict[object, tuple[float, float, Decimal | None, float, Decimal]] = {}
    for day in days_between(first, last):
        tariff = tariff_on(power.tariffs, day)
        key = (power.drawn(day - timedelta(days=1)), power.drawn(day),
               tuple(d.id for d in power.devices_on(day)), tariff)  # fmt: skip
        if key not in seen:
            seen[key] = _use(power, day, tariff)
        yield EnergyDay(day, *seen[key])


def tariff_on(tariffs: Sequence[Tariff], day: date) -> Tariff | None:
    """The tariff of a day: the one begun last."""
    begun = [t for t in tariffs if t.from_day <= day]
    return max(begun, key=lambda t: t.from_day, default=None)


def calculation_bands(tariff: Tariff) -> tuple[prices.TariffBand, ...]:
    """The bands as calculations take them."""
    return tuple(
        prices.TariffBand(_minute(b.from_at), _minute(b.until_at), Decimal(b.price_per_kwh)) for b in tariff.bands
    )


def _use(power: RoomPower, day: date, tariff: Tariff | None) -> tuple[float, float, Decimal | None, float, Decimal]:
    lamps, devices, lit = power.minutes(day)
    cost = None if tariff is None else _cost(lamps + devices, tariff, power.currency)
    kwh = float(lamps.sum()) / 60_000, float(devices.sum()) / 60_000
    return *kwh, cost, float(lit.sum()) / 60, power.wear_minor(day)


def _cost(watts: Watts, tariff: Tariff, currency: str) -> Decimal:
    total = Decimal(tariff.daily_charge_minor or 0).scaleb(-decimals_of(currency))
    for band in calculation_bands(tariff):
        kwh = float(watts[sorted(band.minutes())].sum()) / 60_000
        total += prices.cost_of_kwh(Decimal(f"{kwh:.9f}"), band.price)
    return total


def _device_watts(device: Device, lit: Watts) -> Watts:
    watts = (device.device_w or 0.0) * (1.0 if device.duty_percent is None else device.duty_percent / 100)
    if device.with_lamps:
        return watts * lit
    hours = 24.0 if device.hours_per_day is None else device.hours_per_day
    return np.full(DAY_MINUTES, watts * hours / 24)


def _alight(drawn: tuple[LightSetting, float] | None) -> tuple[LightSetting, float] | None:
    return None if drawn is None else (drawn[0], 1.0)


def _worth_of_an_hour(lamp: Lamp) -> Decimal:
    return Decimal((lamp.price_minor or 0) * lamp.lamp_count) / Decimal(f"{lamp.rated_life_h or 1:.2f}")


def _minute(at: time) -> int:
    return at.hour * 60 + at.minute
