"""Figures in rows: what it is, how much, within what, and a button that shows how it is worked out."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from growlog.calculations.explained_figure import Figure
from growlog.desktop.explanation import show_explanation
from growlog.desktop.explanation.figure_words import range_text, value_text
from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import TextLabel
from growlog.words import say

_MORE_PX, _BUTTON_PX = 170, 26


@dataclass(frozen=True)
class FigureLine:
    """A row. more: a second word such as a day or a range; figure: None where there is nothing to explain."""

    words: str
    value: str
    more: str = ""
    figure: Figure | None = None


def line_of(figure: Figure, words: str) -> FigureLine:
    """A row of a figure, its range beside it."""
    return FigureLine(words, value_text(figure.value, figure.unit), range_text(figure), figure)


class FigureGrid(QWidget):
    """Shows rows; another set replaces them."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self.setObjectName(name)
        self._names: Mapping[str, str] = {}
        self._figures: list[Figure] = []
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(16)
        self._grid.setVerticalSpacing(4)
        self._grid.setColumnStretch(0, 1)
        self._grid.setColumnMinimumWidth(2, current().px(_MORE_PX))

    def show_lines(self, lines: Sequence[FigureLine]) -> None:
        """All rows anew."""
        while (item := self._grid.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        self._figures = [line.figure for line in lines if line.figure is not None]
        self._names = {line.figure.key: line.words for line in lines if line.figure is not None}
        for number, line in enumerate(lines):
            self._add(number, line)

    def texts(self) -> list[str]:
        """What the rows say."""
        return [label.text() for label in self.findChildren(TextLabel) if label.text() and not label.isHidden()]

    def _add(self, row: int, line: FigureLine) -> None:
        self._grid.setRowMinimumHeight(row, current().px(_BUTTON_PX))
        right = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter
        self._grid.addWidget(TextLabel(line.words, wraps=True), row, 0)
        self._grid.addWidget(TextLabel(line.value, "strong"), row, 1, right)
        self._grid.addWidget(TextLabel(line.more, "small", "mute"), row, 2, right)
        if line.figure is not None:
            button = IconButton("help", say("How this is worked out: {words}", words=line.words))
            button.setObjectName(f"explain-{line.figure.key}")
            button.setFixedSize(current().px(_BUTTON_PX), current().px(_BUTTON_PX))
            button.clicked.connect(partial(self._explain, line.figure.key))
            self._grid.addWidget(button, row, 3)

    def _explain(self, key: str, _checked: bool = False) -> None:
        show_explanation(self._figures, self.window(), self._names, key)
