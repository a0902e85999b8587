"""Which elements of a target a set of doses misses, and why, in a sentence."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from growlog.words import say

TOLERANCE = 0.01  # of the target: less than any label or meter can tell apart


@dataclass(frozen=True)
class Supply:
    """A product, its content per mL or g by element, its dose per L and the highest dose allowed (None: no limit)."""

    name: str
    content_mg: Mapping[str, float]
    amount_per_l: float
    highest_per_l: float | None


@dataclass(frozen=True)
class Unmet:
    """An element off its target by more than 1 per cent, in mg/L, and why."""

    element: str
    target_mg_per_l: float
    reached_mg_per_l: float
    reason: str


def unmet_elements(
    target_mg_per_l: Mapping[str, float],
    reached_mg_per_l: Mapping[str, float],
    water_mg_per_l: Mapping[str, float],
    supplies: Sequence[Supply],
) -> tuple[Unmet, ...]:
    """The elements off target by more than 1 per cent (or 0.05 mg/L where the target is 0)."""
    found = []
    for element, target in target_mg_per_l.items():
        reached = reached_mg_per_l.get(element, 0.0)
        if abs(reached - target) <= (TOLERANCE * target or 0.05):
            continue
        if reached < target:
            reason = _why_short(element, target_mg_per_l, reached_mg_per_l, supplies)
        else:
            reason = _why_over(element, target, water_mg_per_l, supplies, target_mg_per_l)
        found.append(Unmet(element, target, reached, reason))
    return tuple(found)


def _why_short(
    element: str, target: Mapping[str, float], reached: Mapping[str, float], supplies: Sequence[Supply]
) -> str:
    sources = [s for s in supplies if s.content_mg.get(element, 0.0) > 0]
    if not sources:
        return say("No product here brings {element}.", element=element)
    with_room = [s for s in sources if s.highest_per_l is None or s.amount_per_l < s.highest_per_l * (1 - 1e-6)]
    if not with_room:
        names = ", ".join(s.name for s in sources)
        return say("{products} stand at their highest or fixed dose.", products=names)
    beside = _always_beside(element, with_room, target, reached)
    if beside:
        return say("Every product with {element} here also brings {others}.", element=element, others=beside)
    return say("More {element} would put other elements further off their targets.", element=element)


def _always_beside(
    element: str, sources: Sequence[Supply], target: Mapping[str, float], reached: Mapping[str, float]
) -> str:
    """Targeted elements that are full already and stand in every source of this one."""
    common = set.intersection(*(({e for e, mg in s.content_mg.items() if mg > 0}) for s in sources))
    full = [e for e in target if e in common and e != element and reached.get(e, 0.0) >= target[e] * (1 - TOLERANCE)]
    return ", ".join(full)


def _why_over(
    element: str,
    target: float,
    water: Mapping[str, float],
    supplies: Sequence[Supply],
    targets: Mapping[str, float],
) -> str:
    if water.get(element, 0.0) > target:
        amount = f"{water[element]:.3g}"
        return say("The water alone brings {amount} mg/L {element}.", amount=amount, element=element)
    used = [s for s in supplies if s.amount_per_l > 0 and s.content_mg.get(element, 0.0) > 0]
    common = [e for e in targets if e != element and used and all(s.content_mg.get(e, 0.0) > 0 for s in used)]
    others = ", ".join(common) or say("other elements")
    return say("It comes with {others} in {products}.", others=others, products=", ".join(s.name for s in used))
