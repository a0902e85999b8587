"""The nutrient mixer: reads a mix, works out what it holds, what it reads and what to mind, or finds its doses."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from pathlib import Path

from growlog.calculations.clashes import MixingStep, cautions, concentrate_clashes, mixing_order, precipitation_warnings
from growlog.calculations.conductivity import (
    MOST_STRENGTH,
    ChargeBalance,
    EcEstimate,
    charge_balance,
    estimate_ec,
    strength_for_ec,
)
from growlog.calculations.dose_units import DosePerLitre, dose_per_litre
from growlog.calculations.nutrients import elements, meq_per_l, mmol_per_l
from growlog.calculations.products import Mixture, Product, is_acid, is_base, mix, nutrients_of_dose
from growlog.calculations.saturation import ionic_strength
from growlog.calculations.unmet import Unmet
from growlog.calculations.water import RAIN_OR_REVERSE_OSMOSIS, Water, alkalinity_meq_per_l
from growlog.records.problems import Problem, RecordRefused, refuse
from growlog.services.mix_checks import dose_warnings, mix_problems
from growlog.services.mix_order import Portion, order_steps
from growlog.sharing.mix_file import MixDose, MixFile, MixFileProblem, mix_text, parse_mix
from growlog.sharing.tables import table_rows
from growlog.words import say

_SALT_COLUMNS = {"NO3N_pct": "n_nitrate", "NH4N_pct": "n_ammonium", "UREAN_pct": "n_urea"}


@dataclass(frozen=True)
class ReadySalt:
    """A salt, acid or base known by its chemistry. from_memory: its label grade and solubility were not read."""

    product: Product
    formula: str
    solubility_g_per_100ml: str
    from_memory: bool


@dataclass(frozen=True)
class CropTarget:
    """A published range for a crop and stage. low or high None: open. certainty: "high", "medium" or "low"."""

    crop: str
    stage: str
    parameter: str
    low: float | None
    high: float | None
    unit: str
    source: str
    status: str
    certainty: str


@dataclass(frozen=True)
class SolverWishes:
    """What the search for doses must keep to.

    locked_per_l: fixed doses in mL/L or g/L by product. excluded: products not to be used. weights: how much an element
    matters, 1 if not given. smallest_ml, smallest_g: what the syringe and the scale can measure out for the tank.
    highest_per_l: limits in mL/L or g/L by product, beside those of the labels.
    """

    locked_per_l: Mapping[str, float] = field(default_factory=dict)
    excluded: frozenset[str] = frozenset()
    weights: Mapping[str, float] = field(default_factory=dict)
    smallest_ml: float | None = None
    smallest_g: float | None = None
    highest_per_l: Mapping[str, float] = field(default_factory=dict)


_NO_WISHES = SolverWishes()


@dataclass(frozen=True)
class DoseLine:
    """A dose as stated or found, the same per L at the mix's strength, and for the whole tank (None without one)."""

    product: str
    amount: float
    unit: str
    per_l: DosePerLitre
    tank_amount: float | None


@dataclass(frozen=True)
class MixResult:
    """All that the mixer shows. nutrients_mg_per_l keeps the forms of nitrogen apart; elements_mg_per_l joins them.

    order: what goes in when; steps: the same in sentences with the amounts for the tank. unknown_products: dosed
    products without analysis, whose content is missing from every sum.
    """

    nutrients_mg_per_l: Mapping[str, float]
    elements_mg_per_l: Mapping[str, float]
    elements_mmol_per_l: Mapping[str, float]
    ions_meq_per_l: Mapping[str, float]
    charges: ChargeBalance
    ec: EcEstimate
    doses: tuple[DoseLine, ...]
    order: tuple[MixingStep, ...]
    steps: tuple[str, ...]
    warnings: tuple[str, ...]
    cautions: tuple[str, ...]
    unmet: tuple[Unmet, ...]
    unknown_products: tuple[str, ...]


@cache
def ready_salts() -> tuple[ReadySalt, ...]:
    """The common salts, acids and bases, by chemistry only. Acids are there as pure substance, by weight."""
    return tuple(_salt(row) for row in table_rows("salts"))


@cache
def crop_targets() -> tuple[CropTarget, ...]:
    """Published targets by crop and stage, each with its source and certainty."""
    return tuple(
        CropTarget(
            row["crop"], row["stage"], row["parameter"], _figure(row["low"]), _figure(row["high"]), row["unit"],
            row["source"], row["status"], row["confidence"],
        )
        for row in table_rows("crop_targets")
    )  # fmt: skip


