"""Products on the shelf, as their labels state them, and what came to and went from each bottle."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from growlog.records.problems import Problem, check_line, check_quantity
from growlog.words import say


class ProductForm(StrEnum):
    """Liquid or solid."""

    LIQUID = "liquid"
    SOLID = "solid"


class LabelBasis(StrEnum):
    """What the label's per cent are of: weight in weight, or grams in 100 mL."""

    BY_WEIGHT = "w/w"
    IN_VOLUME = "w/v"


@dataclass(frozen=True)
class LabelShare:
    """One line of the guaranteed analysis. nutrient: a label word such as n_nitrate, p2o5, k2o, ca, fe."""

    nutrient: str
    label_percent: float


@dataclass(frozen=True)
class ShelfProduct:
    """A product the grower has. No analysis: its content is unknown, never zero.

    density_g_per_ml: of a liquid, or of a heaped solid for spoons. maker_dose with its unit as the label prints it;
    label_max_per_l in mL/L or g/L. pack_amount in mL of a liquid, g of a solid; pack_price_minor of one pack.
    chelate: how the label says its iron is held.
    """

    id: str
    name: str
    form: ProductForm = ProductForm.LIQUID
    basis: LabelBasis = LabelBasis.BY_WEIGHT
    density_g_per_ml: float | None = None
    analysis: tuple[LabelShare, ...] = ()
    chelate: str = ""
    maker_dose: float | None = None
    maker_dose_unit: str = "mL/L"
    label_max_per_l: float | None = None
    pack_amount: float | None = None
    pack_price_minor: int | None = None
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    @property
    def measure(self) -> str:
        """What its stock is counted in."""
        return "mL" if self.form is ProductForm.LIQUID else "g"

    def problems(self) -> list[Problem]:
        """What is wrong with it; a label by weight asks for a density where it is dosed by volume."""
        found = [] if self.name.strip() else [Problem("name", say("Give the product a name."))]
        found += check_line("name", self.name)
        for key in ("density_g_per_ml", "maker_dose", "label_max_per_l", "pack_amount", "pack_price_minor"):
            found += check_quantity(key, getattr(self, key))
        found += [p for s in self.analysis for p in check_quantity("label_percent", s.label_percent, "analysis")]
        if self.form is ProductForm.SOLID and self.basis is LabelBasis.IN_VOLUME:
            found.append(Problem("basis", say("A solid is labelled by weight.")))
        by_weight = self.form is ProductForm.LIQUID and self.basis is LabelBasis.BY_WEIGHT
        if by_weight and self.analysis and self.density_g_per_ml is None:
            sentence = say("Per cent by weight of a liquid needs its density, or the weight of a volume.")
            found.append(Problem("density_g_per_ml", sentence))
        if sum(s.label_percent for s in self.analysis) > 100:
            found.append(Problem("analysis", say("The analysis adds up to more than 100 %."), asks=True))
        return found


class StockMoveSort(StrEnum):
    """Why the level of a bottle changed."""

    BOUGHT = "bought"
    USED = "used"
    COUNTED = "counted"
    THROWN_AWAY = "thrown-away"


@dataclass(frozen=True)
class StockMove:
    """A change of a bottle's level. amount in mL or g: what came or went, for a count what is there now.

    price_minor: what was paid, for what was bought. entry_id: the feed that used it.
    """

    id: str
    product_id: str
    day: date
    sort: StockMoveSort
    amount: float
    price_minor: int | None = None
    entry_id: str | None = None
    note: str = ""
    version: int = 1
    removed_at: datetime | None = None

    def problems(self) -> list[Problem]:
        """What is wrong with it."""
        return check_quantity("stock_amount", self.amount, "amount") + check_quantity("price_minor", self.price_minor)
