"""A section of the review as a table: the crop's figure, the packet and earlier crops beside it."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QGridLayout, QSizePolicy, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import Button, Rule, TextLabel
from growlog.services.review.model import ReviewLine, ReviewSection
from growlog.words import say

_LABEL, _VALUE, _PACKET, _FIRST_BESIDE = range(4)
_WIDTHS = {_LABEL: 34, _VALUE: 34, _PACKET: 12}
_BESIDE_WIDTH = 18
_NOTE_PX = 40
_ROW_PX = 25  # with or without a note
_COLUMN_PX = 86  # what a column of an earlier crop needs at least
_UNBROKEN_SLASH = "/\u2060"  # so that no line ends within mL/L


class NoteButton(Button):
    """The small number behind a figure; pressed, it asks how the figure is worked out."""

    asked = Signal(int)

    def __init__(self, line: ReviewLine, note: int) -> None:
        super().__init__(str(note), "link", name=f"note.{line.key}")
        self._note = note
        self.setToolTip(say("How this is worked out"))
        self.setAccessibleName(say("How this is worked out: {what}", what=line.label))
        self.clicked.connect(self._ask)

    def _ask(self) -> None:
        self.asked.emit(self._note)


class LineTable(QWidget):
    """Columns of one width in every table of the page, so that figures stand below each other."""

    note_asked = Signal(int)

    def __init__(self, section: ReviewSection, beside: Sequence[str], *, packet: bool) -> None:
        """beside: the names of the earlier crops that are shown. packet: whether there is a column for it."""
        super().__init__()
        self.section = section
        self._beside = list(beside)
        self._packet = packet
        self._columns: dict[int, list[QWidget]] = {}
        self._grid = QGridLayout()
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setHorizontalSpacing(12)
        self._grid.setVerticalSpacing(2)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        column.addLayout(self._grid)
        self._fill()
        self.left_out = TextLabel("", "", "mute", wraps=True)
        self.left_out.hide()
        column.addWidget(self.left_out)
        for sentence in section.sentences:
            column.addWidget(TextLabel(sentence, "", "mute" if section.lines else "", wraps=True))

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Shows as many earlier crops as there is room for, one at least."""
        super().resizeEvent(event)
        room = self.width() - current().px(420)
        fitting = max(1, room // current().px(_COLUMN_PX))
        for place in range(len(self._beside)):
            self._show_column(_FIRST_BESIDE + place, place < fitting)
        self._say_left_out(self._beside[fitting:])

    def shown_beside(self) -> int:
        """How many earlier crops stand beside it now."""
        return sum(not self._columns[_FIRST_BESIDE + i][0].isHidden() for i in range(len(self._beside)))

    def _say_left_out(self, names: Sequence[str]) -> None:
        """Which earlier crops have no room; they come back in a wider window."""
        words = say("No room here for: {names}. A wider window shows them.", names="; ".join(names)) if names else ""
        self.left_out.setText(words)
        self.left_out.setVisible(bool(names))

    def _show_column(self, column: int, shown: bool) -> None:
        for widget in self._columns.get(column, []):
            widget.setVisible(shown)
        self._grid.setColumnStretch(column, _BESIDE_WIDTH if shown else 0)

    def _fill(self) -> None:
        self._head()
        for number, line in enumerate(self.section.lines):
            self._add(line, 2 * number + 2)
            self._grid.addWidget(Rule(), 2 * number + 3, 0, 1, -1)
        for column, width in _WIDTHS.items():
            self._grid.setColumnStretch(column, width if column != _PACKET or self._packet else 0)
        for place in range(len(self._beside)):
            self._grid.setColumnStretch(_FIRST_BESIDE + place, _BESIDE_WIDTH)
        self._grid.setColumnMinimumWidth(self._note_column, current().px(_NOTE_PX))

    @property
    def _note_column(self) -> int:
        return _FIRST_BESIDE + len(self._beside)

    def _head(self) -> None:
        self._grid.setRowMinimumHeight(0, current().px(_ROW_PX))
        title = TextLabel(self.section.title, "heading", wraps=True)
        title.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._grid.addWidget(title, 0, _LABEL, 1, 2)
        if not self.section.lines:
            return
        if self._packet:
            self._cell(say("packet"), 0, _PACKET, "small")
        for place, name in enumerate(self._beside):
            self._cell(name, 0, _FIRST_BESIDE + place, "small")
        self._grid.addWidget(Rule(), 1, 0, 1, -1)

    def _add(self, line: ReviewLine, row: int) -> None:
        self._grid.setRowMinimumHeight(row, current().px(_ROW_PX))
        self._cell(line.label, row, _LABEL, "", "mute", left=True)
        if line.known:
            self._cell(line.value, row, _VALUE, "strong")
        else:
            self._cell(say("no data"), row, _VALUE, "", "mute")
        if self._packet:
            self._cell(line.packet, row, _PACKET, "", "mute")
        for place in range(len(self._beside)):
            text = line.beside[place] if place < len(line.beside) else ""
            self._cell(text or "\u2013", row, _FIRST_BESIDE + place, "", "mute")
        if line.note is not None:
            button = NoteButton(line, line.note)
            button.asked.connect(self.note_asked)
            self._grid.addWidget(button, row, self._note_column, Qt.AlignmentFlag.AlignRight)

    def _cell(self, text: str, row: int, column: int, role: str, tone: str = "", *, left: bool = False) -> None:
        label = TextLabel(text.replace("/", _UNBROKEN_SLASH), role, tone, wraps=True)
        side = Qt.AlignmentFlag.AlignLeft if left else Qt.AlignmentFlag.AlignRight
        label.setAlignment(side | Qt.AlignmentFlag.AlignVCenter)
        label.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        self._grid.addWidget(label, row, column)
        self._columns.setdefault(column, []).append(label)
