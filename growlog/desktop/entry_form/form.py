"""The form of an entry of any kind: judges as one types, asks about what is unusual, and gives the entry."""

from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise
from typing import Any, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.entry_form.common_fields import CommonFields, wrapping_grid
from growlog.desktop.entry_form.display_units import METRIC
from growlog.desktop.entry_form.field_makers import Cell, Surroundings, make_cell
from growlog.desktop.entry_form.kind_fields import FieldSpec, kind_form
from growlog.desktop.entry_form.light_meter_fields import LampKindField, LuxField, LuxWithLamp
from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.entry_form.pick_in_step import PickInStep
from growlog.desktop.entry_form.plain_fields import TickField
from growlog.desktop.entry_form.water_without_mix import WaterWithoutMix
from growlog.desktop.entry_form.weights_field import WeightsField
from growlog.desktop.look.widgets import Banner, ChoiceField, Rule
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.records.cultivar import FloweringHabit
from growlog.records.entry import Detail, Entry
from growlog.records.problems import Problem
from growlog.records.recipe import Mix
from growlog.services.entries import Belongs
from growlog.words import say

Check = Callable[[Entry], list[Problem]]


class EntryForm(QWidget):
    """Fields of one entry. write() emits confirmed(Entry) if nothing is refused and every question is answered."""

    confirmed = Signal(object)
    cancelled = Signal()
    judged = Signal()

    def __init__(
        self,
        entry: Entry,
        owners: list[Belongs],
        mixes: list[Mix],
        check: Check,
        parent: QWidget | None = None,
        *,
        units: str = METRIC,
        species: str = "",
        habit: FloweringHabit | None = None,
    ) -> None:
        """units: metric or us. species and habit: of the crop, for the scale of stages and the order of fields."""
        super().__init__(parent)
        self.setObjectName("entryForm")
        self._entry = entry
        self._check = check
        self._problems: list[Problem] = []
        self._unread = False
        self._tried = False
        self._kind_form = kind_form(entry.kind, habit)
        self._common = CommonFields(entry, owners)
        around = Surroundings(tuple(mixes), getattr(entry.detail, "mix_id", None), units, species)
        self._own = [(spec, make_cell(spec, around)) for spec in self._kind_form.fields]
        self.rest_label = TextLabel("", "message", wraps=True)
        self._place()
        self._fill()
        self._connect()
        self._judge()

    @property
    def entry(self) -> Entry:
        """The entry as it was handed in."""
        return self._entry

    def value(self) -> Entry | None:
        """The entry as it stands, None while a field cannot be read, a value is refused or a question is open."""
        self._judge()
        return self._read() if self.is_fit else None

    @property
    def is_fit(self) -> bool:
        """Whether it may be written."""
        return not self._unread and all(p.asks for p in self._problems) and all(c.is_answered for c in self.cells())

    def write(self) -> None:
        """Emits confirmed, or shows all that stands against it and goes to the first such field."""
        self._tried = True
        for cell in self.cells():
            cell.take_typed()
        entry = self.value()
        if entry is not None:
            self.confirmed.emit(entry)
            return
        for cell in self.cells():
            if cell.field.is_refused or not cell.is_answered:
                (cell.answer_box if not cell.is_answered else cell).setFocus(Qt.FocusReason.OtherFocusReason)
                return

    def repeat(self, detail: Detail) -> None:
        """Fills in what an earlier entry of the kind held; day, time and note stay as they are."""
        for spec, cell in self._own:
            cell.set_value(getattr(detail, spec.name))
        self._judge()

    def cancel(self) -> None:
        """Nothing is to be written."""
        self.cancelled.emit()

    def cell(self, name: str) -> Cell:
        """The cell of a field of the record; KeyError if there is none."""
        return {cell.name: cell for cell in self.cells()}[name]

    def go_to_first_field(self) -> None:
        """Where typing begins."""
        first = self._own[0][1] if self._own else self.cell("note")
        first.setFocus(Qt.FocusReason.OtherFocusReason)

    def cells(self) -> list[Cell]:
        """All cells, from top to bottom."""
        return self._common.cells[:3] + [cell for _, cell in self._own] + self._common.cells[3:]

    def _place(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(16)
        if self._kind_form.caution:
            column.addWidget(Banner(say(self._kind_form.caution), can_close=False))
        column.addWidget(self._common.above)
        if self._own:
            column.addWidget(Rule())
            grid = wrapping_grid()
            for spec, cell in self._own:
                grid.add(cell, span=spec.span)
            column.addWidget(grid)
        column.addWidget(Rule())
        column.addWidget(self._common.below)
        column.addWidget(self.rest_label)
        column.addStretch(1)
        self._in_tab_order()

    def _in_tab_order(self) -> None:
        cells = self.cells()
        for before, after in pairwise(cells):
            QWidget.setTabOrder(before.answer_box, after)

    def _fill(self) -> None:
        for spec, cell in self._own:
            value = getattr(self._entry.detail, spec.name)
            if spec.name == "fruit_count" and value == 0:
                value = None
            cell.set_value(value)
        cells = {spec.name: cell.field for spec, cell in self._own}
        if "weights_g" in cells:
            count, total = cast(MeasureField, cells["fruit_count"]), cast(MeasureField, cells["total_weight_g"])
            in_step = PickInStep(count, total, cast(WeightsField, cells["weights_g"]), self)
            in_step.followed.connect(self._judge)
        if "canopy_lux" in cells:
            LuxWithLamp(cast(LuxField, cells["canopy_lux"]), cast(LampKindField, cells["lamp_kind"]), self)
        if "water_only" in cells:
            water = WaterWithoutMix(cast(TickField, cells["water_only"]), cast(ChoiceField, cells["mix_id"]), self)
            water.followed.connect(self._judge)

    def _connect(self) -> None:
        for cell in self.cells():
            cell.changed.connect(self._judge)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            shortcut = QShortcut(QKeySequence(keys), self, context=Qt.ShortcutContext.WindowShortcut)
            shortcut.activated.connect(self.write)

    def _judge(self) -> None:
        readable = [cell.can_be_read() for cell in self.cells()]
        self._unread = not all(readable)
        if not self._unread:  # else what was found last stands, and so do the answers given to it
            self._problems = self._found(self._read())
        self._show_problems()
        self.judged.emit()

    def _found(self, entry: Entry) -> list[Problem]:
        found = list(self._check(entry))
        if entry.kind == "note" and not entry.note:
            found.append(Problem("note", say("Write what there is to note.")))
        return found

    def _show_problems(self) -> None:
        cells = self.cells()
        known = {cell.name for cell in cells}
        for cell in cells:
            if cell.field.is_refused:
                continue
            self._show_at(cell, [p for p in self._problems if p.field == cell.name])
        rest = [p.sentence for p in self._problems if p.field not in known]
        self.rest_label.setText(" ".join(rest))
        self.rest_label.setProperty("tone", "problem")
        self.rest_label.setVisible(bool(rest))

    def _show_at(self, cell: Cell, problems: list[Problem]) -> None:
        firm = [p.sentence for p in problems if not p.asks]
        asked = [p.sentence for p in problems if p.asks]
        if firm and (cell.touched or self._tried or self._entry_had(cell.name)):
            cell.refuse(" ".join(firm))
        else:
            cell.ask("" if firm else " ".join(asked))

    def _entry_had(self, name: str) -> bool:
        """Whether the entry came with something in that field, so that what is wrong with it is no surprise."""
        return name == "day" or bool(getattr(self._entry.detail, name, None))

    def _read(self) -> Entry:
        # What this form does not ask for stays as the entry has it.
        detail = replace(self._entry.detail, **{spec.name: _read_one(spec, cell) for spec, cell in self._own})
        return replace(
            self._entry,
            owner=self._common.chosen_owner(),
            day=self._common.chosen_day() or self._entry.day,
            at=self._common.chosen_time(),
            detail=detail,
            labour_minutes=self._common.minutes(),
            note=self._common.note.value(),
        )


def _read_one(spec: FieldSpec, cell: Cell) -> Any:
    value = cell.value()
    if value is None:
        return spec.empty
    return spec.read(value) if spec.read is not None else value
