"""Which part of an entry of a tank or a room is a crop's."""

from dataclasses import dataclass
from datetime import date

from growlog.records.crop import Crop, Placement
from growlog.records.entry import Entry, OwnerKind
from growlog.services.light.statements import stands
from growlog.storage.unit_of_work import UnitOfWork


@dataclass(frozen=True)
class Placed:
    """All crops and where they stood."""

    crops: dict[str, Crop]
    placements: tuple[Placement, ...]

    @staticmethod
    def of(unit: UnitOfWork) -> "Placed":
        """As the logbook stands."""
        return Placed({c.id: c for c in unit.crops.all()}, tuple(unit.placements.all()))

    def share(self, crop: Crop, entry: Entry) -> float:
        """1 for the crop's own entries; of a tank's or a room's an equal part among the crops there that day."""
        if entry.owner.kind in (OwnerKind.CROP, OwnerKind.PLANT):
            return 1.0
        there = self.by_tank(entry.owner.id, entry.day) | self.in_room(entry.owner.id, entry.day)
        return 1 / len(there) if crop.id in there else 0.0

    def by_tank(self, tank_id: str, day: date) -> set[str]:
        """The crops that stand by a tank."""
        return {p.crop_id for p in self.placements if p.tank_id == tank_id and self._stands(p, day)}

    def in_room(self, room_id: str, day: date) -> set[str]:
        """The crops that stand in a room."""
        return {p.crop_id for p in self.placements if p.room_id == room_id and self._stands(p, day)}

    def _stands(self, placement: Placement, day: date) -> bool:
        crop = self.crops.get(placement.crop_id)
        return crop is not None and stands(crop, placement, day)
