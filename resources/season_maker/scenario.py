"""The invented box room of last winter: floor, lamps, mixes, crops and their dates. Nothing here is computed."""

from dataclasses import dataclass
from datetime import date, time, timedelta

from .plant_state import Pot, Species

LAST_DAY = date(2026, 3, 7)
SEED = 20260307

SMALL_POT = Pot(volume_l=0.5, rim_cm=9.0, foot_cm=6.5, height_cm=9.0)
MIDDLE_POT = Pot(volume_l=6.5, rim_cm=22.0, foot_cm=16.5, height_cm=20.0)
LARGE_POT = Pot(volume_l=11.0, rim_cm=25.0, foot_cm=19.0, height_cm=22.0)


@dataclass(frozen=True)
class Lamps:
    """All lamps of the room together."""

    count: int
    watts_each: float  # at the wall, undimmed
    efficacy_umol_per_j: float

    def photons_umol_s(self, dimming_percent: float) -> float:
        """Photons given at this dimming, lamps taken as linear."""
        return self.count * self.watts_each * self.efficacy_umol_per_j * dimming_percent / 100


@dataclass(frozen=True)
class Room:
    """The box room."""

    name: str
    floor_m2: float
    lamps: Lamps


@dataclass(frozen=True)
class LightStep:
    """The lamps' setting from a day on. PPFD is the mean at the canopy."""

    from_day: date
    hours_on: float
    dimming_percent: float
    on_at: time
    ppfd_umol_m2_s: float
    why: str

    @property
    def dli_mol_m2_d(self) -> float:
        """Daily light integral: PPFD x hours x 0.0036."""
        return self.ppfd_umol_m2_s * self.hours_on * 0.0036


@dataclass(frozen=True)
class Mix:
    """A feed by its doses; EC is what it makes in this tap water."""

    name: str
    dose_a_ml_per_l: float
    dose_b_ml_per_l: float
    ec_ms_cm: float


@dataclass(frozen=True)
class Placement:
    """The share of the room's floor that a crop takes from a plant age on."""

    from_age: int
    floor_share: float


@dataclass(frozen=True)
class CropPlan:
    """A crop's fixed points. Ages are days since sowing (sowing = 0)."""

    name: str
    species: Species
    about: str
    sown: date
    ends: date  # cleared on, or still growing on the last day
    cleared: bool
    packet_days: int
    packet_counts_from: str  # "sowing" or "transplanting"
    by_hand: bool
    emerges_at_age: int
    transplanted_at_age: int | None
    placements: tuple[Placement, ...]
    photo_every_days: float
    missing_photo_ages: tuple[int, ...] = ()

    @property
    def last_age(self) -> int:
        """Plant age on the crop's last day in this season."""
        return (self.ends - self.sown).days

    def day(self, age: int) -> date:
        """The date of a plant age."""
        return self.sown + timedelta(days=age)

    def pot(self, age: int) -> Pot:
        """The pot it stands in at this age."""
        if self.species is Species.PATTYPAN:
            return LARGE_POT
        assert self.transplanted_at_age is not None
        return SMALL_POT if age < self.transplanted_at_age else MIDDLE_POT

    def floor_share(self, age: int) -> float:
        """Its share of the floor at this age."""
        return [place.floor_share for place in self.placements if place.from_age <= age][-1]


ROOM = Room("Box room", floor_m2=1.1, lamps=Lamps(count=2, watts_each=120.0, efficacy_umol_per_j=2.6))

LIGHT_STEPS = (
    LightStep(date(2025, 7, 28), 16, 40, time(5, 0), 200, "seedlings"),
    LightStep(date(2025, 8, 17), 14, 100, time(6, 0), 500, "Skylight Round has broad leaves"),
    LightStep(date(2025, 11, 1), 16, 40, time(5, 0), 200, "only chilli seedlings left"),
    LightStep(date(2025, 12, 5), 14, 100, time(6, 0), 500, "full light; first true leaves already broad"),
)

WEAK_MIX = Mix("A + B 2.0 mL/L", 2.0, 2.0, 1.36)
FULL_MIX = Mix("A + B 3.0 mL/L", 3.0, 3.0, 1.88)
TAP_WATER_EC_MS_CM = 0.21

BOXROOM_GOLD = CropPlan(
    name="Boxroom Gold",
    species=Species.PATTYPAN,
    about="bush pattypan, pollinated by hand, coir",
    sown=date(2025, 11, 15),
    ends=LAST_DAY,
    cleared=True,
    packet_days=58,
    packet_counts_from="sowing",
    by_hand=True,
    emerges_at_age=3,
    transplanted_at_age=None,
    placements=(Placement(0, 0.5),),
    photo_every_days=1,
    missing_photo_ages=(77, 78),
)
SKYLIGHT_ROUND = CropPlan(
    name="Skylight Round",
    species=Species.PATTYPAN,
    about="bush pattypan that sets without pollination, coir",
    sown=date(2025, 7, 28),
    ends=date(2025, 11, 1),
    cleared=True,
    packet_days=55,
    packet_counts_from="sowing",
    by_hand=False,
    emerges_at_age=4,
    transplanted_at_age=None,
    placements=(Placement(0, 0.5),),
    photo_every_days=3.2,
)
LANDING_LIGHT = CropPlan(
    name="Landing Light",
    species=Species.CHILLI,
    about="chilli, coir",
    sown=date(2025, 10, 30),
    ends=LAST_DAY,
    cleared=False,
    packet_days=70,
    packet_counts_from="transplanting",
    by_hand=False,
    emerges_at_age=8,
    transplanted_at_age=45,
    placements=(Placement(0, 0.03), Placement(45, 0.25)),
    photo_every_days=3.2,
)
PORCH_VIOLET = CropPlan(
    name="Porch Violet",
    species=Species.AUBERGINE,
    about="aubergine, coir",
    sown=date(2025, 12, 23),
    ends=LAST_DAY,
    cleared=False,
    packet_days=70,
    packet_counts_from="transplanting",
    by_hand=False,
    emerges_at_age=7,
    transplanted_at_age=35,
    placements=(Placement(0, 0.03), Placement(35, 0.25)),
    photo_every_days=3.2,
)

CROPS = (BOXROOM_GOLD, SKYLIGHT_ROUND, LANDING_LIGHT, PORCH_VIOLET)


def light_on(day: date) -> LightStep:
    """The lamps' setting on a day (from the first step on)."""
    return [step for step in LIGHT_STEPS if step.from_day <= day][-1]
