"""A form in a window of its own, which stands beside the board and does not block it."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import QWidget

from growlog.desktop.entry_form.form import EntryForm
from growlog.desktop.look.marks import MarkSign
from growlog.desktop.look.widgets import DialogFrame
from growlog.words import say


class EntryDialog(DialogFrame):
    """Stays open until `finish`, so that a refused write loses nothing; who opened it listens to the form."""

    def __init__(self, form: EntryForm, subtitle: str = "", parent: QWidget | None = None) -> None:
        """subtitle: the crop and its day, as the day sheet names them."""
        super().__init__(say(form.entry.detail.label), subtitle, parent, 640)
        self.setObjectName("entryDialog")
        self.setModal(False)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.form = form
        self._ended = False
        self.header_row.insertWidget(0, MarkSign(form.entry.kind, 18))
        self.body.addWidget(form)
        self.cancel_button = self.add_button(say("Cancel"), name="cancel")
        self.write_button = self.add_button(say("Write"), "primary", name="write")
        self.write_button.setToolTip(say("Ctrl+Enter"))
        self.write_button.setDefault(False)  # Enter belongs to the fields: it adds a weight or a code
        self.write_button.clicked.connect(form.write)
        self.cancel_button.clicked.connect(self.reject)
        form.judged.connect(self._judged)
        self._judged()
        form.go_to_first_field()

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

    def _judged(self) -> None:
        open_questions = any(not cell.is_answered for cell in self.form.cells())
        self.set_note(say("Tick the answer to each question before it can be written.") if open_questions else "")
        self.write_button.setEnabled(not open_questions)
