"""What a bottle or a salt brings, from its label."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from growlog.calculations.dose_units import DosePerLitre
from growlog.calculations.nutrients import UNSTATED_N, add_up, meq_per_l, nutrients_from_label

LIQUID, SOLID = "liquid", "solid"
BY_WEIGHT, IN_VOLUME = "w/w", "w/v"


@dataclass(frozen=True)
class Product:
    """A product as its label states it.

    form: "liquid" or "solid". basis: "w/w" (per cent by weight) or "w/v" (g per 100 mL). analysis_pct: the label's
    words to per cent, empty where nothing is known. density_g_per_ml: of the liquid, or of the heaped solid for spoons.
    label_max_per_l: the label's highest dose in mL/L of a liquid or g/L of a solid.
    """

    name: str
    form: str = SOLID
    basis: str = BY_WEIGHT
    analysis_pct: Mapping[str, float] = field(default_factory=dict)
    density_g_per_ml: float | None = None
    label_max_per_l: float | None = None

    @property
    def is_known(self) -> bool:
        """Whether its label says anything; without, its nutrients are unknown, never zero."""
        return bool(self.analysis_pct)

    @property
    def usual_measure(self) -> str:
        """ "mL" where it can be dosed by volume without a density, else "g"."""
        return "mL" if self.form == LIQUID and (self.basis == IN_VOLUME or self.density_g_per_ml) else "g"


def check_product(product: Product) -> None:
    """ValueError naming the first quantity that cannot be true.

    Per cent 0 to 100, density 0.2 to 4 g/mL, form liquid or solid, basis w/w or w/v (w/v for liquids only).
    """
    if product.form not in (LIQUID, SOLID):
        raise ValueError(f"form {product.form!r} is outside liquid, solid")
    if product.basis not in (BY_WEIGHT, IN_VOLUME):
        raise ValueError(f"basis {product.basis!r} is outside w/w, w/v")
    if product.form == SOLID and product.basis == IN_VOLUME:
        raise ValueError("basis 'w/v' is outside w/w, which solids are labelled by")
    density = product.density_g_per_ml
    if density is not None and not 0.2 <= density <= 4:
        raise ValueError(f"density_g_per_ml {density:g} is outside 0.2 to 4 g/mL")
    for word, per_cent in product.analysis_pct.items():
        if not 0 <= per_cent <= 100:
            raise ValueError(f"{word} {per_cent:g} is outside 0 to 100 %")
    total = sum(nutrients_from_label(product.analysis_pct).values())
    if total > 100:
        raise ValueError(f"analysis {total:g} in all, as elements, is outside 0 to 100 %")


def nutrients_mg_per(product: Product, measure: str) -> dict[str, float]:
    """mg of each nutrient in 1 mL (measure "mL") or 1 g (measure "g") of a product.

    ValueError for impossible figures, and where weight and volume meet without a density: per cent by weight needs it
    for doses by volume, per cent in volume for doses by weight.
    """
    check_product(product)
    if measure not in ("mL", "g"):
        raise ValueError(f"measure {measure!r} is outside mL, g")
    mg = {n: per_cent * 10 for n, per_cent in nutrients_from_label(product.analysis_pct).items()}
    own_measure = "mL" if product.basis == IN_VOLUME else "g"
    if measure == own_measure:
        return mg
    if product.density_g_per_ml is None:
        raise ValueError(f"density_g_per_ml of {product.name} is missing, outside 0.2 to 4 g/mL")
    factor = product.density_g_per_ml if measure == "mL" else 1 / product.density_g_per_ml
    return {n: amount * factor for n, amount in mg.items()}


def nutrients_of_dose(product: Product, dose: DosePerLitre) -> dict[str, float]:
    """mg/L of each nutrient that a dose brings; errors as for nutrients_mg_per."""
    return {n: mg * dose.amount for n, mg in nutrients_mg_per(product, dose.measure).items()}


def in_own_measure(product: Product, amount: float, measure: str) -> float | None:
    """An amount in mL or g in what the stock of the product is counted in; None where that needs a missing density."""
    own = "mL" if product.form == LIQUID else "g"
    if measure == own:
        return amount
    if product.density_g_per_ml is None:
        return None
    return amount * product.density_g_per_ml if own == "g" else amount / product.density_g_per_ml


@dataclass(frozen=True)
class Mixture:
    """What a feed holds, mg/L by nutrient (forms of nitrogen apart), and the products whose content is unknown."""

    nutrients_mg_per_l: Mapping[str, float]
    unknown_products: tuple[str, ...] = ()


def mix(
    doses: Iterable[tuple[Product, DosePerLitre]],
    water_mg_per_l: Mapping[str, float] | None = None,
    strength: float = 1.0,
) -> Mixture:
    """The sum of all doses and of the water, in mg per L of finished feed; the order does not matter.

    strength: 0 to 20 times the doses; the water is never scaled. ValueError outside.
    """
    if not 0 <= strength <= 20:
        raise ValueError(f"strength {strength:g} is outside 0 to 20")
    pairs = list(doses)
    parts = [nutrients_of_dose(p, DosePerLitre(d.amount * strength, d.measure)) for p, d in pairs]
    unknown = tuple(dict.fromkeys(p.name for p, d in pairs if not p.is_known and d.amount > 0))
    return Mixture(add_up([water_mg_per_l or {}, *parts]), unknown)


def is_acid(product: Product) -> bool:
    """Whether the label shows anions (N, P, S, Cl) with next to no cation: an acid, by chemistry and not by name.

    Where N is stated without its form nothing can be told, and it is taken for none. Molybdic acid moves no pH at the
    traces it is dosed in.
    """
    cations, anions = _charges(product)
    anions -= 2 * nutrients_from_label(product.analysis_pct).get("Mo", 0.0) * 10 / 95.95
    return anions > 1 and cations < 0.1 * anions and not _hides_nitrogen(product)


def is_base(product: Product) -> bool:
    """Whether the label shows mainly K or Na with next to no anion: a hydroxide, carbonate or silicate.

    A potassium salt whose label leaves out its sulfur or chlorine looks the same, and is treated with the same care.
    """
    cations, anions = _charges(product)
    alkali = {n: q for n, q in meq_per_l(nutrients_from_label(product.analysis_pct)).items() if n in ("K", "Na")}
    mainly_alkali = sum(alkali.values()) * 10 > 0.5 * cations > 0.5
    return mainly_alkali and anions < 0.1 * cations and not _hides_nitrogen(product)


def _hides_nitrogen(product: Product) -> bool:
    return UNSTATED_N in nutrients_from_label(product.analysis_pct)


def _charges(product: Product) -> tuple[float, float]:
    """Cations and anions of 1 g or 1 mL in meq; iron counts as a cation, since its sulfate is no acid."""
    nutrients = {n: per_cent * 10 for n, per_cent in nutrients_from_label(product.analysis_pct).items()}
    signed = meq_per_l(nutrients)
    iron = nutrients.get("Fe", 0.0) / 55.845 * 2
    return sum(q for q in signed.values() if q > 0) + iron, -sum(q for q in signed.values() if q < 0)
