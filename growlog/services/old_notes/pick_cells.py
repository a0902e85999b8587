"""Cells that say how many fruit and how heavy in one: 2 @ 65g, 3x70 g, 86+93+78, 3 (210 g)."""

import re
from dataclasses import dataclass

from growlog.services.old_notes.not_read import NotRead
from growlog.services.old_notes.numbers import LONGEST, measure_in, number_in
from growlog.words import say

_EACH = re.compile(r"(\d{1,4})\s*(?:fruits?|pcs?|pods?)?\s*(?:@|[x×*]|\bat\b|\bof\b)\s*(.+)", re.IGNORECASE)
_TOGETHER = re.compile(r"(\d{1,4})\s*(?:fruits?|pcs?|pods?)?\s*(?:=|[(\[]|/)\s*([^)\]]+?)\s*[)\]]?", re.IGNORECASE)
_EACH_WORD = re.compile(r"\s*(?:each|ea\.?|apiece)\s*$", re.IGNORECASE)
_BETWEEN = re.compile(r"\s*(?:\+|;|&|\band\b)\s*", re.IGNORECASE)
_UNIT_BEHIND = re.compile(r"[\d.,]\s*([^\W\d_]+)\s*$")
_MOST = 2000  # an evening's picking; more in one cell is a slip of the keys


@dataclass(frozen=True)
class PickedCell:
    """What a cell says: how many, their weight together (None: single weights, or not weighed), single weights."""

    count: int
    total_g: float | None = None
    weights_g: tuple[float, ...] = ()


def says_more(text: str) -> bool:
    """Whether a text is more than a number with a unit."""
    return bool(_EACH.fullmatch(text) or _TOGETHER.fullmatch(text) or len(_BETWEEN.split(text.strip())) > 1)


def picked_in(text: str, decimal: str, unit: str) -> PickedCell:
    """Reads such a cell. unit: the column's, for weights without one. NotRead with the reason."""
    if found := _TOGETHER.fullmatch(text):
        return PickedCell(_count(found[1], text), _weight(found[2], decimal, unit))
    parts = _BETWEEN.split(text.strip())
    shared = _UNIT_BEHIND.search(parts[-1])  # 86+93+78 g: the unit stands once, for all
    weights: list[float] = []
    for part in parts:
        weights += _part(part, decimal, shared[1] if shared else unit)
        if len(weights) > _MOST:
            raise NotRead(say("“{typed}” is more fruit than one pick can have.", typed=text[:LONGEST]))
    return PickedCell(len(weights), weights_g=tuple(weights))


def single_weights(text: str, decimal: str, unit: str) -> PickedCell:
    """A cell of single weights, in which a plain number is one fruit."""
    return picked_in(text, decimal, unit)


def _part(part: str, decimal: str, unit: str) -> list[float]:
    if found := _EACH.fullmatch(part):
        count = _count(found[1], part)
        return [_weight(found[2], decimal, unit)] * min(count, _MOST + 1)
    return [_weight(part, decimal, unit)]


def _count(figure: str, text: str) -> int:
    count = int(number_in(figure, "."))
    if not count:
        raise NotRead(say("“{typed}” is nought fruit with a weight.", typed=text[:LONGEST]))
    return count


def _weight(text: str, decimal: str, unit: str) -> float:
    return measure_in(_EACH_WORD.sub("", text), decimal, unit, "g")
