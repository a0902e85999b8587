"""What the nutrient mixer shows, as plain values."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum

from growlog.calculations.conductivity import ChargeBalance
from growlog.calculations.dose_units import DosePerLitre
from growlog.calculations.explained_figure import Figure
from growlog.calculations.meter_offset import MeterOffset
from growlog.calculations.unmet import Unmet
from growlog.records.money import Money
from growlog.records.problems import Problem
from growlog.services.mixer.state import MixerState, Range


class Standing(StrEnum):
    """Where an element stands against its target."""

    WITHIN = "within"
    BELOW = "below"
    ABOVE = "above"
    NO_TARGET = "no-target"


@dataclass(frozen=True)
class DoseView:
    """A dose line as shown. per_l at the strength asked; tank_amount in mL or g (measure), None without a tank.

    left: level of the bottle in its own measure; days_left at the present use; cost: of the tank. None: not known.
    known: whether the product has an analysis. problems: of this line, fields "product", "amount", "unit", ...
    """

    product: str
    product_id: str | None
    amount: float
    unit: str
    per_l: DosePerLitre | None
    tank_amount: float | None
    measure: str
    left: float | None
    left_measure: str
    days_left: float | None
    enough: bool | None  # whether the bottle holds this tank's amount
    cost: Decimal | None
    known: bool
    problems: tuple[Problem, ...]


@dataclass(frozen=True)
class ElementLine:
    """An element in the tank. key: "N", "NH4-N" (of the N), "P" ...; meq_per_l None for what carries no charge.

    range: of the target, None without one. off_by: mg/L beyond the nearer end, 0 within. words: "within", "10 below".
    """

    key: str
    label: str
    mg_per_l: float
    mmol_per_l: float
    meq_per_l: float | None
    from_water_mg_per_l: float
    range: Range | None
    standing: Standing
    off_by: float
    words: str
    figure: Figure


@dataclass(frozen=True)
class Ratios:
    """By weight: N : P : K with P as 1, K : Ca : Mg with Mg as 1, ammonium in per cent of N in ions; None: there is
    none.

    ..._words: the same as one line each, "" where there is none.
    """

    n_p_k: tuple[float, ...] | None
    k_ca_mg: tuple[float, ...] | None
    ammonium_percent: float | None
    n_p_k_words: str
    k_ca_mg_words: str
    ammonium_words: str


@dataclass(frozen=True)
class LastReading:
    """What the grower's meter last showed for this crop or tank; age: plant age of the crop, None for a tank."""

    ec_ms_per_cm: float
    day: date
    age: int | None
    entry_id: str


@dataclass(frozen=True)
class EcView:
    """EC at 25 °C in mS/cm with its band; of it, what the water alone is estimated to read.

    meter_scales: 500, 640 and 700 to what such a meter shows: a scale of the meter, not mg/L of nutrients. offset:
    learned from readings after mixing, None before three of them; your_meter: what this grower's meter should read.
    """

    estimate: float
    low: float
    high: float
    of_water: float
    us_per_cm: float
    meter_scales: Mapping[int, float]
    offset: MeterOffset | None
    offset_words: str
    offset_figure: Figure
    your_meter: float | None
    last_reading: LastReading | None
    figure: Figure


@dataclass(frozen=True)
class TargetView:
    """The target held against. ec, ph: its ranges where it has them. note: source and certainty in one line."""

    label: str
    ranges: Mapping[str, Range]
    ec_ms_per_cm: Range | None
    ph: Range | None
    note: str


@dataclass(frozen=True)
class BatchCost:
    """What the products of a tank cost, in the currency's main unit; None where nothing is priced.

    unpriced: products without a price, missing from the sums. per_l and per_tank are exact, money is rounded.
    """

    per_l: Decimal | None
    per_tank: Decimal | None
    money: Money | None
    currency: str
    unpriced: tuple[str, ...]


@dataclass(frozen=True)
class MixerView:
    """All that the mixer shows of a state.

    problems: fields "tank_l", "strength_percent", "ph", "waters", "target", and those of a line as "doses.0.amount".
    Those that do not ask leave the figures empty (elements (), ec None). lines: one per dose, always.
    """

    problems: tuple[Problem, ...]
    lines: tuple[DoseView, ...]
    elements: tuple[ElementLine, ...]
    ratios: Ratios | None
    charges: ChargeBalance | None
    ec: EcView | None
    target: TargetView | None
    order: tuple[str, ...]
    warnings: tuple[str, ...]
    cautions: tuple[str, ...]
    cost: BatchCost
    unknown_products: tuple[str, ...]

    @property
    def ready(self) -> bool:
        """Whether it can be saved and logged: no problem but questions."""
        return not any(not p.asks for p in self.problems)

    def problems_of(self, field: str) -> tuple[Problem, ...]:
        """Those of a field."""
        return tuple(p for p in self.problems if p.field == field)


@dataclass(frozen=True)
class DoseProposal:
    """Doses found for a target: the state with them (at 100 % strength), and what they miss and why."""

    state: MixerState
    unmet: tuple[Unmet, ...]
    figures: tuple[Figure, ...]
