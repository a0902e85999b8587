"""What one row of old notes states: its cells read by the use of their columns. Not yet whose it is, nor when."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, time
from typing import Any

from growlog.records.entry import CullCause
from growlog.services.old_notes.dates import clock_behind, clock_in, day_in
from growlog.services.old_notes.not_read import NotRead, says_nothing
from growlog.services.old_notes.note_fields import NoteField, Sort
from growlog.services.old_notes.numbers import measure_in
from growlog.services.old_notes.pick_cells import PickedCell, picked_in, says_more, single_weights
from growlog.services.old_notes.unit_words import in_kept_unit
from growlog.words import say

_MAY_SAY_MORE = {"pick.fruit_count", "pick.total_weight_g"}


@dataclass(frozen=True)
class UsedColumn:
    """A column that is read: where it stands, its heading, the field, unit and decimal sign of its numbers."""

    place: int
    heading: str
    field: NoteField
    unit: str = ""
    decimal: str = "."
    cumulative: bool = False


@dataclass
class Stated:
    """What a row states. details: numbers and texts by kind and field. picked: cells of both count and weight."""

    crop_name: str = ""
    at: time | None = None
    age: int | None = None
    labour_minutes: int | None = None
    notes: list[str] = field(default_factory=list)
    details: dict[str, dict[str, Any]] = field(default_factory=lambda: defaultdict(dict))
    picked: list[PickedCell] = field(default_factory=list)


def stated_in(cells: Sequence[Any], columns: Sequence[UsedColumn], steps: Mapping[int, float | None]) -> Stated:
    """Reads a row; NotRead naming the column. steps: of cumulative columns by place, in place of their cells."""
    found = Stated()
    for column in columns:
        try:
            if column.cumulative:
                step = steps.get(column.place)
                # A sum that did not grow states nothing: no weight of 0 g was read off any scale.
                _take(found, column.field, step if step or column.field.whole else None)
            elif not says_nothing(cells[column.place]):
                _read(found, column, cells[column.place])
        except NotRead as reason:
            raise NotRead(say("{column}: {reason}", column=column.heading, reason=str(reason))) from None
    return found


def day_stated(cells: Sequence[Any], column: UsedColumn, order: str) -> date | None:
    """The day of a row, None where its cell is empty; NotRead naming the column."""
    if says_nothing(cells[column.place]):
        return None
    try:
        return day_in(cells[column.place], order)
    except NotRead as reason:
        raise NotRead(say("{column}: {reason}", column=column.heading, reason=str(reason))) from None


def number_stated(column: UsedColumn, cell: Any) -> float:
    """The number of a cell in the unit that is kept; NotRead with the reason."""
    if isinstance(cell, bool) or not isinstance(cell, (int, float, str)):
        raise NotRead(say("“{typed}” is not a number.", typed=str(cell)[:40]))
    if isinstance(cell, str):
        return measure_in(cell, column.decimal, column.unit, column.field.unit)
    converted = in_kept_unit(float(cell), column.unit, column.field.unit)
    if converted is None:
        raise NotRead(
            say("{unit} is not a unit that can be turned into {kept}.", unit=column.unit, kept=column.field.unit)
        )
    return converted


def _read(found: Stated, column: UsedColumn, cell: Any) -> None:
    sort, known = column.field.sort, column.field
    if sort is Sort.DAY:
        found.at = found.at or clock_behind(cell)
    elif sort is Sort.TIME:
        found.at = clock_in(cell)
    elif sort is Sort.CROP:
        found.crop_name = str(cell).strip()
    elif sort is Sort.TEXT:
        _take_text(found, known, str(cell))
    elif sort is Sort.CODES:
        found.details[known.kind][known.name] = tuple(str(cell).replace("/", " ").replace(",", " ").split())
    elif sort is Sort.CAUSE:
        found.details[known.kind][known.name] = _cause(str(cell))
    elif sort is Sort.WEIGHTS:
        found.picked.append(single_weights(_as_text(cell, column), column.decimal, column.unit))
    elif known.key in _MAY_SAY_MORE and isinstance(cell, str) and says_more(cell):
        found.picked.append(picked_in(cell, column.decimal, column.unit if known.unit else ""))
    else:
        _take(found, known, number_stated(column, cell))


def _take(found: Stated, known: NoteField, value: float | None) -> None:
    if value is None:
        return
    number: float | int = int(value) if known.whole and float(value).is_integer() else value
    if known.key == "age":
        found.age = int(number)
    elif known.key == "labour_minutes":
        found.labour_minutes = number  # type: ignore[assignment]  # a fraction is refused with the record's own words
    else:
        found.details[known.kind][known.name] = number


def _take_text(found: Stated, known: NoteField, text: str) -> None:
    if known.key == "note":
        found.notes.append(text)
    elif known.key == "note.text":
        found.details["note"]["text"] = "; ".join(filter(None, (found.details["note"].get("text", ""), text)))
    else:
        found.details[known.kind][known.name] = text


def _cause(text: str) -> CullCause:
    word = " ".join(text.casefold().replace("-", " ").split())
    for cause in CullCause:
        if word in (cause.value.replace("-", " "), say(cause.label).casefold().replace("-", " ")):
            return cause
    causes = ", ".join(say(cause.label) for cause in CullCause)
    raise NotRead(say("“{typed}” is none of: {causes}.", typed=text[:40], causes=causes))


def _as_text(cell: Any, column: UsedColumn) -> str:
    return str(cell).replace(".", column.decimal) if isinstance(cell, float) else str(cell)
