"""What the grower wrote down, in the maker's own plain form; units stand in the names.

`crop` is the crop's name, or None for what belongs to the room. `at` is the wall clock. Every kind adds only its own
fields, so that whoever writes the season out can translate kind by kind.
"""

from dataclasses import dataclass, field
from datetime import date, time


@dataclass(frozen=True, kw_only=True)
class Event:
    """What all entries share."""

    crop: str | None
    day: date
    at: time
    labour_min: int = 0
    note: str = ""


@dataclass(frozen=True, kw_only=True)
class StageSeen(Event):
    """A growth stage, BBCH two-digit code of its principal stage list."""

    bbch: str
    meaning: str


@dataclass(frozen=True, kw_only=True)
class LightChange(Event):
    """Lamps of the room set anew: from this day on."""

    hours_on: float
    dimming_percent: float
    on_at: time
    ppfd_umol_m2_s: float


@dataclass(frozen=True, kw_only=True)
class RoomReading(Event):
    """Air of the room."""

    air_c: float
    humidity_percent: float
    night_air_c: float | None = None
    night_humidity_percent: float | None = None


@dataclass(frozen=True, kw_only=True)
class Feed(Event):
    """Nutrient solution given to one crop, and what ran out of the pot."""

    mix: str
    dose_a_ml_per_l: float
    dose_b_ml_per_l: float
    volume_l: float
    ec_ms_cm: float
    ph: float
    drain_l: float | None = None
    drain_ec_ms_cm: float | None = None
    drain_ph: float | None = None


@dataclass(frozen=True, kw_only=True)
class PlainWater(Event):
    """Water without feed, to wash salt out of the medium."""

    volume_l: float
    ec_ms_cm: float
    drain_l: float | None = None
    drain_ec_ms_cm: float | None = None


@dataclass(frozen=True, kw_only=True)
class MeterCalibration(Event):
    """A meter checked in a known standard, before and after."""

    meter: str  # "EC" or "pH"
    standard_value: float
    standard_unit: str
    read_before: float
    read_after: float


@dataclass(frozen=True, kw_only=True)
class MeterRead(Event):
    """The electricity meter before the room."""

    kwh: float
    starts_anew: bool = False


@dataclass(frozen=True, kw_only=True)
class PottingOn(Event):
    """Into a larger pot (the chilli's and the aubergine's transplanting)."""

    from_volume_l: float
    to_volume_l: float
    medium: str


@dataclass(frozen=True, kw_only=True)
class Training(Event):
    """Leaves taken off, side shoots taken out, tying."""

    old_leaves_removed: int = 0
    side_shoots_removed: int = 0
    tied: bool = False
    leaf_numbers: tuple[int, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Pollination(Event):
    """Flowers pollinated by hand on one morning."""

    females_pollinated: int
    females_open: int
    males_open: int
    method: str
    flower_numbers: tuple[int, ...] = ()


@dataclass(frozen=True, kw_only=True)
class FruitCheck(Event):
    """A count at the plant. `set_fruit`, `dropped`, `thinned`: since the last check; the others: today."""

    flowers_open: int
    set_fruit: int
    dropped: int
    thinned: int
    hanging: int
    flowers_set: tuple[int, ...] = ()  # the same by the flowers' numbers
    flowers_dropped: tuple[int, ...] = ()


@dataclass(frozen=True, kw_only=True)
class PickedFruit:
    """One fruit of a pick, with the flower it came from."""

    flower_number: int
    flower_day: date
    weight_g: float | None
    culled: str = ""  # the cause; "" = marketable


@dataclass(frozen=True, kw_only=True)
class Pick(Event):
    """Fruit taken off on one visit."""

    fruit: tuple[PickedFruit, ...] = field(default_factory=tuple)


@dataclass(frozen=True, kw_only=True)
class PlantReading(Event):
    """Height above the medium and leaves on the plant."""

    height_cm: float
    leaves: int


@dataclass(frozen=True, kw_only=True)
class ProblemSeen(Event):
    """Something wrong with the plant."""

    problem: str
    where: str
    share_percent: float


@dataclass(frozen=True, kw_only=True)
class Treatment(Event):
    """A treatment by chemistry, with the intervals that its label would give."""

    substance: str
    dose_g_per_l: float
    volume_l: float
    re_entry_h: float
    harvest_interval_d: int


@dataclass(frozen=True, kw_only=True)
class Tasting(Event):
    """How the fruit were, in the grower's words."""

    taste: str
    keeping: str = ""


@dataclass(frozen=True, kw_only=True)
class NoteWritten(Event):
    """A plain note."""


@dataclass(frozen=True, kw_only=True)
class Cleared(Event):
    """The crop taken out."""

    reason: str
