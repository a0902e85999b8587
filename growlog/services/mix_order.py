"""The steps at the tank, with the amounts for it."""

from collections.abc import Sequence
from dataclasses import dataclass

from growlog.calculations.clashes import mixing_group
from growlog.calculations.products import SOLID, Product
from growlog.records.display import THIN, fixed
from growlog.words import say, show_number

_FIRST_FILL = 0.9  # of the tank, before anything goes in; common practice, no source


@dataclass(frozen=True)
class Portion:
    """A product and how much of it goes in; amount None: the volume of the tank is not known. product_id: of the
    shelf."""

    product: Product
    amount: float | None
    measure: str
    product_id: str | None = None

    @property
    def words(self) -> str:
        """Name and amount."""
        return self.product.name if self.amount is None else f"{self.product.name} {amount_words(self)}"


def order_steps(portions: Sequence[Portion], tank_l: float | None) -> tuple[str, ...]:
    """Water, silicate, calcium, the rest, the last water, pH; each a sentence with its amounts."""
    groups: dict[str, list[Portion]] = {"silicate": [], "calcium": [], "rest": [], "ph": []}
    for portion in portions:
        groups[mixing_group(portion.product)].append(portion)
    steps = [_first_fill(tank_l)]
    if groups["silicate"]:
        steps.append(say("{products}, thinned well. Stir until it is clear.", products=_listed(groups["silicate"])))
    if groups["calcium"]:
        steps.append(say("{products}. Stir until even.", products=_listed(groups["calcium"])))
    if groups["rest"]:
        steps.append(_rest(groups["rest"]))
    return (*steps, _last_fill(tank_l), _ph(groups["ph"]))


def amount_words(portion: Portion) -> str:
    """An amount with as many decimals as can be measured out."""
    return f"{show_number(portion.amount or 0.0, _decimals(portion.amount or 0.0))}{THIN}{portion.measure}"


def _first_fill(tank_l: float | None) -> str:
    if tank_l is None:
        return say("Fill the tank to about nine tenths with water.")
    return say("Fill {volume} of water.", volume=volume_words(tank_l * _FIRST_FILL))


def _last_fill(tank_l: float | None) -> str:
    return (
        say("Fill up with water. Stir.")
        if tank_l is None
        else say("Fill to {volume}. Stir.", volume=volume_words(tank_l))
    )


def _rest(portions: list[Portion]) -> str:
    if any(p.product.form == SOLID for p in portions):
        if len(portions) == 1:
            return say("{products}, dissolved first. Stir.", products=_listed(portions))
        return say("{products}, one after the other; dissolve salts first. Stir.", products=_listed(portions))
    if len(portions) == 1:
        return say("{products}. Stir.", products=_listed(portions))
    return say("{products}, one after the other. Stir.", products=_listed(portions))


def _ph(portions: list[Portion]) -> str:
    if not portions:
        return say("pH last, in small steps; measure again after ten minutes.")
    return say(
        "pH last, in small steps: at most {products}. Stir and measure after each, and again after ten minutes.",
        products=_listed(portions),
    )


def _listed(portions: Sequence[Portion]) -> str:
    return ", ".join(p.words for p in portions)


def volume_words(litres: float) -> str:
    """One decimal; none for whole litres of a large tank, two where a small one would else fill twice to the same."""
    if litres >= 10:
        return fixed(litres, 0 if abs(litres - round(litres)) < 0.05 else 1, "L")
    return fixed(litres, 1 if abs(litres - round(litres, 1)) < 0.005 else 2, "L")


def _decimals(amount: float) -> int:
    if amount >= 20:
        return 0 if abs(amount - round(amount)) < 0.05 else 1
    return 1 if amount >= 1 else 2 if amount >= 0.1 else 3
