"""How much of a product moved the pH of a tank, learned from the grower's own entries; never a blind dose."""

from collections import defaultdict
from dataclasses import dataclass
from typing import Any

from growlog.calculations import ph_steps
from growlog.calculations.explained_figure import Figure
from growlog.records.entry import Entry, Owner, OwnerKind, TankCare, TankWork
from growlog.services.open_logbook import OpenLogbook
from growlog.words import say, say_count, show_number


@dataclass(frozen=True)
class PhLearnedView:
    """What a product did to the pH of a tank so far. steps None: not yet, fewer than three corrections."""

    product: str
    down: bool
    measure: str
    steps: ph_steps.PhSteps | None
    count: int
    words: str
    figure: Figure


def ph_learned(log: OpenLogbook, owner: Owner) -> list[PhLearnedView]:
    """What each product did to the pH so far, by the grower's own entries of this owner; never a blind dose.

    Counts tank care that names one product, pH before and after, and the litres in the tank (or the tank's volume).
    """
    with log.unit() as unit:
        whose: dict[str, Any] = {f"{owner.kind.value}_id": owner.id}
        entries = unit.entries.all(kind="tank-care", **whose)
        usual_l = unit.tanks.get(owner.id).tank_l if owner.kind is OwnerKind.TANK else None
    groups: dict[tuple[str, str, bool], list[ph_steps.PhCorrection]] = defaultdict(list)
    for entry in entries:
        found = _correction(entry, usual_l)
        if found is not None:
            product, measure, correction = found
            groups[product, measure, correction.moved < 0].append(correction)
    return [_learned(*key, corrections) for key, corrections in sorted(groups.items())]


def _correction(entry: Entry, usual_l: float | None) -> tuple[str, str, ph_steps.PhCorrection] | None:
    detail = entry.detail
    if not isinstance(detail, TankCare) or detail.work is not TankWork.PH or len(detail.doses) != 1:
        return None
    volume_l = detail.volume_before_l or usual_l
    if not volume_l or detail.ph_before is None or detail.ph_after is None or detail.doses[0].dose_amount <= 0:
        return None
    dose = detail.doses[0]
    return (
        dose.product,
        dose.unit,
        ph_steps.PhCorrection(dose.dose_amount, volume_l, detail.ph_before, detail.ph_after),
    )


def _learned(product: str, measure: str, down: bool, corrections: list[ph_steps.PhCorrection]) -> PhLearnedView:
    steps = ph_steps.learn_ph_steps(corrections, down=down)
    figure = ph_steps.explain_ph_steps(product, measure, corrections, down=down)
    count = len(figure.inputs)
    return PhLearnedView(product, down, measure, steps, count, _ph_words(product, measure, steps, count, down), figure)


def _ph_words(product: str, measure: str, steps: ph_steps.PhSteps | None, count: int, down: bool) -> str:
    if steps is None:
        missing = ph_steps.FEWEST_CORRECTIONS - count
        return say_count(
            "{product}: not yet, {n} correction is missing",
            "{product}: not yet, {n} corrections are missing",
            missing,
            product=product,
        )
    ten = [_figure(10 * v) for v in (steps.per_l, steps.low, steps.high)]
    return say_count(
        "{product}: {middle} {measure} in 10 L for a step of 0.1 pH {way} ({low} to {high}, {n} time)",
        "{product}: {middle} {measure} in 10 L for a step of 0.1 pH {way} ({low} to {high}, {n} times)",
        steps.count,
        product=product,
        middle=ten[0],
        measure=measure,
        way=say("down") if down else say("up"),
        low=ten[1],
        high=ten[2],
    )


def _figure(amount: float) -> str:
    """Two figures or more: 150, 12, 1.3, 0.13, 0.013."""
    return show_number(amount, 0 if amount >= 10 else 1 if amount >= 1 else 2 if amount >= 0.1 else 3)
