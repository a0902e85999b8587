"""Culls of a pick: rows of how many, why, and their weight."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.entry_form.display_units import METRIC
from growlog.desktop.entry_form.measure_field import MeasureField
from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.widgets import Button, ChoiceField, Field, FormGrid
from growlog.records.entry import Cull, CullCause
from growlog.words import say


class CullRow(QWidget):
    """One cause with its count and weight."""

    changed = Signal()

    def __init__(self, system: str) -> None:
        super().__init__()
        self.count = MeasureField("cull_count", say("How many"), name="cull_count")
        self.cause = ChoiceField(
            say("Cause"), [(c.value, say(c.label)) for c in CullCause], CullCause.MISSHAPEN.value, name="cull_cause"
        )
        self.weight = MeasureField("weight_g", say("Weight together"), system, name="cull_weight")
        self.remove_button = IconButton("close", say("Take this row out"))
        grid = FormGrid(3, 96)
        grid.add(self.count, self.cause, self.weight)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(grid, 1)
        row.addWidget(self.remove_button, 0, Qt.AlignmentFlag.AlignBottom)
        for field in (self.count, self.cause, self.weight):
            field.value_changed.connect(self.changed)

    def cull(self) -> Cull:
        """What stands in the row; a missing count is 0, which is refused."""
        count = self.count.value()
        return Cull(int(count or 0), CullCause(self.cause.value() or CullCause.MISSHAPEN), self.weight.value())

    def show_cull(self, cull: Cull) -> None:
        """Fills the row."""
        self.count.set_value(cull.cull_count or None)
        self.cause.set_value(cull.cause.value)
        self.weight.set_value(cull.weight_g)

    def check(self) -> bool:
        """Whether its numbers can be read."""
        return all([self.count.check(), self.weight.check()])


class CullsField(Field):
    """As many rows as there are causes, none at first."""

    def __init__(self, label: str, system: str = METRIC, name: str = "culls") -> None:
        self.holder = QWidget()
        self.rows: list[CullRow] = []
        self._system = system
        self._column = QVBoxLayout(self.holder)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        self.add_button = Button(say("Add culls"), "link", icon="plus", name="addCulls")
        self._column.addWidget(self.add_button, 0, Qt.AlignmentFlag.AlignLeft)
        super().__init__(label, self.holder, "", name)
        self.setFocusProxy(self.add_button)
        self.add_button.clicked.connect(self._add_clicked)

    def value(self) -> tuple[Cull, ...]:
        """The culls of all rows."""
        return tuple(row.cull() for row in self.rows)

    def set_value(self, culls: tuple[Cull, ...]) -> None:
        """Shows culls without emitting value_changed."""
        for row in list(self.rows):
            self._take_out(row)
        for cull in culls:
            self._add_row().show_cull(cull)

    def check(self) -> bool:
        """Whether all rows can be read."""
        return [row.check() for row in self.rows].count(False) == 0

    def _add_clicked(self) -> None:
        self._add_row().count.setFocus(Qt.FocusReason.OtherFocusReason)
        self.value_changed.emit()

    def _add_row(self) -> CullRow:
        row = CullRow(self._system)
        self.rows.append(row)
        self._column.insertWidget(len(self.rows) - 1, row)
        row.show()
        row.changed.connect(self.value_changed)
        row.remove_button.clicked.connect(partial(self._remove, row))
        return row

    def _remove(self, row: CullRow) -> None:
        self._take_out(row)
        self.add_button.setFocus(Qt.FocusReason.OtherFocusReason)
        self.value_changed.emit()

    def _take_out(self, row: CullRow) -> None:
        self.rows.remove(row)
        self._column.removeWidget(row)
        row.hide()
        row.deleteLater()
