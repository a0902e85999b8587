"""The reading of the line as rows: entries as they will stand in the log, what was not understood, what is asked."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QFrame, QScrollArea, QVBoxLayout, QWidget

from growlog.desktop.look.theme import theme_signal
from growlog.desktop.quick_line.reading_row import QUESTION, ReadingRow, ShownRow
from growlog.services.quick_line import LineProblem, LineReading, more_of, title_of
from growlog.words import say, say_count

_MOST_ROWS = 24
_LONGEST_QUOTE = 60


class ReadingView(QScrollArea):
    """As high as its rows, up to a limit; then it scrolls."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("quickLineReading")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        content = QWidget()
        content.setObjectName("scrolled")
        content.setMinimumWidth(1)
        self._column = QVBoxLayout(content)
        self._column.setContentsMargins(0, 4, 6, 0)
        self._column.setSpacing(0)
        self._rows: list[ReadingRow] = []
        self._highest_px = 200
        self.setWidget(content)
        theme_signal().changed.connect(self._fit)
        self.show_rows([])

    @property
    def rows(self) -> list[ReadingRow]:
        """The rows that are shown."""
        return [row for row in self._rows if not row.isHidden()]

    def show_rows(self, rows: list[ShownRow]) -> None:
        """Other rows."""
        if len(rows) > _MOST_ROWS:
            over = len(rows) - _MOST_ROWS
            more = say_count("and {n} more", "and {n} more", over)
            rows = [*rows[:_MOST_ROWS], ShownRow("", more, "", "mute")]
        while len(self._rows) < len(rows):
            self._rows.append(ReadingRow())
            self._column.addWidget(self._rows[-1])
        for row, shown in zip(self._rows, rows, strict=False):
            row.show_row(shown)
            row.show()
        for row in self._rows[len(rows) :]:
            row.hide()
        self.setVisible(bool(rows))
        self._fit()
        self.verticalScrollBar().setValue(0)

    def limit_height(self, highest_px: int) -> None:
        """How high it may become."""
        self._highest_px = highest_px
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Words wrap elsewhere at another width."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        self._column.invalidate()
        self._column.activate()
        needed = self._column.heightForWidth(max(1, self.viewport().width()))
        self.setFixedHeight(max(0, min(needed, self._highest_px)))


def rows_of(reading: LineReading) -> list[ShownRow]:
    """How a line was understood: first what was not, then each entry with what is wrong or asked about it."""
    rows = [
        ShownRow("problem", say("Not understood: {words}", words=_quoted(unread)), hint, "problem")
        for unread, hint in reading.unread_with_hints
    ]
    rows += [_problem_row(p) for p in reading.problems if p.draft is None and p.start is None]
    for number, draft in enumerate(reading.drafts):
        rows.append(ShownRow(draft.detail.kind, title_of(draft), more_of(draft)))
        rows += [_problem_row(p) for p in reading.problems if p.draft == number]
    return rows + [ShownRow("", more=remark) for remark in reading.remarks]


def message_row(sentence: str, state: str) -> ShownRow:
    """What came of Enter: state is "problem", "asks", or "" for a quiet word."""
    if state == "problem":
        return ShownRow("problem", sentence, tone="problem")
    return ShownRow(QUESTION, sentence) if state else ShownRow("", more=sentence)


def question_row(sentence: str) -> ShownRow:
    """A question about the entry above it, or of the logbook."""
    return ShownRow(QUESTION, more=sentence)


def _problem_row(problem: LineProblem) -> ShownRow:
    """A hint or a refusal stands below what it is about, without a sign of its own."""
    return question_row(problem.sentence) if problem.asks else ShownRow("", more=problem.sentence)


def _quoted(words: str) -> str:
    return words if len(words) <= _LONGEST_QUOTE else words[: _LONGEST_QUOTE - 1] + "…"
