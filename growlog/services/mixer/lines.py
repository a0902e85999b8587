"""The dose lines of the mixer: each with its product, its amount for the tank, and what the bottle still holds."""

from dataclasses import dataclass, replace
from decimal import Decimal

from growlog.calculations.dose_units import DOSE_UNITS, DosePerLitre, dose_per_litre, measure_of
from growlog.calculations.products import LIQUID, Product, in_own_measure
from growlog.records.problems import Problem
from growlog.records.product import ShelfProduct
from growlog.services.mixer.bench import Bench, content_of, product_of
from growlog.services.mixer.shown import DoseView
from growlog.services.mixer.state import MixerDose, MixerState
from growlog.services.shelf.stock import ShelfItem


@dataclass(frozen=True)
class DoseRow:
    """A dose as far as it can be worked out. per_l: at the strength asked; own_amount: for the tank, in what its
    stock is counted in, None where that is not known."""

    dose: MixerDose
    product: Product
    item: ShelfItem | None
    per_l: DosePerLitre | None
    tank_amount: float | None
    own_amount: float | None
    is_guest: bool = False

    @property
    def own_per_l(self) -> float | None:
        """mL or g a litre, in what its stock is counted in."""
        return None if self.per_l is None else in_own_measure(self.product, self.per_l.amount, self.per_l.measure)

    def shown(self, problems: tuple[Problem, ...]) -> DoseView:
        """The line as plain values."""
        level = None if self.item is None else self.item.level
        return DoseView(
            product=self.product.name,
            product_id=self.item.product.id if self.item else None,
            amount=self.dose.amount,
            unit=self.dose.unit,
            per_l=self.per_l,
            tank_amount=self.tank_amount,
            measure=self.per_l.measure if self.per_l else "",
            left=level,
            left_measure="mL" if self.product.form == LIQUID else "g",
            days_left=self.item.days_left if self.item else None,
            enough=None if level is None or self.own_amount is None else self.own_amount <= level * (1 + 1e-9),
            cost=self.cost,
            known=self.product.is_known,
            problems=problems,
        )

    @property
    def cost(self) -> Decimal | None:
        """Of the tank's amount, in the currency's main unit."""
        if self.item is None or self.item.cost_per_unit is None or self.own_amount is None:
            return None
        return self.item.cost_per_unit * Decimal(repr(self.own_amount))


def line_for(product: ShelfProduct) -> MixerDose:
    """A new line for a product of the shelf, with the dose that its label states; 0 where it states none."""
    unit = product.maker_dose_unit if product.maker_dose else f"{product.measure}/L"
    return MixerDose(product.name, product.maker_dose or 0.0, unit, product.id)


def dose_rows(bench: Bench, state: MixerState) -> list[DoseRow]:
    """A row for each dose of the state, in its order."""
    names = [dose.product for dose in content_of(bench, state).doses]
    return [_row(bench, state, dose, name) for dose, name in zip(state.doses, names, strict=True)]


def _row(bench: Bench, state: MixerState, dose: MixerDose, name: str) -> DoseRow:
    product, item = product_of(bench, state, dose)
    per_l = _per_litre(state, dose)
    tank = None if per_l is None or not state.tank_l or state.tank_l <= 0 else per_l.amount * state.tank_l
    own = None if tank is None or per_l is None else in_own_measure(product, tank, per_l.measure)
    return DoseRow(dose, _renamed(product, name), item, per_l, tank, own, item is None and product in state.guests)


def _per_litre(state: MixerState, dose: MixerDose) -> DosePerLitre | None:
    """At the strength asked; None where amount, unit or tank cannot be."""
    if dose.unit not in DOSE_UNITS or not 0 <= state.strength_percent < float("inf"):
        return None
    try:
        stated = dose_per_litre(dose.amount, dose.unit, state.tank_l)
    except ValueError:
        return None
    return DosePerLitre(stated.amount * state.strength_percent / 100, measure_of(dose.unit))


def _renamed(product: Product, name: str) -> Product:
    return product if product.name == name else replace(product, name=name)
