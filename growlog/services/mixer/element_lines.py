"""The elements in the tank beside their target, and their ratios."""

from collections.abc import Mapping

from growlog.calculations.dose_units import DosePerLitre, dose_per_litre
from growlog.calculations.mix_figures import element_figure
from growlog.calculations.nutrients import AMMONIUM_N, ELEMENTS, elements, meq_per_l, mmol_per_l
from growlog.calculations.products import nutrients_of_dose
from growlog.calculations.ratios import ammonium_share_percent, parts_of
from growlog.services.mixer.shown import ElementLine, Ratios, Standing, TargetView
from growlog.services.mixer.state import Range
from growlog.services.mixing import MixResult
from growlog.sharing.mix_file import MixFile
from growlog.words import say, show_number

_ORDER = ("N", AMMONIUM_N, *ELEMENTS[1:])
_WATER = ""  # no product has this name


def element_lines(content: MixFile, result: MixResult, target: TargetView | None) -> tuple[ElementLine, ...]:
    """A line for each element that is in the tank or in the target, in the trade's order."""
    ranges = target.ranges if target else {}
    parts = _by_part(content)
    amounts = _with_ammonium(result.nutrients_mg_per_l)
    keys = [key for key in _ORDER if amounts.get(key, 0.0) > 0 or key in ranges]
    return tuple(_line(key, amounts.get(key, 0.0), ranges.get(key), parts, result) for key in keys)


def ratios_of(result: MixResult) -> Ratios:
    """N : P : K, K : Ca : Mg by weight, and the share of ammonium."""
    totals = result.elements_mg_per_l
    n_p_k = parts_of(totals, ("N", "P", "K"), "P")
    k_ca_mg = parts_of(totals, ("K", "Ca", "Mg"), "Mg")
    ammonium = ammonium_share_percent(result.nutrients_mg_per_l)
    return Ratios(
        n_p_k,
        k_ca_mg,
        ammonium,
        "" if n_p_k is None else say("Elemental N : P : K {parts}", parts=_parts(n_p_k)),
        "" if k_ca_mg is None else say("K : Ca : Mg {parts}", parts=_parts(k_ca_mg)),
        "" if ammonium is None else say("ammonium {share} % of nitrate and ammonium", share=show_number(ammonium, 0)),
    )


def range_words(low: float | None, high: float | None) -> str:
    """A range as it is read: "1.8 to 2.4", "up to 50", "from 20"."""
    if low is None:
        return say("up to {high}", high=_figure(high or 0.0))
    if high is None:
        return say("from {low}", low=_figure(low))
    return say("{low} to {high}", low=_figure(low), high=_figure(high))


def _line(
    key: str, mg: float, wanted: Range | None, parts: Mapping[str, Mapping[str, float]], result: MixResult
) -> ElementLine:
    standing, off_by = _standing(mg, wanted)
    sources = {name or say("water"): found[key] for name, found in parts.items() if found.get(key)}
    charges = meq_per_l({key: mg}) if key != "N" else {"N": sum(_nitrogen_charges(result))}
    return ElementLine(
        key=key,
        label=say("of it NH₄–N") if key == AMMONIUM_N else key,
        mg_per_l=mg,
        mmol_per_l=mmol_per_l({key: mg})[key],
        meq_per_l=charges.get(key),
        from_water_mg_per_l=parts[_WATER].get(key, 0.0),
        range=wanted,
        standing=standing,
        off_by=off_by,
        words=_words(standing, off_by),
        figure=element_figure(key, mg, sources),
    )


def _standing(mg: float, wanted: Range | None) -> tuple[Standing, float]:
    if wanted is None:
        return Standing.NO_TARGET, 0.0
    slack = 1e-9 * max(mg, 1.0)
    if wanted.low is not None and mg < wanted.low - slack:
        return Standing.BELOW, wanted.low - mg
    if wanted.high is not None and mg > wanted.high + slack:
        return Standing.ABOVE, mg - wanted.high
    return Standing.WITHIN, 0.0


def _words(standing: Standing, off_by: float) -> str:
    if standing is Standing.NO_TARGET:
        return ""
    if standing is Standing.WITHIN:
        return say("within")
    amount = _figure(off_by)
    return say("{amount} below", amount=amount) if standing is Standing.BELOW else say("{amount} above", amount=amount)


def _nitrogen_charges(result: MixResult) -> list[float]:
    return [q for form, q in result.ions_meq_per_l.items() if form in ("NO3-N", AMMONIUM_N)]


def _by_part(content: MixFile) -> dict[str, dict[str, float]]:
    """mg/L by what brings them: each product, and the water."""
    products = {p.name: p for p in content.products}
    found: dict[str, dict[str, float]] = {
        _WATER: _with_ammonium(content.water.nutrients_mg_per_l if content.water else {})
    }
    for dose in content.doses:
        product = products[dose.product]
        if not product.is_known:
            continue
        per_l = dose_per_litre(dose.amount, dose.unit, content.tank_l)
        brought = nutrients_of_dose(product, DosePerLitre(per_l.amount * content.strength, per_l.measure))
        before = found.get(product.name, {})
        found[product.name] = {k: before.get(k, 0.0) + mg for k, mg in _with_ammonium(brought).items()}
    return found


def _with_ammonium(nutrients_mg_per_l: Mapping[str, float]) -> dict[str, float]:
    """By element, with the ammonium beside them."""
    ammonium = nutrients_mg_per_l.get(AMMONIUM_N, 0.0)
    return {**elements(nutrients_mg_per_l), **({AMMONIUM_N: ammonium} if ammonium > 0 else {})}


def _parts(parts: tuple[float, ...]) -> str:
    return " : ".join(show_number(p, 0 if abs(p - round(p)) < 0.05 else 1) for p in parts)


def _figure(value: float) -> str:
    """As many decimals as matter: 10, 2.1, 0.05."""
    return show_number(value, 0 if value >= 10 else 1 if value >= 1 else 2 if value >= 0.1 else 3)
