"""A row's values become the details of entries, one of each kind that the row states something of."""

from collections.abc import Iterator
from typing import Any

from growlog.records.entry import KINDS, Cull, CullCause, Detail, Pick
from growlog.services.old_notes.not_read import NotRead
from growlog.services.old_notes.note_fields import CULLED
from growlog.services.old_notes.pick_cells import PickedCell
from growlog.services.old_notes.row_values import Stated
from growlog.words import say

_MOST_SINGLE = 500  # a row of more fruit of one weight is kept as count and total


def details_of(stated: Stated) -> Iterator[tuple[Detail, str]]:
    """Each detail with the note that belongs to it alone; NotRead where the values contradict each other."""
    kinds = list(stated.details)
    if stated.picked and "pick" not in kinds:
        kinds.append("pick")
    for kind in kinds:
        values = dict(stated.details.get(kind, {}))
        if kind == "pick":
            pick = _pick(values, stated.picked)
            if pick is not None:
                yield pick, ""
        elif kind == "note":
            yield KINDS[kind](), values.get("text", "")
        elif kind != "training" or any(values.values()):  # nought leaves and nought shoots were no training
            yield KINDS[kind](**values), ""


def _pick(values: dict[str, Any], cells: list[PickedCell]) -> Pick | None:
    culls = tuple(_culls(values))
    count, total = values.get("fruit_count"), values.get("total_weight_g")
    weights = tuple(weight for cell in cells for weight in cell.weights_g)
    for cell in cells:
        if cell.total_g is not None:
            total = _agreed(total, cell.total_g, say("weight"))
    if cells:
        count = _agreed(count, sum(cell.count for cell in cells), say("number of fruit"))
    each = values.get("weight_g")
    if each and not weights:
        count = 1 if count is None else count
        weights, total = _of_each(count, each, total)
    if not count and not total and not weights and not culls:
        return None
    if total == 0 and not culls:
        raise NotRead(say("{n} fruit of 0 g: leave the weight empty if they were not weighed.", n=count))
    if count is None and total:
        raise NotRead(say("A weight without a number of fruit."))
    return Pick(count or 0, total or None, weights, culls)


def _of_each(count: Any, each: float, total: float | None) -> tuple[tuple[float, ...], float | None]:
    if not isinstance(count, int) or count > _MOST_SINGLE:
        return (), each * count if total is None else total
    return (each,) * count, total


def _agreed(one: Any, other: Any, what: str) -> Any:
    if one is not None and one != other:
        raise NotRead(say("Two columns state another {what}: {one} and {other}.", what=what, one=one, other=other))
    return other


def _culls(values: dict[str, Any]) -> Iterator[Cull]:
    if values.get("cull_count"):
        if "cull_cause" not in values:
            raise NotRead(say("Fruit were culled, but the cause is not stated."))
        yield Cull(values["cull_count"], values["cull_cause"])
    for cause in CullCause:
        if values.get(CULLED + cause.value):
            yield Cull(values[CULLED + cause.value], cause)
