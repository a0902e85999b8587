"""What is wrong with a mix as it was typed or read, said beside its field before anything is computed."""

from collections.abc import Sequence

from growlog.calculations.dose_units import DOSE_UNITS, dose_per_litre, measure_of, mixes_gallons
from growlog.calculations.nutrients import nutrients_from_label
from growlog.calculations.products import BY_WEIGHT, IN_VOLUME, LIQUID, SOLID, Product, in_own_measure
from growlog.calculations.water import Water, check_water
from growlog.records.problems import Problem
from growlog.sharing.mix_file import MixDose, MixFile
from growlog.words import say

MOST_PER_L = 1000.0  # mL or g of one product in a litre of feed: beyond it nothing else would be in there


def product_problems(product: Product) -> list[Problem]:
    """Sentences on a product as its label is typed; fields are "form", "basis", "density_g_per_ml" or a label word."""
    found = _form_problems(product)
    density = product.density_g_per_ml
    if density is not None and not 0.2 <= density <= 4:
        sentence = say("The density of {product} is outside 0.2 to 4 g/mL.", product=product.name)
        found.append(Problem("density_g_per_ml", sentence))
    if product.label_max_per_l is not None and not product.label_max_per_l > 0:
        sentence = say("The label's highest dose of {product} is not above 0.", product=product.name)
        found.append(Problem("label_max_per_l", sentence))
    return found + _analysis_problems(product)


def _form_problems(product: Product) -> list[Problem]:
    name = product.name
    if product.form not in (LIQUID, SOLID):
        return [Problem("form", say('{product} is neither "liquid" nor "solid".', product=name))]
    if product.basis not in (BY_WEIGHT, IN_VOLUME):
        return [Problem("basis", say('Say whether the per cent of {product} are "w/w" or "w/v".', product=name))]
    if product.form == SOLID and product.basis == IN_VOLUME:
        return [Problem("basis", say('{product} is a solid; its per cent are by weight, "w/w".', product=name))]
    if product.form == LIQUID and product.basis == BY_WEIGHT and product.density_g_per_ml is None:
        sentence = say("Per cent by weight of a liquid need its density in g/mL: {product} has none.", product=name)
        return [Problem("density_g_per_ml", sentence)] if product.is_known else []
    return []


def _analysis_problems(product: Product) -> list[Problem]:
    found = [
        Problem(word, say("{word} of {product} is outside 0 to 100 %.", word=word, product=product.name))
        for word, per_cent in product.analysis_pct.items()
        if not 0 <= per_cent <= 100
    ]
    if found:
        return found
    try:
        total = sum(nutrients_from_label(product.analysis_pct).values())
    except ValueError:
        sentence = say("{product} states a nutrient twice, or forms of N beyond its N.", product=product.name)
        return [Problem("analysis", sentence)]
    if total > 100:
        return [Problem("analysis", say("The analysis of {product} adds up to over 100 %.", product=product.name))]
    return []


def water_problems(water: Water | None) -> list[Problem]:
    """One sentence on the first figure of a water that cannot be true."""
    try:
        if water is not None:
            check_water(water)
    except ValueError as error:
        return [Problem("water", say("A figure of the water cannot be right: {reason}.", reason=error))]
    return []


def dose_problems(
    dose: MixDose, products: Sequence[Product], tank_l: float | None, strength: float = 1.0
) -> list[Problem]:
    """Sentences on one dose; fields "product", "amount", "unit"."""
    product = next((p for p in products if p.name == dose.product), None)
    if product is None:
        return [Problem("product", say("There is no product {name} among those of the mix.", name=dose.product))]
    if dose.unit not in DOSE_UNITS:
        return [Problem("unit", _unknown_unit(dose.unit))]
    if dose.unit.endswith("/tank") and tank_l is None:
        return [Problem("tank_l", say("A dose per tank needs the volume of the tank in L."))]
    amount = _amount_problem(dose, tank_l, strength)
    if amount:
        return [Problem("amount", amount)]
    if product.is_known and product.density_g_per_ml is None and not _form_problems(product):
        own = "mL" if product.basis == IN_VOLUME else "g"
        if measure_of(dose.unit) != own:
            sentence = say("{product} dosed in {unit} needs its density in g/mL.", product=dose.product, unit=dose.unit)
            return [Problem("density_g_per_ml", sentence)]
    return []


