"""Asks under which name a mix is kept."""

from collections.abc import Iterable

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import DialogFrame, NoteField, TextField, TextLabel
from growlog.records.problems import Problem
from growlog.words import say


class SaveMixDialog(DialogFrame):
    """Emits name and note; stays open until its caller finishes it."""

    confirmed = Signal(str, str)

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(say("Save mix"), "", parent, 420)
        self.setObjectName("saveMix")
        self.name_field = TextField(say("Name"), name, required=True, longest=80, name="mix_name")
        self.note_field = NoteField(say("Note"), name="mix_note", lines=2)
        self.body.addWidget(self.name_field)
        self.body.addWidget(self.note_field)
        hint = say("A changed mix becomes the next edition; feeds of before keep the edition they used.")
        self.body.addWidget(TextLabel(hint, "small", wraps=True))
        self.body.addStretch(1)
        self.leave_button = self.add_button(say("Cancel"), name="leave")
        self.write_button = self.add_button(say("Save mix"), "primary", "write")
        self.leave_button.clicked.connect(self.reject)
        self.write_button.clicked.connect(self.confirm)
        self.name_field.setFocus()
        self.name_field.line.selectAll()

    def confirm(self) -> None:
        """Emits the name where there is one."""
        if self.name_field.check():
            self.confirmed.emit(self.name_field.value(), self.note_field.value())

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """What the logbook refused."""
        self.name_field.show_problem(" ".join(p.sentence for p in problems))
