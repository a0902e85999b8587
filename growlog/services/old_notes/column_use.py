"""What each column of old notes is used for: guessed from headings and cells, remembered, or told by the person."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, datetime, time
from itertools import pairwise
from statistics import median

from growlog.records.column_map import ColumnMap, MappedColumn
from growlog.services.old_notes.dates import readings
from growlog.services.old_notes.heading_words import fields_meant, sounds_cumulative
from growlog.services.old_notes.not_read import NotRead
from growlog.services.old_notes.note_fields import NoteField, Sort, note_fields
from growlog.services.old_notes.numbers import decimal_of, measure_in
from growlog.services.old_notes.old_table import OldTable
from growlog.services.old_notes.told_columns import SEVERAL
from growlog.services.old_notes.unit_words import unit_in
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.sharing.old_notes.old_file import REFUSED_HEADINGS

_SAMPLE = 400
_LESS_IF_SUM = 15  # beside a column of what each day gave, its running sum is a repetition


def proposed_map(log: OpenLogbook, table: OldTable, kinds: Sequence[str] = ()) -> tuple[ColumnMap, bool]:
    """How the columns may be read, and whether a person said so for a file of the same shape before.

    kinds: the kinds of entry that are wanted, all if none is named.
    """
    known = remembered_map(log, table)
    guess = guessed_map(table, kinds)
    if known is None:
        return guess, False
    if not kinds:
        return known, True
    # What was left out while other kinds were wanted is guessed anew.
    kept = [c if _wanted(c.field, kinds) else MappedColumn(c.column) for c in known.columns]
    taken = {c.field for c in kept}
    columns = [g if not c.field and g.field not in taken else c for c, g in zip(kept, guess.columns, strict=True)]
    return replace(known, columns=tuple(columns)), True


def remembered_map(log: OpenLogbook, table: OldTable) -> ColumnMap | None:
    """The map of the last file of this shape, None if there was none. Columns of ours beside it are left out."""
    with log.unit() as unit:
        known = next(iter(unit.store(ColumnMap).all(heading=table.shape)), None)
    if known is None:
        return None
    own = iter(known.columns)
    columns = tuple(MappedColumn(h) if h in REFUSED_HEADINGS else next(own, MappedColumn(h)) for h in table.headings)
    return replace(known, columns=columns)


def guessed_map(table: OldTable, kinds: Sequence[str] = ()) -> ColumnMap:
    """How the columns may be read, from their headings and what stands below."""
    taken: dict[int, str] = {}
    meant = [
        (score, -place, field)
        for place, heading in enumerate(table.headings)
        if heading not in REFUSED_HEADINGS
        for score, field in _fitting(table, place, kinds)
    ]
    for _score, place, field in sorted(meant, key=lambda m: (-m[0], -m[1])):
        if -place not in taken and (field not in taken.values() or field in SEVERAL or not field):
            taken[-place] = field
    _find_days(table, taken)
    _believe_headings(table, taken, kinds)
    crop_place = next((place for place, field in taken.items() if field == "crop"), None)
    places = range(len(table.headings))
    columns = tuple(_column(table, place, taken.get(place, ""), crop_place) for place in places)
    return ColumnMap(new_id(), table.shape, columns, "", file_decimal(table))


def file_decimal(table: OldTable) -> str:
    """The decimal sign that the file's cells prove, "." where nothing tells."""
    signs = [sign_of_column(table, place) for place in range(len(table.headings))]
    return "," if signs.count(",") > signs.count(".") else "."


def sign_of_column(table: OldTable, place: int) -> str:
    """The decimal sign of a column: "." or ",", "" where nothing tells, "?" where it must be asked."""
    texts = [c for c in table.column(place)[: _SAMPLE * 10] if isinstance(c, str)]
    return decimal_of(t for t in texts if len(t) < 40 and not readings(t) and t[:1].isdigit())


def _column(table: OldTable, place: int, field: str, crop_place: int | None) -> MappedColumn:
    heading = table.headings[place]
    known = note_fields().get(field)
    if known is None:
        return MappedColumn(heading)
    sign = sign_of_column(table, place)
    decimal = sign if sign in (".", ",") else "."
    unit = unit_in(heading, known.unit) or _unit_by_size(table, place, known, decimal)
    column = MappedColumn(heading, field, unit)
    return replace(column, cumulative=_looks_cumulative(table, place, column, decimal, crop_place))


