"""The common salts, acids and bases as products for the shelf, by chemistry only."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache

from growlog.calculations.allowed import require, require_above
from growlog.calculations.products import is_acid
from growlog.records.product import LabelBasis, LabelShare, ProductForm, ShelfProduct
from growlog.services.mixing import ready_salts
from growlog.services.open_logbook import new_id
from growlog.sharing.tables import table_rows
from growlog.words import say

_CHELATES = ("EDTA", "DTPA", "EDDHA")


@dataclass(frozen=True)
class ReadyProduct:
    """A salt, acid or base ready to be put on the shelf. product: a template; give it an id of its own by on_shelf.

    needs_strength: an acid, bought as a solution: ask for its per cent by weight and density, and use acid_solution.
    note: what its label usually states, "" where nothing is known.
    """

    product: ShelfProduct
    formula: str
    needs_strength: bool
    note: str

    def on_shelf(self) -> ShelfProduct:
        """The product with an identity of its own, not yet written."""
        return replace(self.product, id=new_id())


@cache
def ready_products() -> tuple[ReadyProduct, ...]:
    """All of the table, in its order. What a label states goes before what the formula says."""
    grades = {row["name"]: row["usual_label_grade"] for row in table_rows("salts")}
    return tuple(
        ReadyProduct(
            _template(salt.product.name, salt.product.analysis_pct),
            salt.formula,
            is_acid(salt.product),
            _note(salt.product.name, grades[salt.product.name]),
        )
        for salt in ready_salts()
    )


def acid_solution(ready: ReadyProduct, percent_by_weight: float, density_g_per_ml: float) -> ShelfProduct:
    """An acid as it is bought: so many per cent by weight (above 0 to 100) at a density (0.9 to 2 g/mL), dosed in mL.

    ValueError outside.
    """
    require_above("percent_by_weight", percent_by_weight, 0, 100, "%")
    require("density_g_per_ml", density_g_per_ml, 0.9, 2, "g/mL")
    analysis = tuple(LabelShare(s.nutrient, s.label_percent * percent_by_weight / 100) for s in ready.product.analysis)
    name = say("{acid} {percent} %", acid=ready.product.name.partition(" (")[0], percent=f"{percent_by_weight:g}")
    return ShelfProduct(new_id(), name, ProductForm.LIQUID, LabelBasis.BY_WEIGHT, density_g_per_ml, analysis)


def _template(name: str, analysis: Mapping[str, float]) -> ShelfProduct:
    shares = tuple(LabelShare(word, per_cent) for word, per_cent in analysis.items())
    chelate = next((c for c in _CHELATES if c in name), "")
    return ShelfProduct(
        "", name, ProductForm.SOLID, LabelBasis.BY_WEIGHT, None, shares, chelate=chelate, maker_dose_unit="g/L"
    )


def _note(name: str, grade: str) -> str:
    if any(c in name for c in _CHELATES):
        return say("Take the iron from your label: chelates are sold as {grade}.", grade=grade)
    return say("Usually labelled {grade}; the label goes before the formula.", grade=grade) if grade else ""
