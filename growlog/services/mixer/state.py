"""What the nutrient mixer is asked: tank, water, doses, target, as they stand in its fields."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from growlog.calculations.products import Product
from growlog.calculations.water import Water
from growlog.records.recipe import WaterShare


@dataclass(frozen=True)
class MixerDose:
    """A dose line. product: its name; product_id: of the shelf, None where only a name is known.

    A name alone is looked for among the state's guests, then on the shelf, then among the ready salts. unit: one of
    DOSE_UNITS, such as "mL/L" or "tsp/gal_us".
    """

    product: str
    amount: float
    unit: str = "mL/L"
    product_id: str | None = None


@dataclass(frozen=True)
class Range:
    """A range of a target in mg/L. None: open to that side. source, certainty: as published, "" of the grower's own.
    about_a_point: it was stated as the one figure in its middle."""

    low: float | None
    high: float | None
    source: str = ""
    certainty: str = ""
    about_a_point: bool = False

    @property
    def aim(self) -> float | None:
        """What doses are sought for: the middle, or the low end of an open range; None for a mere limit."""
        return self.low if self.high is None else None if self.low is None else (self.low + self.high) / 2


@dataclass(frozen=True)
class PublishedTarget:
    """A crop and stage of the published table."""

    crop: str
    stage: str


@dataclass(frozen=True)
class MixTarget:
    """Another mix at a strength, with the water of the state it is held against."""

    mix_id: str
    strength_percent: float = 100.0


@dataclass(frozen=True)
class OwnTarget:
    """The grower's own ranges in mg/L, by element symbol or "NH4-N"."""

    ranges: Mapping[str, Range]
    name: str = ""


Target = PublishedTarget | MixTarget | OwnTarget


@dataclass(frozen=True)
class MixerState:
    """All fields of the mixer. Doses are those at 100 % strength; the water is never scaled.

    waters: shares of saved waters, adding up to 1; none of them: rain or reverse osmosis, or typed_water where given.
    ph: measured in the tank, for the warning on calcium phosphate. day None: today. guests: products that came with a
    file and are not on the shelf; ignored: words of that file that mean nothing here.
    """

    tank_l: float | None = None
    strength_percent: float = 100.0
    doses: tuple[MixerDose, ...] = ()
    waters: tuple[WaterShare, ...] = ()
    target: Target | None = None
    ph: float | None = None
    mix_name: str = ""
    crop_id: str | None = None
    tank_id: str | None = None
    day: date | None = None
    guests: tuple[Product, ...] = ()
    typed_water: Water | None = None
    ignored: tuple[str, ...] = ()


@dataclass(frozen=True)
class DoseWishes:
    """What the search for doses keeps to; products by name.

    candidates: products that may be used; none named: those of the dose lines, where there are none the guests, and
    where there are none all of the shelf with an analysis. locked: keep their present dose. highest_per_l: in mL/L or
    g/L, beside the label's own. weights: how much an element matters, 1 if not given. smallest_ml, smallest_g: what
    the syringe and the scale can measure out for the tank; None: doses are not rounded.
    """

    candidates: tuple[str, ...] = ()
    locked: frozenset[str] = frozenset()
    excluded: frozenset[str] = frozenset()
    highest_per_l: Mapping[str, float] = field(default_factory=dict)
    weights: Mapping[str, float] = field(default_factory=dict)
    smallest_ml: float | None = 0.1
    smallest_g: float | None = 0.1
