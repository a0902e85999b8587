"""What each column is read as: heading, a few of its cells, the field, the unit, and whether it is a sum so far."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtWidgets import QCheckBox, QGridLayout, QScrollArea, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import ElidedLabel, SectionTitle, TextLabel
from growlog.desktop.look.widgets.choice_field import CalmComboBox
from growlog.records.column_map import MappedColumn
from growlog.services.old_notes.note_fields import note_fields
from growlog.services.old_notes.old_table import OldTable
from growlog.services.old_notes.told_columns import with_field
from growlog.services.old_notes.unit_words import same_unit, units_offered
from growlog.words import say

_SAMPLES = 4
_FEWEST_ROWS, _MOST_ROWS = 2, 8  # seen at once; the others are scrolled to
_ROW_PX = 40


class ColumnLine:
    """The widgets of one column."""

    def __init__(self, heading: str, sample: str, place: int) -> None:
        self.heading_label = ElidedLabel(heading, "strong")
        self.sample_label = ElidedLabel(sample, "unit")
        self.field_box = CalmComboBox()
        self.field_box.setObjectName(f"field{place}")
        self.field_box.setMinimumContentsLength(7)
        self.field_box.setAccessibleName(say("{column} is read as", column=heading))
        self.field_box.addItem(say("left out"), "")
        for field in note_fields().values():
            self.field_box.addItem(field.words, field.key)
        self.unit_box = CalmComboBox()
        self.unit_box.setObjectName(f"unit{place}")
        self.unit_box.setMinimumContentsLength(4)
        self.unit_box.setAccessibleName(say("Unit of {column}", column=heading))
        self.sum_box = QCheckBox(say("sum so far"))
        self.sum_box.setObjectName(f"sum{place}")
        self.sum_box.setAccessibleName(say("{column} holds the sum so far", column=heading))

    def widgets(self) -> tuple[QWidget, ...]:
        """In the order of the columns of the grid."""
        return self.heading_label, self.sample_label, self.field_box, self.unit_box, self.sum_box

    def show_use(self, column: MappedColumn) -> None:
        """The use of the column, without announcing it."""
        field = note_fields().get(column.field)
        for box in (self.field_box, self.unit_box, self.sum_box):
            box.blockSignals(True)
        self.field_box.setCurrentIndex(max(0, self.field_box.findData(column.field)))
        kept = "" if field is None else field.unit
        units = list(units_offered(kept))
        if column.unit and not any(same_unit(column.unit, unit, kept) for unit in units):
            units.append(column.unit)
        self.unit_box.clear()
        self.unit_box.addItems(units)
        self.unit_box.setCurrentIndex(next((i for i, u in enumerate(units) if same_unit(column.unit, u, kept)), 0))
        self.unit_box.setVisible(len(units) > 1)
        self.sum_box.setChecked(column.cumulative)
        self.sum_box.setVisible(field is not None and field.can_add_up)
        for box in (self.field_box, self.unit_box, self.sum_box):
            box.blockSignals(False)


class LowArea(QScrollArea):
    """Asks for no more height than it must have; what is left over is shared out."""

    def sizeHint(self) -> QSize:
        """Its least height."""
        return QSize(super().sizeHint().width(), self.minimumHeight())


class ColumnsPanel(QWidget):
    """One line per column; changed tells the new use of all."""

    changed = Signal(object)  # tuple[MappedColumn, ...]

    def __init__(self) -> None:
        super().__init__()
        self._columns: tuple[MappedColumn, ...] = ()
        self.lines: list[ColumnLine] = []
        self.hint_label = TextLabel("", "small", wraps=True)
        self._area = LowArea()
        self._area.setWidgetResizable(True)
        self._area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        layout.addWidget(SectionTitle(say("What the columns are read as")))
        layout.addWidget(self.hint_label)
        layout.addWidget(self._area)
        self.hint_label.hide()

    def show_table(self, table: OldTable, columns: Sequence[MappedColumn], hint: str) -> None:
        """The columns of another file."""
        self.hint_label.setText(hint)
        self.hint_label.setVisible(bool(hint))
        inside = QWidget()
        inside.setObjectName("scrolled")
        grid = QGridLayout(inside)
        grid.setContentsMargins(0, 4, 8, 4)
        grid.setHorizontalSpacing(12)
        grid.setVerticalSpacing(6)
        self.lines = []
        for place, heading in enumerate(table.headings):
            sample = ", ".join(str(cell) for cell in table.column(place)[:_SAMPLES])
            line = ColumnLine(heading, sample, place)
            for column, widget in enumerate(line.widgets()):
                grid.addWidget(widget, place, column)
            line.field_box.currentIndexChanged.connect(partial(self._field_chosen, place))
            line.unit_box.currentIndexChanged.connect(partial(self._detail_chosen, place))
            line.sum_box.toggled.connect(partial(self._detail_chosen, place))
            self.lines.append(line)
        for column, stretch in enumerate((3, 4, 5, 0, 0)):
            grid.setColumnStretch(column, stretch)
        grid.setColumnMinimumWidth(3, current().px(92))
        grid.setColumnMinimumWidth(4, current().px(96))
        grid.setRowStretch(len(self.lines), 1)
        self._area.setWidget(inside)
        row_px = current().px(_ROW_PX)
        self._area.setMinimumHeight(row_px * min(len(self.lines), _FEWEST_ROWS) + 12)
        self._area.setMaximumHeight(row_px * min(len(self.lines), _MOST_ROWS) + 12)
        self.show_columns(columns)

    def show_columns(self, columns: Sequence[MappedColumn]) -> None:
        """Another use of the same columns."""
        self._columns = tuple(columns)
        for line, column in zip(self.lines, self._columns, strict=True):
            line.show_use(column)

    def choose(self, place: int, field: str) -> None:
        """Reads a column as another field."""
        self.show_columns(with_field(self._columns, place, field))
        self.changed.emit(self._columns)

    def _field_chosen(self, place: int, _index: int) -> None:
        self.choose(place, str(self.lines[place].field_box.currentData()))

    def _detail_chosen(self, place: int, _value: object) -> None:
        line, before = self.lines[place], self._columns[place]
        after = MappedColumn(before.column, before.field, line.unit_box.currentText(), line.sum_box.isChecked())
        self._columns = (*self._columns[:place], after, *self._columns[place + 1 :])
        self.changed.emit(self._columns)
