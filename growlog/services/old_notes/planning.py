"""From a file and the use of its columns to a plan: nothing is guessed that a person has to say, nothing is dropped."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

from growlog.records.column_map import ColumnMap, MappedColumn
from growlog.records.crop import Crop
from growlog.records.entry import Entry, Owner, OwnerKind
from growlog.services.entries import new_entry, own_entries
from growlog.services.entry_batches import StandingChecks
from growlog.services.old_notes.column_use import sign_of_column
from growlog.services.old_notes.dates import OrderFound, order_of, year_slips
from growlog.services.old_notes.import_plan import Answers, ImportPlan, PlannedRow, RowOutcome
from growlog.services.old_notes.not_read import NotRead
from growlog.services.old_notes.note_fields import Sort, note_fields
from growlog.services.old_notes.old_table import OldTable, Progress
from growlog.services.old_notes.questions import questions_of
from growlog.services.old_notes.row_entries import details_of
from growlog.services.old_notes.row_values import Stated, UsedColumn, day_stated, number_stated, stated_in
from growlog.services.old_notes.running_totals import Step, steps_of
from growlog.services.open_logbook import OpenLogbook, new_id
from growlog.sharing.old_notes.raw_rows import RawRow
from growlog.words import say, show_day

_TELL_EVERY = 1000


def plan_entries(
    log: OpenLogbook,
    table: OldTable,
    column_map: ColumnMap,
    crop_id: str | None,
    answers: Answers | None = None,
    on_progress: Progress | None = None,
) -> ImportPlan:
    """What the rows would become. Writes nothing. What on_progress raises ends the work.

    crop_id: the crop of rows that name none; None where a column names the crop of each row.
    """
    with log.unit() as unit:
        crops = unit.crops.all()
        checks = StandingChecks(unit, [c.id for c in crops], log.today())
        existing = own_entries(unit, [c.id for c in crops])
    known = Counter(_content(e) for entries in existing.values() for e in entries)
    planner = _Planner(table, crops, checks, known, crop_id, answers or Answers(), log.today())
    return planner.plan(column_map, on_progress)


class _Planner:
    """One planning: the columns in use, the days of all rows, then row by row."""

    def __init__(
        self,
        table: OldTable,
        crops: Sequence[Crop],
        checks: StandingChecks,
        known: Counter[Any],
        crop_id: str | None,
        answers: Answers,
        today: date,
    ) -> None:
        self._table = table
        self._checks = checks
        self._known = known
        self._answers = answers
        self._today = today
        self._crop = checks.crops.get(crop_id) if crop_id else None
        self._by_name = {crop.name.strip().casefold(): crop for crop in crops}
        self._reasons: dict[int, str] = {}
        self._asked: dict[int, str] = {}

    def plan(self, column_map: ColumnMap, on_progress: Progress | None) -> ImportPlan:
        """The plan; without rows while a question is open that decides how cells are read."""
        signs = [sign_of_column(self._table, place) for place in range(len(self._table.headings))]
        self._columns = used_columns(self._table, column_map.columns, signs, self._answers.decimal)
        order = self._order()
        used = replace(
            column_map,
            heading=self._table.shape,
            date_order=self._answers.date_order or order.order,
            decimal=next((c.decimal for c in self._columns if c.decimal == ","), "."),
        )
        questions = questions_of(self._table, self._columns, signs, self._answers, order, self._crop)
        if questions:
            return ImportPlan(self._table, used, (), tuple(questions))
        days = self._days(used.date_order)
        steps = self._steps(days)
        rows = []
        for place, row in enumerate(self._table.rows):
            if on_progress is not None and place % _TELL_EVERY == 0:
                on_progress(place, len(self._table.rows))
            rows.append(self._row(place, row, days[place], {p: of[place] for p, of in steps.items()}))
        return ImportPlan(self._table, used, tuple(rows))

    def _column_of(self, sort: Sort) -> UsedColumn | None:
        return next((c for c in self._columns if c.field.sort is sort), None)

    def _order(self) -> OrderFound:
        column = self._column_of(Sort.DAY)
        if column is None:
            return OrderFound("")
        crops = [self._crop] if self._crop is not None else list(self._checks.crops.values())
        first = min((c.day_zero for c in crops), default=date.min)
        last = max((c.cleared_on or self._today for c in crops), default=self._today)
        return order_of(self._table.column(column.place), first, last)

    def _days(self, order: str) -> list[date | None]:
        """The day of each row; what keeps a row from having one is noted as its reason."""
        column = self._column_of(Sort.DAY)
        days = [None if column is None else self._day(place, row, column, order)
                for place, row in enumerate(self._table.rows)]  # fmt: skip
        for place, fitting in year_slips(days).items():
            day = days[place]
            assert day is not None
            if self._answers.year_slips == "mend":
                days[place] = fitting
            elif not self._answers.year_slips:
                sentence = say("{day} stands a year off the days around it; {fitting} would fit. Which is right?",
                               day=show_day(day), fitting=show_day(fitting))  # fmt: skip
                self._asked[place] = sentence
        return days

    def _day(self, place: int, row: RawRow, column: UsedColumn, order: str) -> date | None:
        if row.problem:
            return None
        try:
            return day_stated(row.cells, column, order)
        except NotRead as reason:
            self._reasons[place] = str(reason)
            return None

    def _steps(self, days: list[date | None]) -> dict[int, list[Step]]:
        """Of each column of sums so far, what each row added."""
        crop_column = self._column_of(Sort.CROP)
        groups = [
            str(row.cells[crop_column.place]).strip().casefold() if crop_column and not row.problem else ""
            for row in self._table.rows
        ]
        return {c.place: steps_of(self._totals(c), days, groups) for c in self._columns if c.cumulative}

    def _totals(self, column: UsedColumn) -> list[float | None]:
        totals: list[float | None] = []
        for place, row in enumerate(self._table.rows):
            total = None
            if not row.problem and row.cells[column.place] != "":
                try:
                    total = number_stated(column, row.cells[column.place])
                except NotRead as reason:
                    self._reasons.setdefault(place, f"{column.heading}: {reason}")
            totals.append(total)
        return totals

    def _row(self, place: int, row: RawRow, day: date | None, steps: dict[int, Step]) -> PlannedRow:
        try:
            return self._read_row(place, row, day, steps)
        except NotRead as reason:
            return PlannedRow(row.line, row.cells, RowOutcome.REFUSED, (), str(reason), day=day)

    def _read_row(self, place: int, row: RawRow, day: date | None, steps: dict[int, Step]) -> PlannedRow:
        if row.problem or place in self._reasons:
            raise NotRead(row.problem or self._reasons[place])
        for column in self._columns:
            step = steps.get(column.place)
            if isinstance(step, NotRead):
                raise NotRead(f"{column.heading}: {step}")
        stated = stated_in(row.cells, self._columns, {p: s for p, s in steps.items() if not isinstance(s, NotRead)})
        crop = self._crop_named(stated.crop_name)
        if day is None and stated.age is not None:
            day = _day_at(crop, stated.age)
        entries = tuple(_entries(stated, crop, day)) if day is not None else ()
        if day is None:
            raise NotRead(say("There is no date in this row."))
        if not entries:
            return PlannedRow(row.line, row.cells, RowOutcome.SAYS_NOTHING, day=day)
        if place in self._asked:
            return PlannedRow(row.line, row.cells, RowOutcome.ASKED, entries, self._asked[place], day=day)
        return self._judged(row, entries)

    def _judged(self, row: RawRow, entries: tuple[Entry, ...]) -> PlannedRow:
        problems = [p for e in entries for p in self._checks.problems(e) + e.problems()]
        firm = [p.sentence for p in problems if not p.asks]
        if firm:
            raise NotRead(" ".join(dict.fromkeys(firm)))
        new = tuple(e for e in entries if not self._is_known(e))
        outcome = RowOutcome.GOES_IN if new else RowOutcome.KNOWN
        doubts = " ".join(dict.fromkeys(p.sentence for p in problems))
        known = len(entries) - len(new)
        return PlannedRow(row.line, row.cells, outcome, new, doubts if new else "", known, entries[0].day)

    def _is_known(self, entry: Entry) -> bool:
        """Whether the logbook has it; each of its entries accounts for one of the file only."""
        content = _content(entry)
        if self._answers.with_known or not self._known[content]:
            return False
        self._known[content] -= 1
        return True

    def _crop_named(self, name: str) -> Crop:
        crop = self._by_name.get(name.casefold()) if name else self._crop
        if crop is None:
            raise NotRead(say("There is no crop {name}.", name=name) if name else say("The row names no crop."))
        return crop


def used_columns(
    table: OldTable, mapped: Sequence[MappedColumn], signs: Sequence[str], decimal: str
) -> list[UsedColumn]:  # fmt: skip
    """The columns that are read, each with its decimal sign: proven by itself, else as answered, else the file's."""
    proven = [sign for sign in signs if sign in (".", ",")]
    of_file = decimal or ("," if proven.count(",") > proven.count(".") else ".")
    found = []
    for place, (column, sign) in enumerate(zip(mapped, signs, strict=True)):
        field = note_fields().get(column.field)
        if field is not None:
            own = sign if sign in (".", ",") else of_file
            adds_up = column.cumulative and field.can_add_up
            found.append(UsedColumn(place, table.headings[place], field, column.unit, own, adds_up))
    return found


def _day_at(crop: Crop, age: int) -> date:
    try:
        return crop.day_zero + timedelta(days=age)
    except OverflowError:
        raise NotRead(say("No plant is {n} days old.", n=age)) from None


def _entries(stated: Stated, crop: Crop, day: date) -> list[Entry]:
    """The row's entries; its note and its labour go to the first of them, or make a note by themselves."""
    details = list(details_of(stated))
    note = "; ".join(stated.notes)
    if not details and note:
        return [_entry(crop, day, stated, "note", note)]
    found = [Entry(new_id(), Owner(OwnerKind.CROP, crop.id), day, d, stated.at, note=text) for d, text in details]
    if found:
        own = "; ".join(filter(None, (found[0].note, note)))
        found[0] = replace(found[0], note=own, labour_minutes=stated.labour_minutes)
    return found


def _entry(crop: Crop, day: date, stated: Stated, kind: str, note: str) -> Entry:
    entry = new_entry(Owner(OwnerKind.CROP, crop.id), day, kind)
    return replace(entry, at=stated.at, note=note, labour_minutes=stated.labour_minutes)


def _content(entry: Entry) -> tuple[Any, ...]:
    return entry.owner.id, entry.day, entry.at, entry.labour_minutes, entry.note, entry.detail