def read_mix(path: Path) -> MixFile:
    """The mix in a TOML file, figures unjudged; RecordRefused naming the file and field, OSError if it is not there."""
    try:
        return parse_mix(path.read_text(encoding="utf-8-sig"))
    except UnicodeDecodeError as error:
        raise _refusal(path, "", say("It is not written in UTF-8.")) from error
    except MixFileProblem as error:
        raise _refusal(path, error.field, error.sentence) from error


def write_mix(path: Path, content: MixFile) -> None:
    """Saves a mix in the form that read_mix takes."""
    path.write_text(mix_text(content), encoding="utf-8")


def work_out(content: MixFile) -> MixResult:
    """The whole result of a mix; with a target instead of doses it finds the doses first, rounded to what syringe and
    scale can measure where the mix says what that is.

    RecordRefused with all that is wrong with it, each beside its field.
    """
    refuse(mix_problems(content))
    if content.target_mg_per_l:
        wishes = SolverWishes(smallest_ml=content.smallest_ml, smallest_g=content.smallest_g)
        doses, unmet = doses_for_target(content, wishes)
        solved = replace(content, doses=doses, target_mg_per_l={}, strength=1.0)
        result = replace(result_of(solved), unmet=unmet)
        if content.strength == 1:
            return result
        left_out = say("Doses for a target are at full strength; the strength that the file states is left out.")
        return replace(result, warnings=(left_out, *result.warnings))
    return result_of(content)


def doses_for_target(
    content: MixFile, wishes: SolverWishes = _NO_WISHES
) -> tuple[tuple[MixDose, ...], tuple[Unmet, ...]]:
    """Doses in mL/L or g/L nearest to a mix's target, at most the label's maximum, and what they miss and why.

    Products without analysis are left at 0. ValueError for negative wishes.
    """
    from growlog.calculations.dose_solver import Choice, solve_rounded  # loads NumPy, which no other command needs

    choices = [
        Choice(
            product=product,
            measure=product.usual_measure,
            highest_per_l=_highest_per_l(product, wishes),
            locked_per_l=0.0 if product.name in wishes.excluded else wishes.locked_per_l.get(product.name),
            step_per_l=_step_per_l(content, wishes, product),
        )
        for product in content.products
    ]
    water = (content.water or RAIN_OR_REVERSE_OSMOSIS).nutrients_mg_per_l
    solution = solve_rounded(choices, content.target_mg_per_l, water, wishes.weights)
    pairs = zip(choices, solution.doses, strict=True)
    return tuple(MixDose(c.product.name, d.amount, f"{d.measure}/L") for c, d in pairs), solution.unmet


def _highest_per_l(product: Product, wishes: SolverWishes) -> float | None:
    if product.name in wishes.excluded:
        return 0.0
    limits = (product.label_max_per_l, wishes.highest_per_l.get(product.name))
    return min((v for v in limits if v is not None), default=None)


def _step_per_l(content: MixFile, wishes: SolverWishes, product: Product) -> float | None:
    smallest = wishes.smallest_ml if product.usual_measure == "mL" else wishes.smallest_g
    return smallest / content.tank_l if smallest is not None and content.tank_l else None


def strength_for_target_ec(content: MixFile, target_ms_per_cm: float) -> float:
    """The strength at which a mix is estimated to read a target EC; ValueError where no strength does."""

    def ec_at(strength: float) -> float:
        return _ec(replace(content, strength=strength))[1].estimate

    return strength_for_ec(ec_at, target_ms_per_cm)


def result_of(content: MixFile) -> MixResult:
    """The figures of a mix of doses that has no problems (none of the doses is allowed); ValueError where it has."""
    mixture = _mixture(content)
    charges, ec = _ec(content)
    totals = elements(mixture.nutrients_mg_per_l)
    used = _used(content)
    lines = tuple(_line(content, dose) for dose in content.doses)
    return MixResult(
        nutrients_mg_per_l=mixture.nutrients_mg_per_l,
        elements_mg_per_l=totals,
        elements_mmol_per_l=mmol_per_l(totals),
        ions_meq_per_l=meq_per_l(mixture.nutrients_mg_per_l),
        charges=charges,
        ec=ec,
        doses=lines,
        order=mixing_order(used),
        steps=order_steps(portions_of(used, lines), content.tank_l),
        warnings=tuple(_warnings(content, mixture, used)),
        cautions=cautions(used),
        unmet=(),
        unknown_products=mixture.unknown_products,
    )


def portions_of(products: list[Product], lines: tuple[DoseLine, ...]) -> list[Portion]:
    """What goes into the tank, a product once for each way it is measured."""
    found: list[Portion] = []
    for product in products:
        for measure in ("mL", "g"):
            amounts = [
                line.tank_amount for line in lines if line.product == product.name and line.per_l.measure == measure
            ]
            if amounts:
                known = [a for a in amounts if a is not None]
                found.append(Portion(product, sum(known) if known else None, measure))
    return [p for p in found if p.amount != 0]


