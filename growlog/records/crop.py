"""Crops, their plants and where they stood."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from growlog.records.problems import Problem, check_line, check_quantity
from growlog.words import say, show_day

_QUANTITIES = (
    "container_l", "seeds_sown", "seeds_emerged", "shop_price_minor_per_kg", "shop_price_minor_per_fruit",
)  # fmt: skip


class StartedFrom(StrEnum):
    """What the grower began with; it decides the day from which plant age counts."""

    SEED = "seed"
    BOUGHT_PLANT = "bought-plant"


@dataclass(frozen=True)
class Crop:
    """A crop from seed to clearing. Dates are civil dates; a date that has not come is None.

    Plant age counts from sowing (day 0), for bought plants from transplanting.
    first_flower_on and first_pick_on are read from the entries unless typed here. taste, fruit_shape, keeping: quality
    in the grower's words. What a shop asks for such fruit is in minor units of the logbook's currency.
    """

    id: str
    name: str
    cultivar_id: str
    started_from: StartedFrom = StartedFrom.SEED
    sown_on: date | None = None
    emerged_on: date | None = None
    transplanted_on: date | None = None
    first_flower_on: date | None = None
    first_pick_on: date | None = None
    planned_clearing_on: date | None = None
    cleared_on: date | None = None
    medium: str = ""
    system: str = ""
    container_l: float | None = None
    seed_lot: str = ""
    seeds_sown: int | None = None
    seeds_emerged: int | None = None
    trying: str = ""
    taste: str = ""
    fruit_shape: str = ""
    keeping: str = ""
    shop_price_minor_per_kg: int | None = None
    shop_price_minor_per_fruit: int | None = None
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    @property
    def day_zero(self) -> date:
        """The civil date of plant age 0; ValueError where the record is not valid."""
        day = self.sown_on if self.started_from is StartedFrom.SEED else self.transplanted_on
        if day is None:
            raise ValueError(f"crop {self.name!r} has no day 0")
        return day

    @property
    def growing(self) -> bool:
        """Whether it still stands."""
        return self.cleared_on is None

    def problems(self) -> list[Problem]:
        """What is wrong with it: a name, a day 0, dates in their order, counts within limits."""
        found = [] if self.name.strip() else [Problem("name", say("Give the crop a name."))]
        found += check_line("name", self.name) + self._start_problems() + self._order_problems()
        for key in _QUANTITIES:
            found += check_quantity(key, getattr(self, key))
        if (self.seeds_emerged or 0) > (self.seeds_sown if self.seeds_sown is not None else 9999):
            found.append(Problem("seeds_emerged", say("More seeds emerged than were sown.")))
        return found

    def _start_problems(self) -> list[Problem]:
        if self.started_from is StartedFrom.SEED and self.sown_on is None:
            return [Problem("sown_on", say("Say when it was sown: plant age counts from that day."))]
        if self.started_from is StartedFrom.BOUGHT_PLANT and self.transplanted_on is None:
            sentence = say("Say when the plant was transplanted: plant age counts from that day.")
            return [Problem("transplanted_on", sentence)]
        return []

    def _order_problems(self) -> list[Problem]:
        if self._start_problems():
            return []
        start = self.day_zero
        checked = ("emerged_on", "transplanted_on", "first_flower_on", "first_pick_on",
                   "planned_clearing_on", "cleared_on")  # fmt: skip
        sentence = say("This is before day 0, {day}.", day=show_day(start))
        return [Problem(key, sentence) for key in checked if (d := getattr(self, key)) and d < start]


@dataclass(frozen=True)
class Plant:
    """One plant of a crop; per-plant figures divide by the plants alive."""

    id: str
    crop_id: str
    label: str
    from_day: date
    lost_on: date | None = None
    lost_cause: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = [] if self.label.strip() else [Problem("label", say("Give the plant a label."))]
        if self.lost_on and self.lost_on < self.from_day:
            found.append(Problem("lost_on", say("A plant is not lost before it stood there.")))
        return found


@dataclass(frozen=True)
class Placement:
    """Where a crop stood: room, tank and share of the floor, from a day until a day (inclusive).

    energy_share: of the room's energy, where that is shared out by hand.
    """

    id: str
    crop_id: str
    room_id: str
    from_day: date
    until_day: date | None = None
    tank_id: str | None = None
    floor_share: float | None = None
    energy_share: float | None = None
    version: int = 1
    removed_at: datetime | None = None

    def covers(self, day: date) -> bool:
        """Whether the crop stood there on that day."""
        return self.from_day <= day and (self.until_day is None or day <= self.until_day)

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        found = check_quantity("floor_share", self.floor_share) + check_quantity("energy_share", self.energy_share)
        if self.until_day and self.until_day < self.from_day:
            found.append(Problem("until_day", say("It ends before it begins.")))
        return found