def _amount_problem(dose: MixDose, tank_l: float | None, strength: float) -> str:
    if not dose.amount >= 0:
        return say("The dose of {product} is below 0.", product=dose.product)
    if (tank_l is None or tank_l > 0) and _per_l(dose, tank_l) * strength > MOST_PER_L:
        return say("The dose of {product} is more than a litre holds.", product=dose.product)
    return ""


def _per_l(dose: MixDose, tank_l: float | None) -> float:
    return dose.amount if dose.amount == float("inf") else dose_per_litre(dose.amount, dose.unit, tank_l).amount


def _unknown_unit(unit: str) -> str:
    if unit.endswith("gal"):
        return say("Say which gallon: {unit}_us or {unit}_imp.", unit=unit)
    return say("{unit} is no unit of doses; write mL/L, g/L or mL/gal_us.", unit=unit)


def mix_problems(mix: MixFile) -> list[Problem]:
    """All that is wrong with a mix; questions (asks) are worth a warning only."""
    found = []
    if mix.tank_l is not None and not mix.tank_l > 0:
        found.append(Problem("tank_l", say("The volume of the tank is not above 0 L.")))
    if not 0 < mix.strength <= 20:
        found.append(Problem("strength", say("The strength is outside 0 to 20 times the doses.")))
    if mix.ph is not None and not 0 <= mix.ph <= 14:
        found.append(Problem("ph", say("The pH is outside 0 to 14.")))
    for name in ("smallest_ml", "smallest_g"):
        smallest = getattr(mix, name)
        if smallest is not None and not smallest > 0:
            found.append(Problem(name, say("What can be measured out is more than 0.")))
    if mix.target_mg_per_l and mix.tank_l is None and (mix.smallest_ml or mix.smallest_g):
        found.append(Problem("tank_l", say("Rounding to syringe or scale needs the volume of the tank in L.")))
    names = [p.name for p in mix.products]
    for name in sorted({n for n in names if names.count(n) > 1}):
        found.append(Problem("name", say("There are two products called {name}.", name=name)))
    for product in mix.products:
        found += product_problems(product)
    for dose in mix.doses:
        found += dose_problems(dose, mix.products, mix.tank_l, mix.strength)
    return found + _target_problems(mix) + water_problems(mix.water)


def _target_problems(mix: MixFile) -> list[Problem]:
    if mix.target_mg_per_l and mix.doses:
        return [Problem("target", say("State doses or a target, not both."))]
    if any(not mg >= 0 for mg in mix.target_mg_per_l.values()):
        return [Problem("target", say("A target is below 0 mg/L."))]
    if not mix.target_mg_per_l and not mix.doses:
        return [Problem("dose", say("The mix has neither doses nor a target."))]
    return []


def dose_warnings(mix: MixFile) -> list[str]:
    """Sentences worth knowing about doses that are allowed: two kinds of gallon, and more than a label's maximum."""
    found = []
    if mixes_gallons(dose.unit for dose in mix.doses):
        found.append(say("US and imperial gallons or ounces stand in one mix. Is that right?"))
    products = {p.name: p for p in mix.products}
    for dose in mix.doses:
        product = products[dose.product]
        per_l = dose_per_litre(dose.amount, dose.unit, mix.tank_l)
        own = in_own_measure(product, per_l.amount * mix.strength, per_l.measure)
        highest = product.label_max_per_l
        if highest is not None and own is not None and own > highest * (1 + 1e-9):
            found.append(say("{product} is dosed above the maximum on its label.", product=dose.product))
    found += [say("The file says {word}, which means nothing here and was left out.", word=w) for w in mix.ignored]
    return found
