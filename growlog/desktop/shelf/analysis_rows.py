"""The guaranteed analysis: a row for each nutrient that the label states."""

from collections.abc import Iterable, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QVBoxLayout, QWidget

from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.widgets import Button, ChoiceField, NumberField, TextLabel
from growlog.desktop.shelf.label_words import nutrient_choices
from growlog.records.problems import Problem
from growlog.records.product import LabelShare
from growlog.words import say

_MOST_PERCENT = 100


class AnalysisRow(QWidget):
    """A nutrient and its per cent."""

    changed = Signal()
    removed = Signal(object)

    def __init__(self, number: int, share: LabelShare | None = None) -> None:
        super().__init__()
        self.nutrient = ChoiceField(
            "", nutrient_choices(), share.nutrient if share else None, name=f"nutrient.{number}"
        )
        self.nutrient.editor.setAccessibleName(say("Nutrient"))
        self.percent = NumberField("", "%", 0, _MOST_PERCENT, decimals=5, name=f"percent.{number}")
        self.percent.editor.setAccessibleName(say("Per cent"))
        if share is not None:
            self.percent.set_value(share.label_percent)
        self.remove_button = IconButton("close", say("Take this row out"))
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(8)
        grid.setColumnStretch(0, 3)
        grid.setColumnStretch(1, 2)
        grid.addWidget(self.nutrient, 0, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self.percent, 0, 1, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self.remove_button, 0, 2, Qt.AlignmentFlag.AlignTop)
        self.nutrient.value_changed.connect(self.changed)
        self.percent.value_changed.connect(self.changed)
        self.remove_button.clicked.connect(self._remove)

    @property
    def is_blank(self) -> bool:
        """Whether nothing was chosen or typed in it."""
        return self.nutrient.value() is None and self.percent.is_empty()

    def check(self) -> bool:
        """A row that was begun names its nutrient and its per cent."""
        if self.is_blank:
            return True
        self.percent.required = True
        return self.nutrient.check() & self.percent.check()

    def share(self) -> LabelShare | None:
        """The row as it stands; None where something is missing."""
        word, percent = self.nutrient.value(), self.percent.value()
        return None if word is None or percent is None else LabelShare(word, float(percent))

    def _remove(self) -> None:
        self.removed.emit(self)


class AnalysisRows(QWidget):
    """Rows to fill in, one empty to begin with, and what is said of them as a whole."""

    changed = Signal()

    def __init__(self, shares: Sequence[LabelShare]) -> None:
        super().__init__()
        self.setObjectName("analysis")
        self.rows: list[AnalysisRow] = []
        self._made = 0
        self._column = QVBoxLayout()
        self._column.setSpacing(6)
        self.add_button = Button(say("Another nutrient"), "link", name="addNutrient")
        self.message = TextLabel("", "message", wraps=True)
        self.message.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(self._column)
        column.addWidget(self.add_button, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.message)
        for share in shares:
            self._add(share)
        if not shares:
            self._add(None)
        self.add_button.clicked.connect(self._add_empty)

    def shares(self) -> tuple[LabelShare, ...]:
        """The analysis as it stands, without rows that are not finished."""
        return tuple(share for row in self.rows if (share := row.share()) is not None)

    def check(self) -> bool:
        """Whether every row can be read."""
        fit = [row.check() for row in self.rows]
        if not all(fit):
            row = self.rows[fit.index(False)]
            (row.nutrient if row.nutrient.is_refused else row.percent).setFocus()
        return all(fit)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What is wrong with a nutrient beside its row, what is wrong with all of them below."""
        left, asked = [], True
        for problem in problems:
            row = next((r for r in self.rows if r.nutrient.value() == problem.field), None)
            if row is not None:
                row.percent.show_problem(problem.sentence)
            else:
                left.append(problem.sentence)
                asked = asked and problem.asks
        self.message.setText(" ".join(left))
        self.message.setProperty("state", "asks" if asked else "problem")
        self.message.style().polish(self.message)
        self.message.setVisible(bool(left))

    def _add_empty(self) -> None:
        self._add(None)
        self.rows[-1].nutrient.setFocus()

    def _add(self, share: LabelShare | None) -> None:
        row = AnalysisRow(self._made, share)
        self._made += 1
        row.changed.connect(self.changed)
        row.removed.connect(self._take_out)
        self.rows.append(row)
        self._column.addWidget(row)

    def _take_out(self, row: AnalysisRow) -> None:
        self.rows.remove(row)
        row.hide()
        row.deleteLater()
        self.add_button.setFocus()
        self.changed.emit()
