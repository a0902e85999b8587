"""The room, its lamps and its tanks."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from growlog.records.problems import Problem, check_quantity
from growlog.words import mark, say

_LAMP_QUANTITIES = (
    "lamp_count", "rated_w", "wall_w", "efficacy_umol_per_j", "ballast_loss_percent", "rated_life_h", "price_minor",
)  # fmt: skip


class EnergySharing(StrEnum):
    """How the room's energy is shared out to the crops in it."""

    BY_FLOOR = "by-floor"
    EQUALLY = "equally"
    BY_HAND = "by-hand"

    @property
    def label(self) -> str:
        """The way in words, to be translated where shown."""
        return _SHARING_LABELS[self]


_SHARING_LABELS = {
    EnergySharing.BY_FLOOR: mark("by share of the floor"),
    EnergySharing.EQUALLY: mark("equally"),
    EnergySharing.BY_HAND: mark("by hand"),
}


@dataclass(frozen=True)
class Room:
    """A place where crops stand. zone: IANA name of its time zone."""

    id: str
    name: str
    floor_m2: float | None = None
    zone: str = "UTC"
    energy_sharing: EnergySharing = EnergySharing.BY_FLOOR
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        return _named(self.name) + check_quantity("floor_m2", self.floor_m2)


@dataclass(frozen=True)
class Lamp:
    """Lamps of one kind in a room. rated_w, wall_w: of one lamp; the measured wall watts are preferred.

    kind: a key of the table of light factors. ballast_loss_percent: of the rated watts, where no wall watts are known.
    rated_life_h counts from bulb_from_day. price_minor: of one lamp.
    """

    id: str
    room_id: str
    name: str
    lamp_count: int = 1
    rated_w: float | None = None
    wall_w: float | None = None
    efficacy_umol_per_j: float | None = None
    from_day: date | None = None
    until_day: date | None = None
    kind: str = ""
    ballast_loss_percent: float | None = None
    rated_life_h: float | None = None
    bulb_from_day: date | None = None
    price_minor: int | None = None
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = _named(self.name)
        for key in _LAMP_QUANTITIES:
            found += check_quantity(key, getattr(self, key))
        return found


class DeviceSort(StrEnum):
    """What else draws power in a room."""

    FAN = "fan"
    PUMP = "pump"
    HEATER = "heater"
    HUMIDITY = "humidity"
    OTHER = "other"

    @property
    def label(self) -> str:
        """The sort in words, to be translated where shown."""
        return _DEVICE_LABELS[self]


_DEVICE_LABELS = {
    DeviceSort.FAN: mark("fan"),
    DeviceSort.PUMP: mark("pump"),
    DeviceSort.HEATER: mark("heater"),
    DeviceSort.HUMIDITY: mark("humidifier or dehumidifier"),
    DeviceSort.OTHER: mark("other"),
}


@dataclass(frozen=True)
class Device:
    """Something beside the lamps that draws power. device_w at the wall, of all of them together.

    hours_per_day None: around the clock; with_lamps: while the lamps are on. duty_percent: of that time,
    100 if not stated.
    """

    id: str
    room_id: str
    name: str
    sort: DeviceSort = DeviceSort.FAN
    device_w: float | None = None
    hours_per_day: float | None = None
    with_lamps: bool = False
    duty_percent: float | None = None
    from_day: date | None = None
    until_day: date | None = None
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = _named(self.name)
        for key in ("device_w", "hours_per_day", "duty_percent"):
            found += check_quantity(key, getattr(self, key))
        return found


@dataclass(frozen=True)
class Tank:
    """A tank of nutrient solution. recirculates: the drain comes back to it."""

    id: str
    room_id: str
    name: str
    tank_l: float | None = None
    recirculates: bool = False
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        return _named(self.name) + check_quantity("tank_l", self.tank_l)


def _named(name: str) -> list[Problem]:
    return [] if name.strip() else [Problem("name", say("Give it a name."))]
