"""A form in a window of its own, which stands beside the board and does not block it."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from growlog.desktop.entry_form.form import EntryForm
from growlog.desktop.look.marks import MarkSign
from growlog.desktop.look.widgets import Button, DialogFrame
from growlog.records.entry import Entry
from growlog.words import say, show_day_of_year

REPEAT_KEY = "F4"


class EntryDialog(DialogFrame):
    """Stays open until `finish`, so that a refused write loses nothing; who opened it listens to the form."""

    def __init__(
        self, form: EntryForm, subtitle: str = "", parent: QWidget | None = None, earlier: Entry | None = None
    ) -> None:
        """subtitle: the crop and its day, as the day sheet names them. earlier: what may be done again."""
        super().__init__(say(form.entry.detail.label), subtitle, parent, 640)
        self.setObjectName("entryDialog")
        self.setModal(False)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.form = form
        self._ended = False
        self.header_row.insertWidget(0, MarkSign(form.entry.kind, 18))
        self.body.addWidget(form)
        self._earlier = earlier
        self.repeat_button = self._make_repeat_button()
        self.cancel_button = self.add_button(say("Cancel"), name="cancel")
        self.write_button = self.add_button(say("Write"), "primary", name="write")
        self.write_button.setToolTip(say("Ctrl+Enter"))
        self.write_button.setDefault(False)  # Enter belongs to the fields: it adds a weight or a code
        self.write_button.clicked.connect(form.write)
        self.cancel_button.clicked.connect(self.reject)
        form.judged.connect(self._judged)
        self._judged()
        form.go_to_first_field()

    def repeat(self) -> None:
        """Fills in what was written last time."""
        if self._earlier is not None:
            self.form.repeat(self._earlier.detail)

    def reject(self) -> None:
        """Escape and Cancel."""
        self._end()
        super().reject()
        self.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Closing the window is cancelling, too."""
        self._end()
        super().closeEvent(event)

    def _end(self) -> None:
        if not self._ended:
            self._ended = True
            self.form.cancel()

    def finish(self) -> None:
        """The entry was written: closes without asking."""
        self._ended = True
        self.accept()
        self.close()

    def refuse(self, sentence: str) -> None:
        """The entry could not be written: says why, and keeps what was typed."""
        self.set_note(sentence)

    def _make_repeat_button(self) -> Button | None:
        if self._earlier is None:
            return None
        day = show_day_of_year(self._earlier.day)
        button = self.add_button(say("As on {day}  {key}", day=day, key=REPEAT_KEY), name="repeat", left=True)
        button.setToolTip(
            ", ".join(t for t in (self._earlier.detail.summary(), self._earlier.detail.second_line()) if t)
        )
        button.clicked.connect(self.repeat)
        QShortcut(QKeySequence(REPEAT_KEY), self).activated.connect(self.repeat)
        return button

    def _judged(self) -> None:
        open_questions = any(not cell.is_answered for cell in self.form.cells())
        self.set_note(say("Tick the answer to each question before it can be written.") if open_questions else "")
        self.write_button.setEnabled(not open_questions)
