"""A room's electricity by day."""

from dataclasses import dataclass
from datetime import date

from growlog.records.room import Room
from growlog.services.energy.day_use import EnergyDay, energy_days, room_power
from growlog.services.open_logbook import OpenLogbook


@dataclass(frozen=True)
class RoomEnergy:
    """The use of a room. notes: sentences on what is missing for a sure figure."""

    room: Room
    currency: str
    days: tuple[EnergyDay, ...]
    notes: tuple[str, ...]

    @property
    def kwh(self) -> float:
        """All days together."""
        return sum(d.kwh for d in self.days)


def energy_of_room(log: OpenLogbook, room_id: str, first: date, last: date) -> RoomEnergy:
    """A room's use from one day to another, both among them; LogbookProblem if the room is not there."""
    with log.unit() as unit:
        power = room_power(unit, room_id, first, last)
    days = tuple(energy_days(power, first, last))
    return RoomEnergy(power.room, power.currency, days, tuple(power.notes(first, last)))
