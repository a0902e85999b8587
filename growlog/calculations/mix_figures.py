"""How the figures of the mixer are worked out, each as a figure with its inputs, method and source."""

from collections.abc import Mapping

from growlog.calculations.conductivity import EcEstimate
from growlog.calculations.explained_figure import Figure, Input, Sure
from growlog.words import mark

_EC_METHOD = mark(
    "Each ion's conductivity at infinite dilution, slowed by the other ions, times its amount; calcium and magnesium"
    " that pair with sulfate carry nothing. The band is 10 %, more where a label leaves ions out; the meter rules."
)
_EC_SOURCE = (
    "CRC Handbook of Chemistry and Physics, 95th edition, 2014; Appelo, C. A. J., Specific conductance: how to"
    " calculate, to use, and the pitfalls, 2010; Parkhurst, D. L. and Appelo, C. A. J., PHREEQC version 3, 2013"
)
_ELEMENT_METHOD = mark(
    "Dose times content of each product, oxides turned into elements by atomic weights, all added up, and what the"
    " water brings. Per cent by weight are multiplied by the density; per cent in volume are g per 100 mL."
)
_ELEMENT_SOURCE = "Prohaska, T. et al., Standard atomic weights of the elements 2021, 2022"
_DOSE_METHOD = mark(
    "Doses of 0 or more whose misses, each in per cent of its target, have the smallest sum of squares; what is missed"
    " stands beside them."
)
_DOSE_SOURCE = "Stark, P. B. and Parker, R. L., Bounded-variable least-squares: an algorithm and applications, 1995"


def ec_figure(ec: EcEstimate, nutrients_mg_per_l: Mapping[str, float]) -> Figure:
    """The EC estimate in mS/cm at 25 °C with its band and the nutrients (mg/L) that it comes from."""
    inputs = _inputs(nutrients_mg_per_l)
    return Figure("ec", ec.estimate, "mS/cm", inputs, _EC_METHOD, _EC_SOURCE, Sure.ESTIMATE, low=ec.low, high=ec.high)


def element_figure(element: str, mg_per_l: float, by_product_mg_per_l: Mapping[str, float]) -> Figure:
    """An element of a feed in mg/L, with what each product and the water bring of it."""
    inputs = _inputs(by_product_mg_per_l)
    return Figure(element, mg_per_l, "mg/L", inputs, _ELEMENT_METHOD, _ELEMENT_SOURCE, Sure.PUBLISHED)


def dose_figure(product: str, per_l: float, measure: str, target_mg_per_l: Mapping[str, float]) -> Figure:
    """A dose found for a target (mg/L); measure: "mL" or "g"."""
    return Figure(product, per_l, f"{measure}/L", _inputs(target_mg_per_l), _DOSE_METHOD, _DOSE_SOURCE, Sure.ESTIMATE)


def _inputs(mg_per_l: Mapping[str, float]) -> tuple[Input, ...]:
    return tuple(Input(name, mg, "mg/L") for name, mg in mg_per_l.items())
