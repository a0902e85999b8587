"""The quick line: a field, what it understood so far, and nothing written until Enter."""

from collections.abc import Callable, Iterable, Sequence

from PySide6.QtCore import QEvent, QObject, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.restyle import set_look_property
from growlog.desktop.look.widgets import announce
from growlog.desktop.quick_line.line_field import LineField
from growlog.desktop.quick_line.reading_row import ShownRow
from growlog.desktop.quick_line.reading_view import ReadingView, message_row, question_row, rows_of
from growlog.records.problems import Problem
from growlog.services.quick_line import LineContext, LineReading, LineWords, read_line
from growlog.words import say, say_count

_SHARE_OF_SHEET = 0.45


class QuickLinePanel(QWidget):
    """check: what the logbook says to a line that was understood. write: writes it, true if it went in."""

    help_wanted = Signal()
    left = Signal()

    def __init__(self, check: Callable[[LineReading], Iterable[Problem]], write: Callable[[LineReading], bool]) -> None:
        super().__init__()
        self.setObjectName("quickLine")
        self._check = check
        self._write = write
        self._context = LineContext()
        self._answered = ""  # the line whose questions were shown: Enter once more says yes
        self.reading = read_line("")
        self.field = LineField()
        self.field.setObjectName("quickLine.field")
        self.field.setPlaceholderText(say("Write what happened: 3 fruit 250 g"))
        self.field.setAccessibleName(say("Quick line"))
        self.help_button = IconButton("help", say("Words of the quick line (F1)"), self, token="mute")
        self.help_button.setObjectName("quickLine.help")
        self.view = ReadingView()
        self.message = ""
        self._place()
        self._connect()

    def show_context(self, context: LineContext, words: LineWords) -> None:
        """What is known beside the line from now on."""
        self.field.words = words
        if context != self._context:
            self._context = context
            self._read()

    def ask_again(self) -> None:
        """Another day or another state of the logbook: questions that were shown are asked anew."""
        if self._answered:
            self._read()

    def taken_back(self) -> None:
        """Something was undone: what was said to be written may stand no more."""
        if not self.field.text():
            self._read()

    def start(self) -> None:
        """Puts the cursor into the field."""
        self.field.setFocus()
        self.field.selectAll()

    def set_line(self, line: str) -> None:
        """Shows another line as if it had been typed."""
        self.field.setText(line)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """The reading takes no more than its share of the sheet around it."""
        if event.type() == QEvent.Type.Resize and isinstance(watched, QWidget):
            self.view.limit_height(round(watched.height() * _SHARE_OF_SHEET))
        return False

    def _place(self) -> None:
        line = QHBoxLayout()
        line.setSpacing(4)
        line.addWidget(self.field, 1)
        line.addWidget(self.help_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(20, 0, 12, 10)
        column.setSpacing(4)
        column.addLayout(line)
        column.addWidget(self.view)

    def _connect(self) -> None:
        self.field.textChanged.connect(self._read)
        self.field.confirmed.connect(self._confirm)
        self.field.help_wanted.connect(self.help_wanted)
        self.field.left.connect(self.left)
        self.help_button.clicked.connect(self.help_wanted)

    def _read(self) -> None:
        self._answered = ""
        self.reading = read_line(self.field.text(), self._context)
        self._say("")

    def _confirm(self) -> None:
        reading = self.reading
        if not reading.text.strip():
            return
        if not reading.can_be_written:
            self._refuse(_why_not(reading))
            return
        known = list(self._check(reading))
        refused = [p.sentence for p in known if not p.asks]
        if refused:
            self._refuse(refused[0])
            return
        asked = [p.sentence for p in reading.questions] + [p.sentence for p in known if p.asks]
        questions = list(dict.fromkeys(asked))
        if questions and self._answered != reading.text:
            self._ask(questions)
            return
        self._put_in(reading)

    def _ask(self, questions: list[str]) -> None:
        said = {p.sentence for p in self.reading.questions}
        more = [question_row(question) for question in questions if question not in said]
        self._say(say("Press Enter again if this is right."), "asks", more)
        self._answered = self.reading.text

    def _put_in(self, reading: LineReading) -> None:
        if not self._write(reading):
            self._refuse(say("What you typed is still here."))
            return
        self.field.keep(reading.text)
        self._say(say_count("{n} entry written.", "{n} entries written.", len(reading.drafts)))

    def _refuse(self, why: str) -> None:
        self._say(say("Nothing was written. {why}", why=why), "problem")

    def _say(self, sentence: str, state: str = "", more: Sequence[ShownRow] = ()) -> None:
        """Shows the reading with a message over it, or with what Enter does below it."""
        self.message = sentence
        set_look_property(self.field, "state", state)
        rows = [*rows_of(self.reading), *more]
        if sentence:
            rows.insert(0, message_row(sentence, state))
        elif self.reading.can_be_written and not self.reading.questions:
            rows.append(ShownRow("", more=say("Enter writes it.")))
        self.view.show_rows(rows)
        self.field.setAccessibleDescription(sentence)
        if sentence:
            announce(self.view, sentence)


def _why_not(reading: LineReading) -> str:
    if reading.unread:
        return say("Change what was not understood, or take it out.")
    return reading.refusals[0].sentence
