"""What a plant looks like on one day: the model writes it, the drawing reads it. Lengths in cm, angles in degrees.

Azimuth 0 points at the camera, 90 to its right. Heights are above the surface of the medium.
"""

from dataclasses import dataclass
from enum import StrEnum


class Species(StrEnum):
    """The kinds of plant the maker knows."""

    PATTYPAN = "pattypan"
    CHILLI = "chilli"
    AUBERGINE = "aubergine"


class FlowerForm(StrEnum):
    """Male and female in the pattypan, both in one in the nightshades."""

    MALE = "male"
    FEMALE = "female"
    BOTH = "both"


class FlowerStage(StrEnum):
    """How far a flower is; a squash flower is open on one morning only."""

    BUD = "bud"
    OPEN = "open"
    CLOSED = "closed"
    WITHERED = "withered"


@dataclass(frozen=True)
class Pot:
    """The pot of the day: outer sizes at rim and foot."""

    volume_l: float
    rim_cm: float
    foot_cm: float
    height_cm: float


@dataclass(frozen=True)
class Leaf:
    """One leaf; `number` keeps its identity from day to day."""

    number: int
    azimuth_deg: float
    base_height_cm: float
    stalk_cm: float
    blade_cm: float
    expansion: float  # 0 just visible, 1 full size
    age_days: float
    yellowing: float  # 0 green, 1 yellow
    mildew: float = 0.0  # share of the blade under spots
    shoot: int = -1  # the shoot it stands on (nightshades), -1 for the main stem
    along_shoot: float = 1.0


@dataclass(frozen=True)
class Flower:
    """One flower or bud."""

    number: int
    form: FlowerForm
    stage: FlowerStage
    azimuth_deg: float
    base_height_cm: float
    size: float  # 0 to 1 of its full size
    shoot: int = -1


@dataclass(frozen=True)
class Fruit:
    """One hanging fruit."""

    number: int
    azimuth_deg: float
    base_height_cm: float
    across_cm: float
    weight_g: float
    ripeness: float  # 0 unripe colour, 1 ripe colour
    failing: float = 0.0  # 0 sound, 1 about to drop
    shoot: int = -1


@dataclass(frozen=True)
class Shoot:
    """A piece of branching stem (nightshades): grows from the end of its parent."""

    number: int
    parent: int  # -1: from the medium
    azimuth_deg: float
    rise_deg: float
    length_cm: float
    radius_cm: float
    woodiness: float  # 0 green, 1 brown


@dataclass(frozen=True)
class PlantState:
    """Everything that can be seen of one plant on one day."""

    crop: str
    species: Species
    day: int
    pot: Pot
    emergence: float  # 0 nothing above the medium, 1 seed leaves spread
    seed_leaf_cm: float
    seed_leaf_yellowing: float  # above 1: fallen
    stem_height_cm: float
    stem_radius_cm: float
    leaves: tuple[Leaf, ...] = ()
    flowers: tuple[Flower, ...] = ()
    fruits: tuple[Fruit, ...] = ()
    shoots: tuple[Shoot, ...] = ()
    stub_heights_cm: tuple[float, ...] = ()  # where old leaves were cut off
    cane: bool = False
    treated_today: bool = False

    @property
    def leaf_area_m2(self) -> float:
        """Area of all blades, by width times length times a form factor (0.7, common practice, no source)."""
        length_to_width = {Species.PATTYPAN: 0.95, Species.CHILLI: 1.9, Species.AUBERGINE: 1.35}[self.species]
        blades = sum(0.7 * leaf.blade_cm**2 * length_to_width for leaf in self.leaves)
        seed_leaves = 0.0 if self.seed_leaf_yellowing > 1 else 2 * 0.6 * self.seed_leaf_cm**2 * self.emergence
        return (blades + seed_leaves) / 10_000
