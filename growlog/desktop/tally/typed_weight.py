"""A weight as it is typed at the scale: figures with at most one decimal sign, in the unit of display."""

import re

from growlog.desktop.entry_form.display_units import METRIC, display_unit
from growlog.desktop.look.widgets.number_text import number_text
from growlog.records.problems import check_quantity
from growlog.services.tally import CannotTally
from growlog.words import say, say_count

_WEIGHT = re.compile(r"([0-9]+)(?:[.,]([0-9]*))?|[.,]([0-9]+)")


def read_weight(text: str, system: str = METRIC) -> float:
    """The weight in g. Raises CannotTally with a plain sentence; a weight outside the limits is refused here, too.

    Stricter than other number fields: no sign for thousands, so that a slip between two weights is never a third.
    """
    plain = text.strip()
    unit = display_unit("weight_g", system)
    match = _WEIGHT.fullmatch(plain)
    if match is None:
        if sum(plain.count(sign) for sign in ".,") > 1:
            raise CannotTally(say("{typed} has more than one decimal sign. Write a weight as 86.5.", typed=plain))
        raise CannotTally(say("{typed} is not a weight. Write figures only, such as 86 or 86.5.", typed=plain))
    if len(match[2] or match[3] or "") > unit.decimals:
        one, many = "At most {n} decimal place.", "At most {n} decimal places."
        raise CannotTally(say_count(one, many, unit.decimals))
    weight_g = unit.kept(float(plain.replace(",", ".")))
    firm = [p.sentence for p in check_quantity("weight_g", weight_g) if not p.asks]
    if firm:
        raise CannotTally(" ".join(firm))
    return weight_g


def weight_text(weight_g: float, system: str = METRIC) -> str:
    """A weight with its unit, as it stands on a chip."""
    unit = display_unit("weight_g", system)
    shown = round(unit.shown(weight_g), unit.decimals)
    return f"{number_text(shown, 0 if shown == int(shown) else unit.decimals)}\u2009{unit.unit}"
