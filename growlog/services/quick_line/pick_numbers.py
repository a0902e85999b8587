"""The numbers of a pick: which is the count, which are single weights, which is the total."""

from dataclasses import dataclass

from growlog.records.display import plain
from growlog.records.entry import Cull, CullCause, Pick
from growlog.services.quick_line.units import LineUnit, unit_of_bare_number
from growlog.words import say

Found = list[tuple[str, bool]]
Culls = list[tuple[int | float, CullCause, float | None]]

_APART = 4  # two numbers within this factor of each other may be two fruit of one pick


@dataclass
class PickedNumber:
    """A number behind a word for picking. after_comma: a comma stood before it."""

    value: float
    unit: LineUnit | None
    after_comma: bool = False


def pick_of(
    values: dict[str, float], numbers: list[PickedNumber], culls: Culls, shown_units: str
) -> tuple[Pick, Found]:
    """The pick that was meant, with questions where the numbers can be taken in two ways.

    values: the count and the total where they were said with their words.
    """
    count = values.get("fruit_count")
    total = values.get("total_weight_g")
    found: Found = []
    if count is None:
        count, numbers, found = _count_of(numbers, bool(culls) and not numbers)
    weights = _in_grams(numbers, shown_units)
    if len(weights) == 1 and count != 1 and total is None:
        found = found or _bare_total(count, numbers[0], weights[0])
        total, weights = weights[0], []
    listed = tuple(Cull(n, cause, weight) for n, cause, weight in culls)  # type: ignore[arg-type]
    if not count and total is not None and not culls:
        found = [(say("Say how many fruit weigh {weight}.", weight=plain(total, "g")), False)]
    whole = int(count) if count == int(count) else count
    pick = Pick(whole, total, tuple(weights), listed)  # type: ignore[arg-type]
    return pick, _fraction(count) + found


def _count_of(numbers: list[PickedNumber], only_culls: bool) -> tuple[float, list[PickedNumber], Found]:
    """The count where no word for fruit was said, and the numbers that are left as weights."""
    if only_culls or not numbers:
        return 0, numbers, []
    first, rest = numbers[0], numbers[1:]
    if first.unit is not None or first.value != int(first.value):
        return (len(numbers) if rest else 0), numbers, []
    if len(rest) == 1:
        return _one_or_two(first, rest[0])
    if not rest or first.value == len(rest):
        return first.value, rest, []
    if first.value * 3 < min(n.value for n in rest):
        sentence = say(
            "{first} is read as the weight of one fruit. Is it right? If it is the count, write {first} fruit.",
            first=plain(first.value, ""),
        )
        return len(numbers), numbers, [(sentence, True)]
    return len(numbers), numbers, []


def _one_or_two(first: PickedNumber, second: PickedNumber) -> tuple[float, list[PickedNumber], Found]:
    """A count with its total, or two single weights: how far apart the two are tells, and else it is asked."""
    alike = first.value < second.value * _APART and second.value < first.value * _APART
    heavy_unit = second.unit is not None and second.unit.name != "g"
    if alike and not (second.after_comma and heavy_unit):
        return 2, [first, second], [(_two_weights(first, second), True)]
    clear = not alike and second.unit is not None and second.unit.kept(second.value) >= first.value * _APART
    return first.value, [second], [] if clear else [(_count_and_total(first, second), True)]


def _two_weights(first: PickedNumber, second: PickedNumber) -> str:
    return say(
        "Are {first} and {second} two single weights? For {first} fruit that weigh {second} in all, write "
        "{first} fruit {second} {unit}.",
        **_as_said(first, second),
    )


def _count_and_total(first: PickedNumber, second: PickedNumber) -> str:
    return say(
        "Is {first} the count and {second} the weight of all? For two single weights, write "
        "2 fruit {first} {second} {unit}.",
        **_as_said(first, second),
    )


def _as_said(first: PickedNumber, second: PickedNumber) -> dict[str, str]:
    unit = second.unit.name if second.unit is not None else "g"
    return {"first": plain(first.value, ""), "second": plain(second.value, ""), "unit": unit}


def _bare_total(count: float, number: PickedNumber, weight_g: float) -> Found:
    if number.unit is not None or not count:
        return []
    return [(say("Is {weight} the weight of all the fruit together?", weight=plain(weight_g, "g")), True)]


def _in_grams(numbers: list[PickedNumber], shown_units: str) -> list[float]:
    """Each number in g: in its own unit, else in the next one of the row, else in the one before, else as shown."""
    bare = unit_of_bare_number("weight", shown_units)
    weights = []
    for place, number in enumerate(numbers):
        nearest = [number, *numbers[place + 1 :], *reversed(numbers[:place])]
        unit = next((n.unit for n in nearest if n.unit is not None), bare)
        assert unit is not None
        weights.append(unit.kept(number.value))
    return weights


def _fraction(count: float) -> Found:
    return [] if count == int(count) else [(say("Fruit is counted in whole numbers."), False)]