def _pairs(content: MixFile) -> list[tuple[Product, DosePerLitre]]:
    products = {p.name: p for p in content.products}
    return [(products[d.product], dose_per_litre(d.amount, d.unit, content.tank_l)) for d in content.doses]


def _used(content: MixFile) -> list[Product]:
    return list({p.name: p for p, dose in _pairs(content) if dose.amount > 0}.values())


def _mixture(content: MixFile) -> Mixture:
    water = content.water or RAIN_OR_REVERSE_OSMOSIS
    known = [(p, d) for p, d in _pairs(content) if p.is_known]
    unknown = tuple(p.name for p in _used(content) if not p.is_known)
    return Mixture(mix(known, water.nutrients_mg_per_l, content.strength).nutrients_mg_per_l, unknown)


def _ec(content: MixFile) -> tuple[ChargeBalance, EcEstimate]:
    """Bicarbonate is the water's alkalinity, less what acids take and more what bases bring."""
    water = content.water or RAIN_OR_REVERSE_OSMOSIS
    alkalinity = alkalinity_meq_per_l(water)
    nutrients = _mixture(content).nutrients_mg_per_l
    left = alkalinity + _dosed_charge(content)
    hydrogen = min(_acid_meq(content), max(0.0, -left))
    unexplained = 0.0
    if water.ec_ms_per_cm is not None:
        explained = estimate_ec(water.nutrients_mg_per_l, alkalinity).estimate
        unexplained = max(0.0, water.ec_ms_per_cm - explained)
    charges = charge_balance(nutrients, max(0.0, left), hydrogen)
    return charges, estimate_ec(nutrients, max(0.0, left), hydrogen, unexplained)


def _dosed_charge(content: MixFile) -> float:
    known = [(p, d) for p, d in _pairs(content) if p.is_known]
    return sum(meq_per_l(mix(known, None, content.strength).nutrients_mg_per_l).values())


def _acid_meq(content: MixFile) -> float:
    acids = [(p, d) for p, d in _pairs(content) if is_acid(p)]
    return -sum(sum(meq_per_l(nutrients_of_dose(p, d)).values()) for p, d in acids) * content.strength


def _base_meq(content: MixFile) -> float:
    """What hydroxides, carbonates and silicates bring beside the water's alkalinity, meq/L."""
    bases = [(p, d) for p, d in _pairs(content) if is_base(p)]
    return sum(sum(meq_per_l(nutrients_of_dose(p, d)).values()) for p, d in bases) * content.strength


def _line(content: MixFile, dose: MixDose) -> DoseLine:
    stated = dose_per_litre(dose.amount, dose.unit, content.tank_l)
    per_l = DosePerLitre(stated.amount * content.strength, stated.measure)
    tank = None if content.tank_l is None else per_l.amount * content.tank_l
    return DoseLine(dose.product, dose.amount, dose.unit, per_l, tank)


def _warnings(content: MixFile, mixture: Mixture, used: list[Product]) -> list[str]:
    found = [
        say("What {name} brings is not known and is missing in the sums.", name=n) for n in mixture.unknown_products
    ]
    if mixture.nutrients_mg_per_l.get("N"):
        found.append(say("A label states N without its form; the EC takes it as nitrate."))
    found += dose_warnings(content)
    if ionic_strength(mixture.nutrients_mg_per_l) > MOST_STRENGTH:
        found.append(say("This is as strong as a concentrate; its EC is a rough guess only."))
    if _acid_meq(content) - _base_meq(content) > alkalinity_meq_per_l(content.water or Water()) + 0.1:
        found.append(say("There is more acid than the water's alkalinity takes up; the pH may fall below 4."))
    return [*found, *precipitation_warnings(mixture.nutrients_mg_per_l, content.ph), *concentrate_clashes(used)]


def _salt(row: Mapping[str, str]) -> ReadySalt:
    analysis = {}
    for column, text in row.items():
        if column.endswith("_pct") and "equiv" not in column and text:
            analysis[_SALT_COLUMNS.get(column, column.removesuffix("_pct").lower())] = float(text)
    memory = "from memory" in row["status"]
    return ReadySalt(
        Product(row["name"], analysis_pct=analysis), row["formula"], row["solubility_g_per_100mL_20C"], memory
    )


def _figure(text: str) -> float | None:
    return float(text) if text else None


def _refusal(path: Path, field: str, sentence: str) -> RecordRefused:
    return RecordRefused([Problem(field, say("{file}: {sentence}", file=path.name, sentence=sentence))])
