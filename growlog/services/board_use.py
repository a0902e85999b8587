"""What a crop takes by day: its cost and its electricity, for lanes that are read beside the board."""

from dataclasses import dataclass

from growlog.services.money.costs import CostDay, costs_of_crop
from growlog.services.open_logbook import OpenLogbook


@dataclass(frozen=True)
class EnergyUse:
    """A crop's share of the electricity of a day."""

    age: int
    kwh: float


@dataclass(frozen=True)
class BoardUse:
    """Cost by day and kind, in minor units of the currency, and electricity by day; empty where nothing is stated."""

    crop_id: str
    costs: tuple[CostDay, ...]
    energy: tuple[EnergyUse, ...]
    currency: str


def use_of(log: OpenLogbook, crop_id: str) -> BoardUse:
    """A crop's use up to today; takes longer than the board, so read it off the window's thread."""
    costs = costs_of_crop(log, crop_id)
    used = tuple(EnergyUse(day.age, day.kwh) for day in costs.energy.days if day.kwh)
    return BoardUse(crop_id, costs.days, used, costs.currency)