def _looks_cumulative(table: OldTable, place: int, column: MappedColumn, decimal: str, crop_place: int | None) -> bool:
    """Whether the heading speaks of a sum and the figures of each crop never fall (or never rise: newest row first)."""
    field = note_fields().get(column.field)
    if field is None or not field.can_add_up or not sounds_cumulative(column.column):
        return False
    by_crop: dict[str, list[float]] = {}
    for row in table.rows[:_SAMPLE]:
        if not row.problem:
            crop = "" if crop_place is None else str(row.cells[crop_place]).strip().casefold()
            by_crop.setdefault(crop, []).extend(_read(row.cells[place], column.unit, field.unit, decimal))
    sequences = list(by_crop.values())
    rising = all(a <= b for numbers in sequences for a, b in pairwise(numbers))
    falling = all(a >= b for numbers in sequences for a, b in pairwise(numbers))
    longest = max(sequences, key=len, default=[])
    return len(longest) > 1 and (rising or falling) and longest[0] != longest[-1]


def _unit_by_size(table: OldTable, place: int, field: NoteField, decimal: str) -> str:
    """A unit that the figures themselves tell: no room has 75 °C, no feed an EC of 1800 mS/cm."""
    numbers = _numbers(table, place, "", field.unit, decimal)
    if not numbers:
        return ""
    middle = median(numbers)
    if field.unit == "°C" and middle > 45:
        return "°f"
    if field.unit == "mS/cm" and middle > 50:
        return "µs/cm"
    if field.unit == "%" and max(numbers) <= 1 and middle > 0:
        return "share"
    return ""


def _numbers(table: OldTable, place: int, unit: str, kept: str, decimal: str) -> list[float]:
    return [number for cell in table.column(place)[:_SAMPLE] for number in _read(cell, unit, kept, decimal)]


def _read(cell: object, unit: str, kept: str, decimal: str) -> list[float]:
    """The number of a cell, none where it holds none."""
    if isinstance(cell, (int, float)):
        return [float(cell)]
    try:
        return [measure_in(str(cell), decimal, unit, kept)]
    except NotRead:
        return []


def _fitting(table: OldTable, place: int, kinds: Sequence[str]) -> list[tuple[int, str]]:
    """What the heading may mean, as far as the cells below can be read as that."""
    cells = table.column(place)[:_SAMPLE]
    return [
        (score - (_LESS_IF_SUM if sounds_cumulative(table.headings[place]) else 0), field)
        for score, field in fields_meant(table.headings[place])
        if not field or (_wanted(field, kinds) and _cells_fit(note_fields()[field], cells))
    ]


def _wanted(field: str, kinds: Sequence[str]) -> bool:
    known = note_fields().get(field)
    return known is not None and (not known.kind or not kinds or known.kind in kinds)


def _cells_fit(field: NoteField, cells: Sequence[object]) -> bool:
    if not cells:
        return True
    fit = {
        Sort.DAY: _is_day,
        Sort.TIME: _is_time,
        Sort.AGE: _has_digit,
        Sort.NUMBER: _has_digit,
        Sort.WEIGHTS: _has_digit,
        Sort.CODES: _has_digit,
    }.get(field.sort)
    if fit is None:
        return any(isinstance(cell, str) and not cell.isdecimal() for cell in cells)
    return sum(map(fit, cells)) * 2 >= len(cells)


def _is_day(cell: object) -> bool:
    return isinstance(cell, date) or (isinstance(cell, str) and bool(readings(cell)))


def _is_time(cell: object) -> bool:
    return isinstance(cell, (time, datetime)) or (isinstance(cell, str) and ":" in cell and len(cell) < 15)


def _has_digit(cell: object) -> bool:
    if isinstance(cell, str):
        return cell[:12].strip("~<>≈") != "" and any(c.isdigit() for c in cell[:12]) and not readings(cell)
    return isinstance(cell, (int, float)) and not isinstance(cell, bool)


def _believe_headings(table: OldTable, taken: dict[int, str], kinds: Sequence[str]) -> None:
    """Takes headings at their word where hardly a cell can be read: each row is then refused with its own reason."""
    fields = note_fields()
    needs_day = not {"day", "age"} & set(taken.values())
    needs_content = not any(f == "note" or fields[f].kind for f in taken.values() if f)
    for place, heading in enumerate(table.headings):
        for _score, field in fields_meant(heading) if place not in taken else ():
            needed = needs_day if field == "day" else needs_content and field in fields and bool(fields[field].kind)
            if needed and field not in taken.values() and _wanted(field, kinds):
                taken[place] = field
                break


def _find_days(table: OldTable, taken: dict[int, str]) -> None:
    """Takes the first column of days for the date where no heading told."""
    if "day" in taken.values() or "age" in taken.values():
        return
    for place in range(len(table.headings)):
        cells = table.column(place)[:_SAMPLE]
        if not taken.get(place) and cells and all(map(_is_day, cells)):
            taken[place] = "day"
            return
