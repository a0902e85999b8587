"""The use of columns as the person tells it in words: a heading and what it is read as."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from growlog.records.column_map import ColumnMap, MappedColumn
from growlog.services.old_notes.heading_words import fields_meant
from growlog.services.old_notes.note_fields import NoteField, note_fields
from growlog.services.old_notes.unit_words import is_unit_of, tidy_unit
from growlog.words import say

SEVERAL = frozenset(("note", "note.text"))  # more than one column may go there; their texts are joined
_LEFT_OUT = frozenset(("", "-", "none", "left-out", "nothing"))
_OTHER_NAMES = {"date": "day", "time": "at", "labour": "labour_minutes"}


class NotToldRight(Exception):
    """A column or a field that there is not; str() is a plain sentence with a way on."""


@dataclass(frozen=True)
class Told:
    """What was told: pairs of column and field, fields (or columns) that hold sums so far, and those that do not."""

    columns: Sequence[tuple[str, str]] = ()
    cumulative: Sequence[str] = ()
    not_cumulative: Sequence[str] = ()


def told_map(column_map: ColumnMap, told: Told, kinds: Sequence[str] = ()) -> ColumnMap:
    """The map with what was told put in; a guess that stands in the way of it goes. NotToldRight."""
    columns = list(column_map.columns)
    by_hand: set[int] = set()
    for column, words in told.columns:
        place = _place_of(columns, column)
        field, unit = field_told(words, kinds)
        columns = with_field(columns, place, field, unit, by_hand)
        by_hand.add(place)
    for words, adds_up in [(w, True) for w in told.cumulative] + [(w, False) for w in told.not_cumulative]:
        for place in _places_meant(columns, words, kinds):
            columns[place] = replace(columns[place], cumulative=adds_up)
    return replace(column_map, columns=tuple(columns))


def with_field(
    columns: Sequence[MappedColumn],
    place: int,
    field: str,
    unit: str = "",
    kept: frozenset[int] | set[int] = frozenset(),
) -> list[MappedColumn]:
    """The columns with another use of one; another column of that use is left out, unless its place is kept."""
    found = list(columns)
    for other, column in enumerate(columns):
        if other not in kept and other != place and field and column.field == field and field not in SEVERAL:
            found[other] = MappedColumn(column.column)
    before = columns[place]
    known = note_fields().get(field)
    own_unit = unit or (before.unit if known is not None and is_unit_of(before.unit, known.unit) else "")
    adds_up = before.cumulative and known is not None and known.can_add_up
    found[place] = MappedColumn(before.column, field, own_unit, adds_up)
    return found


def field_told(words: str, kinds: Sequence[str] = ()) -> tuple[str, str]:
    """The field and the unit of words such as pick.total_weight_g, total_weight_g:kg or weight; "" to leave it out."""
    named, _, unit = words.partition(":")
    wanted = " ".join(named.casefold().split())
    wanted = _OTHER_NAMES.get(wanted, wanted)
    if wanted in _LEFT_OUT:
        return "", ""
    found = _fields_named(wanted, kinds)
    if len(found) != 1:
        raise NotToldRight(_unclear(named, found))
    if unit and not is_unit_of(unit, found[0].unit):
        raise NotToldRight(say("{unit} is no unit of {field}.", unit=unit, field=found[0].key))
    return found[0].key, tidy_unit(unit) if unit else ""


def _fields_named(wanted: str, kinds: Sequence[str]) -> list[NoteField]:
    fields = note_fields()
    if wanted in fields:
        return [fields[wanted]]
    name = wanted.replace(" ", "_").replace("-", "_")
    offered = [f for f in fields.values() if not f.kind or not kinds or f.kind in kinds]
    for matches in (
        [f for f in offered if f.name == name],
        [f for f in offered if wanted in (f.words.casefold(), say(f.label).casefold())],
        [fields[key] for _score, key in fields_meant(wanted)[:1] if key and fields[key] in offered],
    ):
        if matches:
            return matches
    return []


def _place_of(columns: Sequence[MappedColumn], name: str) -> int:
    wanted = " ".join(name.casefold().split())
    found = [place for place, c in enumerate(columns) if " ".join(c.column.casefold().split()) == wanted]
    if not found and name.strip().isdecimal() and 1 <= int(name) <= len(columns):
        return int(name) - 1
    if len(found) == 1:
        return found[0]
    if found:
        raise NotToldRight(say("Two columns are called {name}. Name it by its number, from 1.", name=name))
    names = ", ".join(c.column for c in columns)
    raise NotToldRight(say("There is no column {name}. There are: {names}.", name=name, names=names))


def _places_meant(columns: Sequence[MappedColumn], words: str, kinds: Sequence[str]) -> list[int]:
    wanted = " ".join(words.casefold().split())
    by_heading = [place for place, c in enumerate(columns) if " ".join(c.column.casefold().split()) == wanted]
    field = "" if by_heading else field_told(words, kinds)[0]
    places = by_heading or [place for place, c in enumerate(columns) if field and c.field == field]
    if not places:
        raise NotToldRight(say("No column is read as {field}.", field=words))
    known = note_fields().get(columns[places[0]].field)
    if known is None or not known.can_add_up:
        raise NotToldRight(say("{field} does not add up from day to day.", field=words))
    return places


def _unclear(words: str, found: Sequence[NoteField]) -> str:
    if found:
        names = ", ".join(f.key for f in found)
        return say("{field} may be one of these: {names}.", field=words, names=names)
    names = ", ".join(note_fields())
    return say("There is no field {field}. There are: {names}.", field=words, names=names)
