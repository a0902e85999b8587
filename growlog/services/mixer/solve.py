"""Doses for a target with the products at hand, and the strength for an EC."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from growlog.calculations.conductivity import strength_for_ec as strength_by_halving
from growlog.calculations.dose_units import DOSE_UNITS, DosePerLitre, dose_in_unit, measure_of
from growlog.calculations.mix_figures import dose_figure
from growlog.calculations.products import Product
from growlog.records.limits import limit
from growlog.records.problems import Problem, RecordRefused, refuse
from growlog.services.mix_checks import product_problems
from growlog.services.mixer.bench import Bench, bench_of, content_of, on_shelf, product_of
from growlog.services.mixer.checks import all_problems, field_problems
from growlog.services.mixer.lines import DoseRow, dose_rows
from growlog.services.mixer.shown import DoseProposal
from growlog.services.mixer.state import DoseWishes, MixerDose, MixerState, Range
from growlog.services.mixer.targets import target_view
from growlog.services.mixing import SolverWishes, doses_for_target, result_of
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf.conversion import calc_product
from growlog.sharing.mix_file import MixDose, MixFile
from growlog.words import say, show_number

_NO_WISHES = DoseWishes()


def doses_for(log: OpenLogbook, state: MixerState, wishes: DoseWishes = _NO_WISHES) -> DoseProposal:
    """Doses at 100 % strength nearest to the state's target, and what they miss and why.

    RecordRefused without a target or with one that states no element, and for labels that cannot be; fields "target",
    "candidates", and those of the state.
    """
    return doses_at(bench_of(log, state), state, wishes)


def doses_at(bench: Bench, state: MixerState, wishes: DoseWishes = _NO_WISHES) -> DoseProposal:
    """The same at a bench read before."""
    refuse(field_problems(bench, state))
    ranges = _ranges(bench, state)
    aims = {key: r.aim for key, r in ranges.items() if r.aim is not None}
    rows = dose_rows(bench, replace(state, strength_percent=100.0))
    products = _candidates(bench, state, wishes, rows)
    asked = MixFile(
        tank_l=state.tank_l,
        water=content_of(bench, state).water,
        products=tuple(products),
        target_mg_per_l=aims,
    )
    doses, missed = doses_for_target(asked, _solver_wishes(wishes, rows))
    unmet = tuple(m for m in missed if not _is_within(ranges[m.element], m.reached_mg_per_l))
    kept = [row.product.name for row in rows if not row.product.is_known and _may_stay(row, wishes)]
    found = replace(state, doses=_dose_lines(bench, state, doses, rows, kept), strength_percent=100.0)
    figures = tuple(dose_figure(d.product, d.amount, d.unit.partition("/")[0], aims) for d in doses if d.amount > 0)
    return DoseProposal(found, unmet, figures)


def strength_for_ec(log: OpenLogbook, state: MixerState, ec_ms_per_cm: float) -> float:
    """The strength in per cent at which the state is estimated to read an EC; RecordRefused, field "ec_ms_per_cm"."""
    return strength_at(bench_of(log, state), state, ec_ms_per_cm)


def strength_at(bench: Bench, state: MixerState, ec_ms_per_cm: float) -> float:
    """The same at a bench read before."""
    refuse([p for _, p in all_problems(bench, state, dose_rows(bench, state))])
    content = content_of(bench, state)

    def ec_at(strength: float) -> float:
        return result_of(replace(content, strength=strength)).ec.estimate

    highest = limit("strength_percent").highest / 100
    weakest, strongest = ec_at(0.0), ec_at(highest)
    if not weakest <= ec_ms_per_cm <= strongest or strongest == weakest:
        sentence = say(
            "With these doses the EC can be from {low} (the water alone) to {high} mS/cm.",
            low=show_number(weakest, 2),
            high=show_number(strongest, 2),
        )
        raise RecordRefused([Problem("ec_ms_per_cm", sentence)])
    return 100 * strength_by_halving(ec_at, ec_ms_per_cm, highest)


def _is_within(stated: Range, reached_mg_per_l: float) -> bool:
    """Whether an element off the middle of its range is in it all the same; a single figure is to be met itself."""
    low, high = stated.low or 0.0, float("inf") if stated.high is None else stated.high
    return not stated.about_a_point and low <= reached_mg_per_l <= high


def _ranges(bench: Bench, state: MixerState) -> Mapping[str, Range]:
    """The ranges of the target, at least one of which gives doses something to aim at."""
    target = target_view(bench, state, 0.0)
    if target is None:
        raise RecordRefused([Problem("target", say("Choose a target first."))])
    if all(r.aim is None for r in target.ranges.values()):
        raise RecordRefused([Problem("target", say("This target states no elements. Use its EC instead."))])
    return target.ranges


def _candidates(bench: Bench, state: MixerState, wishes: DoseWishes, rows: list[DoseRow]) -> list[Product]:
    if wishes.candidates:
        # The line of the mix goes before the shelf: what was taken off the shelf since is in the mix all the same.
        asked = [_line_of(name, rows) or MixerDose(name, 0.0) for name in wishes.candidates]
        found = [product_of(bench, state, dose)[0] for dose in asked]
    elif rows:
        found = [row.product for row in rows]
    else:
        found = list(state.guests) or [calc_product(i.product) for i in on_shelf(bench)]
    known = list({p.name: p for p in found if p.is_known}.values())
    if not known:
        raise RecordRefused([Problem("candidates", say("There is no product with an analysis to choose from."))])
    refuse([Problem("candidates", p.sentence) for product in known for p in product_problems(product)])
    return known


def _solver_wishes(wishes: DoseWishes, rows: list[DoseRow]) -> SolverWishes:
    locked = {row.product.name: row.own_per_l for row in rows if row.product.name in wishes.locked}
    return SolverWishes(
        locked_per_l={name: amount for name, amount in locked.items() if amount is not None},
        excluded=wishes.excluded,
        weights=wishes.weights,
        smallest_ml=wishes.smallest_ml,
        smallest_g=wishes.smallest_g,
        highest_per_l=wishes.highest_per_l,
    )


def _may_stay(row: DoseRow, wishes: DoseWishes) -> bool:
    """Whether a product of unknown content is not left out; it keeps its dose, since none can be found for it."""
    name = row.product.name
    return name not in wishes.excluded and (not wishes.candidates or name in wishes.candidates)


def _dose_lines(
    bench: Bench, state: MixerState, doses: tuple[MixDose, ...], rows: list[DoseRow], kept: Sequence[str] = ()
) -> tuple[MixerDose, ...]:
    """The lines there were, in their order and units, then new ones that are used. kept: stay as they are, by name."""
    units = {row.product.name: row.dose.unit for row in rows}
    amounts = {d.product: d for d in doses}
    names = list(dict.fromkeys([*units, *amounts]))
    lines = []
    for name in names:
        dose, line = amounts.get(name), _line_of(name, rows)
        if line is not None and name in kept:
            lines.append(line)
            continue
        if dose is None or (name not in units and dose.amount == 0):
            continue
        item = product_of(bench, state, line or MixerDose(name, 0.0))[1]
        amount, unit = _in_unit(dose, units.get(name, dose.unit), state.tank_l)
        lines.append(MixerDose(name, amount, unit, item.product.id if item else None))
    return tuple(lines)


def _line_of(name: str, rows: list[DoseRow]) -> MixerDose | None:
    return next((row.dose for row in rows if row.product.name == name), None)


def _in_unit(dose: MixDose, unit: str, tank_l: float | None) -> tuple[float, str]:
    """A dose per litre in the unit of its line, where that measures the same way."""
    measure = dose.unit.partition("/")[0]
    if unit not in DOSE_UNITS or measure_of(unit) != measure or (unit.endswith("/tank") and not tank_l):
        return dose.amount, dose.unit
    return dose_in_unit(DosePerLitre(dose.amount, measure), unit, tank_l), unit
