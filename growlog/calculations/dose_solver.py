"""Doses that come nearest to a target with the products at hand: bounded least squares.

Source: Stark, P. B. and Parker, R. L. (1995) Bounded-variable least-squares: an algorithm and applications,
Computational Statistics 10.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from growlog.calculations.dose_units import DosePerLitre
from growlog.calculations.nutrients import add_up, elements, scaled
from growlog.calculations.products import Product, nutrients_mg_per
from growlog.calculations.unmet import TOLERANCE, Supply, Unmet, unmet_elements
from growlog.words import say

# Prefers the smaller doses where several sets of them do equally well; far below what any scale shows.
_PREFER_LESS = 1e-7


@dataclass(frozen=True)
class Choice:
    """A product that may be used. measure: "mL" or "g"; highest_per_l: None for no limit; locked_per_l: a fixed dose;
    step_per_l: what can be measured out, per L of feed (None: anything)."""

    product: Product
    measure: str
    highest_per_l: float | None = None
    locked_per_l: float | None = None
    step_per_l: float | None = None


@dataclass(frozen=True)
class Solution:
    """Doses in the order of the choices, what the feed then holds (water included), and what misses its target."""

    doses: tuple[DosePerLitre, ...]
    nutrients_mg_per_l: Mapping[str, float]
    unmet: tuple[Unmet, ...]


def solve_doses(
    choices: Sequence[Choice],
    target_mg_per_l: Mapping[str, float],
    water_mg_per_l: Mapping[str, float] | None = None,
    weights: Mapping[str, float] | None = None,
) -> Solution:
    """Doses of 0 or more that meet the targets as nearly as can be, each miss counted in per cent of its target.

    target_mg_per_l: by element symbol (or a form of nitrogen such as "NH4-N"), 0 and above; elements without a target
    are free. weights: how much an element matters, 1 if not given. A locked dose is kept.
    ValueError for an empty or negative target, for limits and locks below 0, and as nutrients_mg_per.
    """
    _check(choices, target_mg_per_l, weights or {})
    water = dict(water_mg_per_l or {})
    supplies = [nutrients_mg_per(choice.product, choice.measure) for choice in choices]
    amounts = _amounts(choices, supplies, target_mg_per_l, water, weights or {})
    doses = tuple(DosePerLitre(a, c.measure) for a, c in zip(amounts, choices, strict=True))
    reached = add_up([water, *(scaled(s, a) for s, a in zip(supplies, amounts, strict=True))])
    used = [
        Supply(c.product.name, _contents(s), a, _limit_of(c))
        for c, s, a in zip(choices, supplies, amounts, strict=True)
    ]
    return Solution(doses, reached, unmet_elements(target_mg_per_l, _contents(reached), _contents(water), used))


def solve_rounded(
    choices: Sequence[Choice],
    target_mg_per_l: Mapping[str, float],
    water_mg_per_l: Mapping[str, float] | None = None,
    weights: Mapping[str, float] | None = None,
) -> Solution:
    """As solve_doses, with each dose a whole number of its steps.

    The coarsest dose is rounded first and the others are solved again around it, so that they take up its error. What
    then misses its target only because of the rounding says so.
    """
    exact = solve_doses(choices, target_mg_per_l, water_mg_per_l, weights)
    reasons = {miss.element: miss.reason for miss in exact.unmet}
    rounded = _rounded(choices, target_mg_per_l, water_mg_per_l, weights)
    by_rounding = say("Rounding to what can be measured out takes it off its target.")
    unmet = tuple(replace(miss, reason=reasons.get(miss.element, by_rounding)) for miss in rounded.unmet)
    return replace(rounded, unmet=unmet)


def _rounded(
    choices: Sequence[Choice],
    target_mg_per_l: Mapping[str, float],
    water_mg_per_l: Mapping[str, float] | None,
    weights: Mapping[str, float] | None,
) -> Solution:
    pending = list(choices)
    while True:
        solution = solve_doses(pending, target_mg_per_l, water_mg_per_l, weights)
        open_ones = [i for i, c in enumerate(pending) if c.locked_per_l is None and c.step_per_l]
        if not open_ones:
            return solution
        coarsest = max(open_ones, key=lambda i: _coarseness(pending[i], solution.doses[i].amount))
        rounded = _round_to_step(pending[coarsest], solution.doses[coarsest].amount)
        pending[coarsest] = replace(pending[coarsest], locked_per_l=rounded)


def _amounts(
    choices: Sequence[Choice],
    supplies: Sequence[Mapping[str, float]],
    target: Mapping[str, float],
    water: Mapping[str, float],
    weights: Mapping[str, float],
) -> list[float]:
    amounts = [choice.locked_per_l or 0.0 for choice in choices]
    free = [i for i, c in enumerate(choices) if c.locked_per_l is None and any(supplies[i].values())]
    fixed = add_up([water, *(scaled(s, a) for s, a in zip(supplies, amounts, strict=True))])
    row_weights = {key: weights.get(key, 1.0) / _size(key, target) for key in target}
    matrix = np.array([[_contents(supplies[i]).get(k, 0.0) * w for i in free] for k, w in row_weights.items()])
    wanted = np.array([(target[k] - _contents(fixed).get(k, 0.0)) * w for k, w in row_weights.items()])
    if free:
        limits = [choices[i].highest_per_l for i in free]
        for i, amount in zip(free, _least_squares(matrix, wanted, limits), strict=True):
            amounts[i] = amount
    return amounts


def _least_squares(matrix: Any, wanted: Any, limits: Sequence[float | None]) -> list[float]:
    from scipy.optimize import lsq_linear  # here, since loading it takes longer than most commands run

    scale = np.linalg.norm(matrix, axis=0)
    scale[scale == 0] = 1.0  # brings only what has no target; the preference for less then leaves it out
    upper = np.array([np.inf if limit is None else max(limit, 1e-12) for limit in limits]) * scale
    count = len(limits)
    fit = lsq_linear(
        np.vstack([matrix / scale, _PREFER_LESS * np.eye(count)]),
        np.concatenate([wanted, np.zeros(count)]),
        bounds=(np.zeros(count), upper),
        method="bvls",
        tol=1e-14,
    )
    amounts = np.clip(fit.x, 0, upper) / scale
    return [float(a) if a * s > 10 * _PREFER_LESS else 0.0 for a, s in zip(amounts, scale, strict=True)]


def _size(key: str, target: Mapping[str, float]) -> float:
    """What a miss is measured against: the target itself, or a twentieth of the largest for a target of 0.

    Never less than a millionth of the largest, below which no trace element lies and the sums lose their digits.
    """
    largest = max(*target.values(), 0.001)
    return max(target[key] or largest / 20, largest * 1e-6)


def _contents(nutrients: Mapping[str, float]) -> dict[str, float]:
    """By element, and by the forms of nitrogen beside them."""
    return {**nutrients, **elements(nutrients)}


def _limit_of(choice: Choice) -> float | None:
    return choice.highest_per_l if choice.locked_per_l is None else choice.locked_per_l


def _coarseness(choice: Choice, amount: float) -> float:
    step = choice.step_per_l or 0.0
    return step / amount if amount > 0 else 0.0


def _round_to_step(choice: Choice, amount: float) -> float:
    step = choice.step_per_l or 1.0
    steps = round(amount / step)
    if choice.highest_per_l is not None and steps * step > choice.highest_per_l * (1 + TOLERANCE / 1000):
        steps -= 1
    return max(steps, 0) * step


def _check(choices: Sequence[Choice], target: Mapping[str, float], weights: Mapping[str, float]) -> None:
    if not target:
        raise ValueError("target is empty, outside one element and above")
    stated = [(f"target of {key}", value) for key, value in target.items()]
    stated += [(f"weight of {key}", value) for key, value in weights.items()]
    for choice in choices:
        stated.append((f"highest_per_l of {choice.product.name}", choice.highest_per_l or 0.0))
        stated.append((f"locked_per_l of {choice.product.name}", choice.locked_per_l or 0.0))
    for name, value in stated:
        if not 0 <= value < float("inf"):
            raise ValueError(f"{name} {value:g} is outside 0 and above")
