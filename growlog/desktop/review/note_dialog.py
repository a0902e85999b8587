"""How a figure of the review is worked out: one of its numbered notes."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import ChoiceField, DialogFrame, SectionTitle, TextLabel
from growlog.services.review.model import ReviewNote
from growlog.words import say


class NoteDialog(DialogFrame):
    """Shows one note; the others can be chosen."""

    def __init__(self, notes: Sequence[ReviewNote], number: int, parent: QWidget | None = None) -> None:
        super().__init__(say("How this is worked out"), "", parent, 520)
        self.setObjectName("reviewNote")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self._notes = {str(note.number): note for note in notes}
        choices = [(key, f"{note.number}  {note.title}") for key, note in self._notes.items()]
        self.choice = ChoiceField(say("Figure"), choices, str(number), name="note")
        self.body.addWidget(self.choice)
        self.parts: dict[str, TextLabel] = {}
        self._titles: dict[str, SectionTitle] = {}
        for key, title in (("method", say("The way")), ("inputs", say("What went in")), ("source", say("Source")),
                           ("sure", say("How sure"))):  # fmt: skip
            self._titles[key] = SectionTitle(title)
            self.parts[key] = TextLabel("", wraps=True)
            self.parts[key].setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            self.body.addWidget(self._titles[key])
            self.body.addWidget(self.parts[key])
        self.body.addStretch(1)
        self.close_button = self.add_button(say("Close"), name="close")
        self.close_button.clicked.connect(self.close)
        self.choice.value_changed.connect(self._show)
        self._show()

    def show_note(self, number: int) -> None:
        """Another note."""
        self.choice.set_value(str(number))
        self._show()

    def _show(self) -> None:
        note = self._notes.get(self.choice.value() or "")
        for key, label in self.parts.items():
            text = "" if note is None else str(getattr(note, key))
            label.setText(text.replace("; ", "\n") if key == "inputs" else text)
            label.setVisible(bool(text))
            self._titles[key].setVisible(bool(text))
