"""What is wrong with a state of the mixer, and what is worth a question, each beside its field."""

from growlog.calculations.dose_units import mixes_gallons
from growlog.calculations.products import LIQUID
from growlog.calculations.water import RAIN_OR_REVERSE_OSMOSIS
from growlog.records.display import plain
from growlog.records.problems import Problem, check_quantity
from growlog.services.mix_checks import dose_problems, product_problems, water_problems
from growlog.services.mixer.bench import Bench, water_of
from growlog.services.mixer.lines import DoseRow
from growlog.services.mixer.state import MixerState, MixTarget, OwnTarget
from growlog.sharing.mix_file import MixDose
from growlog.words import say

Placed = tuple[int | str, Problem]  # the number of a dose line, or "" for a field of its own


def all_problems(bench: Bench, state: MixerState, rows: list[DoseRow]) -> list[Placed]:
    """Problems of the tank, the water and the target, then those of each line."""
    found: list[Placed] = [("", p) for p in field_problems(bench, state)]
    for number, row in enumerate(rows):
        found += [(number, p) for p in _line_problems(state, row)]
        found += [(number, p) for p in _line_questions(row)]
    return found + _gallon_questions(rows)


def field_problems(bench: Bench, state: MixerState) -> list[Problem]:
    """Problems of the tank, the strength, the pH, the water and the target."""
    found = check_quantity("tank_l", state.tank_l)
    if state.tank_l is not None and state.tank_l <= 0:
        found = [Problem("tank_l", say("The volume of the tank is not above 0 L."))]
    found += check_quantity("strength_percent", state.strength_percent)
    if state.strength_percent == 0:
        found.append(Problem("strength_percent", say("At 0 % there is only water. Is it right?"), asks=True))
    found += check_quantity("ph", state.ph)
    if state.waters and abs(sum(w.water_share for w in state.waters) - 1) > 0.005:
        found.append(Problem("waters", say("The shares of the waters add up to 100 %.")))
    if state.typed_water not in (None, RAIN_OR_REVERSE_OSMOSIS) and not state.waters:
        sentence = say("This water came with a file. Keep it among the waters, so that a saved mix knows it.")
        found.append(Problem("waters", sentence, asks=True))
    found += [Problem("waters", p.sentence) for p in water_problems(water_of(bench, state))]
    return found + _target_problems(bench, state)


def _target_problems(bench: Bench, state: MixerState) -> list[Problem]:
    target = state.target
    if isinstance(target, MixTarget) and target.mix_id not in bench.mixes:
        return [Problem("target", say("That is no longer in the logbook."))]
    if isinstance(target, OwnTarget):
        stated = [v for r in target.ranges.values() for v in (r.low, r.high) if v is not None]
        if any(not 0 <= v < float("inf") for v in stated):
            return [Problem("target", say("A target is below 0 mg/L."))]
        pairs = [(r.low, r.high) for r in target.ranges.values()]
        if any(low is not None and high is not None and low > high for low, high in pairs):
            return [Problem("target", say("A range of the target ends below where it begins."))]
    return []


def _line_problems(state: MixerState, row: DoseRow) -> list[Problem]:
    stated = MixDose(row.product.name, row.dose.amount, row.dose.unit)
    strength = state.strength_percent / 100
    found = [*product_problems(row.product), *dose_problems(stated, [row.product], state.tank_l, strength)]
    by_field = {p.field: p for p in reversed(found)}  # the first of each field
    return list(by_field.values())


def _line_questions(row: DoseRow) -> list[Problem]:
    """Allowed, and worth knowing: more than the label's maximum, more than the bottle holds, unknown content."""
    found = []
    highest, per_l = row.product.label_max_per_l, row.own_per_l
    if highest is not None and per_l is not None and per_l > highest * (1 + 1e-9):
        unit = "mL/L" if row.product.form == LIQUID else "g/L"
        sentence = say("This is above the maximum on its label, {most}.", most=plain(highest, unit))
        found.append(Problem("amount", sentence, asks=True))
    level = None if row.item is None else row.item.level
    if level is not None and row.own_amount is not None and row.own_amount > level * (1 + 1e-9):
        sentence = say(
            "Only {left} are left.", left=plain(round(level, 1), "mL" if row.product.form == LIQUID else "g")
        )
        found.append(Problem("amount", sentence, asks=True))
    if row.is_guest:
        sentence = say(
            "{name} came with a file. Keep it on the shelf, so that a saved mix knows it.", name=row.product.name
        )
        found.append(Problem("product", sentence, asks=True))
    if not row.product.is_known and row.dose.amount > 0:
        sentence = say("What {name} brings is not known and is missing in the sums.", name=row.product.name)
        found.append(Problem("product", sentence, asks=True))
    return found


def _gallon_questions(rows: list[DoseRow]) -> list[Placed]:
    if not mixes_gallons(row.dose.unit for row in rows):
        return []
    sentence = say("US and imperial gallons or ounces stand in one mix. Is that right?")
    named = [i for i, row in enumerate(rows) if row.dose.unit.endswith("_imp") or "_imp/" in row.dose.unit]
    return [(i, Problem("unit", sentence, asks=True)) for i in named]
