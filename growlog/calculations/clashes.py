"""The order in which a tank is mixed, what must not meet, and the cautions that belong to it.

Sources: University of California Agriculture and Natural Resources, Maintenance of microirrigation systems: chemical
precipitation (n.d.); NIST Center for Neutron Research, How to work with acids (n.d.). The screen on Ca times SO4
is a judgement from eight saturation runs of PHREEQC (US Geological Survey), not a published limit. Calcium phosphate is
judged by the least soluble of the calcium hydrogenphosphates; apatite is oversaturated in every feed and forms slowly.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from growlog.calculations.nutrients import mmol_per_l, nutrients_from_label
from growlog.calculations.products import Product, is_acid, is_base
from growlog.calculations.saturation import LOG_KSP_BRUSHITE, LOG_KSP_MONETITE, brushite_index, ionic_strength
from growlog.words import say

GYPSUM_CLEAR, GYPSUM_SURE = 250.0, 1000.0  # (mmol/L)², calcium times sulfate in one vessel
STOCK_STRENGTH = 0.15  # mol/L of ions; no feed is so strong
STOCK_PH = 5.0  # of a stock whose pH is not known; common practice, no source


@dataclass(frozen=True)
class MixingStep:
    """A step at the tank: the products that go in together (none for water) and what to do, in a sentence."""

    products: tuple[str, ...]
    sentence: str


def mixing_order(products: Sequence[Product]) -> tuple[MixingStep, ...]:
    """Water, silicate, calcium, the rest, the last water, pH; products without analysis go with the rest."""
    groups: dict[str, list[str]] = {"silicate": [], "calcium": [], "rest": [], "ph": []}
    for product in products:
        groups[mixing_group(product)].append(product.name)
    steps = [MixingStep((), say("Fill the tank to about nine tenths with water."))]
    for group, sentence in (
        ("silicate", say("Silicate first, thinned well in most of the water; stir until it is clear.")),
        ("calcium", say("Then what brings calcium; stir it in fully.")),
        ("rest", say("Then sulfates, phosphates and all else, one after the other, stirring.")),
    ):
        if groups[group]:
            steps.append(MixingStep(tuple(groups[group]), sentence))
    steps.append(MixingStep((), say("Fill up with the rest of the water and stir.")))
    steps.append(MixingStep(tuple(groups["ph"]), say("pH last, in small steps; stir and measure after each.")))
    return tuple(steps)


def concentrate_clashes(products: Sequence[Product]) -> tuple[str, ...]:
    """Sentences on concentrates that must not meet undiluted: calcium with sulfate, phosphate or silicate, and
    silicate with acids."""
    contents = {p.name: nutrients_from_label(p.analysis_pct) for p in products}
    with_calcium = [n for n, c in contents.items() if c.get("Ca", 0) > 1]
    found = []
    for element, what in (
        ("S", say("gypsum falls out")),
        ("P", say("calcium phosphate falls out")),
        ("Si", say("it clouds or gels")),
    ):
        others = [n for n, c in contents.items() if c.get(element, 0) > 0.5 and n not in with_calcium]
        if with_calcium and others:
            found.append(_never_join(with_calcium, others, what))
    silicates = [n for n, c in contents.items() if c.get("Si", 0) > 0.5]
    acids = [p.name for p in products if is_acid(p)]
    if silicates and acids:
        found.append(_never_join(silicates, acids, say("it gels and grows hot")))
    return tuple(found)


def precipitation_warnings(nutrients_mg_per_l: Mapping[str, float], ph: float | None = None) -> tuple[str, ...]:
    """Sentences on what may fall out of a tank or a stock of this content (mg/L) at this pH (None: not known)."""
    mmol = mmol_per_l(nutrients_mg_per_l)
    product = mmol.get("Ca", 0.0) * mmol.get("S", 0.0)
    found = []
    if product > GYPSUM_SURE:
        found.append(say("Calcium and sulfate are too much for one vessel: gypsum falls out. Keep two stocks."))
    elif product > GYPSUM_CLEAR:
        found.append(say("Calcium and sulfate may fall out as gypsum in one vessel. Try a small jar overnight first."))
    is_stock = ionic_strength(nutrients_mg_per_l) > STOCK_STRENGTH
    index = brushite_index(nutrients_mg_per_l, ph if ph is not None else STOCK_PH)
    if index is None or index < LOG_KSP_MONETITE - LOG_KSP_BRUSHITE:
        return tuple(found)
    if is_stock:
        found.append(say("Calcium and phosphate are too much for one vessel: calcium phosphate falls out."))
    elif ph is not None:
        found.append(say("Above pH 6.1 to 6.5 calcium phosphate may cloud this feed; lower the pH."))
    return tuple(found)


def cautions(products: Sequence[Product]) -> tuple[str, ...]:
    """The usual sentences of care for the products at hand; the label always rules."""
    found = []
    if any(is_acid(p) for p in products):
        found.append(say("Acid into water, never water into acid. Never bring acids together with bleach."))
    elif products:  # the pH is set at the end of every mix, with bottles that the mix may not name
        found.append(say("For the pH: acid into water, never water into acid, and never together with bleach."))
    if any(is_base(p) or "si" in p.analysis_pct or "sio2" in p.analysis_pct for p in products):
        found.append(say("Silicates and pH-raisers are caustic."))
    if products:
        found.append(say("Wear gloves and eye cover; the label of each product rules."))
    return tuple(found)


def coir_note() -> str:
    """What fresh coir does to a feed. Source: Gbollie, S., Mwonga, S. and Kibe, A. (2021), Effects of calcium nitrate
    levels and soaking durations on cocopeat nutrient content."""
    return say("Fresh coir holds back calcium and magnesium and gives off potassium and sodium in its first weeks.")


def mixing_group(product: Product) -> str:
    """When it goes in: "silicate", "calcium", "rest" or "ph"."""
    content = nutrients_from_label(product.analysis_pct)
    if content.get("Si", 0.0) > 0.5:
        return "silicate"
    if is_acid(product) or (is_base(product) and "Ca" not in content):
        return "ph"
    return "calcium" if content.get("Ca", 0.0) > 1 else "rest"


def _never_join(ones: Sequence[str], others: Sequence[str], what: str) -> str:
    return say(
        "Never join undiluted: {ones} and {others}; {what}.", ones=", ".join(ones), others=", ".join(others), what=what
    )
