"""What the tank holds, element by element, each on the range of the target."""

from collections.abc import Sequence

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from growlog.calculations.nutrients import ION_CHARGES, mmol_per_l
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import TextLabel
from growlog.desktop.mixer.range_mark import RangeMark
from growlog.desktop.mixer.wording import content_text
from growlog.services.mixer import ElementLine, Standing
from growlog.words import say

MG, MMOL, MEQ = "mg/L", "mmol/L", "meq/L"
UNITS = (MG, MMOL, MEQ)


class ElementRow(QObject):
    """The widgets of one element, laid into the grid of the list."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.name_label = TextLabel("", "strong")
        self.mark = RangeMark()
        self.value_label = TextLabel("", "strong")
        self.words_label = TextLabel("", "", "mute")
        for label in (self.value_label, self.words_label):
            label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)

    def widgets(self) -> tuple[QWidget, ...]:
        """From left to right."""
        return self.name_label, self.mark, self.value_label, self.words_label

    def show_line(self, line: ElementLine, unit: str) -> None:
        """An element in a unit."""
        part_of = "-" in line.key
        self.name_label.setText(line.label)
        self.name_label.setProperty("role", "unit" if part_of else "strong")
        self.name_label.style().polish(self.name_label)
        factor = factor_of(line.key, unit)
        value = value_in(line, unit)
        self.value_label.setText("–" if value is None else content_text(value))
        low = high = None
        if line.range is not None and factor is not None:
            low = None if line.range.low is None else line.range.low * factor
            high = None if line.range.high is None else line.range.high * factor
        self.mark.show_value(value, low, high)
        self.words_label.setText(words_of(line, unit, factor))
        spoken = (line.label, self.value_label.text(), unit, self.words_label.text())
        self.mark.setAccessibleName(" ".join(part for part in spoken if part))
        missed = line.standing in (Standing.BELOW, Standing.ABOVE)
        self.words_label.set_tone("problem" if missed else "mute")


class ElementList(QWidget):
    """Rows are kept and written anew, so that typing stays quick."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("elementList")
        self.rows: list[ElementRow] = []
        self._lines: tuple[ElementLine, ...] = ()
        self._unit = MG
        self.empty_label = TextLabel("", "", "mute", wraps=True)
        self._inner = QWidget()
        self._grid = QGridLayout(self._inner)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(10)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnStretch(1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self._inner)
        column.addWidget(self.empty_label)

    def show_lines(self, lines: Sequence[ElementLine], if_none: str) -> None:
        """What the tank holds; if_none is said where nothing is known of it."""
        self._lines = tuple(lines)
        self.empty_label.setText(if_none)
        self._write()

    def show_unit(self, unit: str) -> None:
        """Another unit: mg/L, mmol/L or meq/L."""
        self._unit = unit
        self._write()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The figures keep their columns at any width."""
        super().resizeEvent(event)
        self._grid.setColumnMinimumWidth(3, current().px(76))

    def _write(self) -> None:
        while len(self.rows) < len(self._lines):
            row, at = ElementRow(self._inner), len(self.rows)
            for column, widget in enumerate(row.widgets()):
                self._grid.addWidget(widget, at, column)
            self.rows.append(row)
        for number, row in enumerate(self.rows):
            here = number < len(self._lines)
            for widget in row.widgets():
                widget.setVisible(here)
            if here:
                row.show_line(self._lines[number], self._unit)
        self.empty_label.setVisible(not self._lines)
        self._inner.setVisible(bool(self._lines))


def factor_of(key: str, unit: str) -> float | None:
    """From mg/L to a unit; None where one element has no single charge, or none at all."""
    if unit == MG:
        return 1.0
    per_mg = mmol_per_l({key: 1.0})[key]
    if unit == MMOL:
        return per_mg
    return per_mg * abs(ION_CHARGES[key]) if key in ION_CHARGES else None


def value_in(line: ElementLine, unit: str) -> float | None:
    """The content in a unit; None where it carries no charge."""
    if unit == MG:
        return line.mg_per_l
    if unit == MMOL:
        return line.mmol_per_l
    return None if line.meq_per_l is None else abs(line.meq_per_l)


def words_of(line: ElementLine, unit: str, factor: float | None) -> str:
    """Where it stands, in the unit that is shown."""
    missed = line.standing in (Standing.BELOW, Standing.ABOVE)
    if line.standing is Standing.NO_TARGET and factor is not None and line.from_water_mg_per_l > 0:
        return say("{amount} from water", amount=content_text(line.from_water_mg_per_l * factor))
    if unit == MG or not missed:
        return line.words
    if factor is None:
        return say("below") if line.standing is Standing.BELOW else say("above")
    amount = content_text(line.off_by * factor)
    if line.standing is Standing.BELOW:
        return say("{amount} below", amount=amount)
    return say("{amount} above", amount=amount)
