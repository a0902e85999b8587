"""What all fields share: a label, the editor, a unit behind it and a line below for what is wrong."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from growlog.desktop.look.restyle import set_look_property
from growlog.desktop.look.widgets.labels import TextLabel


class Field(QWidget):
    """A label above an editor. `refusal` says what is wrong with the value, `question` what is unusual about it."""

    value_changed = Signal()
    editing_finished = Signal()

    def __init__(self, label: str, editor: QWidget, unit: str = "", name: str = "", beside: bool = False) -> None:
        """beside: the label stands left of the editor instead of above. An empty label is not shown."""
        super().__init__()
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        self.editor = editor
        self.label = TextLabel(label, "field-label")
        self.label.setBuddy(editor)
        self.label.setVisible(bool(label))
        self.unit_label = TextLabel(unit, "unit")
        self.unit_label.setVisible(bool(unit))
        self.message_label = TextLabel("", "message", wraps=True)
        self.message_label.hide()
        self.setFocusProxy(editor)
        editor.setAccessibleName(f"{label} {unit}".strip())
        if name:
            self.setObjectName(name)
            editor.setObjectName(f"{name}.editor")
        self._refusal = ""
        self._question = ""
        self._place(beside)

    def _place(self, beside: bool) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        self.row = QHBoxLayout()
        self.row.setSpacing(8)
        if beside:
            self.row.addWidget(self.label)
        else:
            column.addWidget(self.label)
        self.row.addWidget(self.editor)
        self.row.addWidget(self.unit_label)
        column.addLayout(self.row)
        column.addWidget(self.message_label)

    @property
    def refusal(self) -> str:
        """The sentence that says why the value is refused, or nothing."""
        return self._refusal

    @property
    def question(self) -> str:
        """The sentence that asks whether an unusual value is meant, or nothing."""
        return self._question

    @property
    def is_refused(self) -> bool:
        """Whether the value cannot be taken as it stands."""
        return bool(self._refusal)

    def check(self) -> bool:
        """Judges what stands there as if typing had ended; false if it is refused."""
        return not self.is_refused

    def show_problem(self, sentence: str) -> None:
        """Says why the value is refused; an empty sentence takes it back."""
        self._say(sentence, "")

    def show_question(self, sentence: str) -> None:
        """Asks about an unusual value; an empty sentence takes it back."""
        self._say("", sentence)

    def clear_message(self) -> None:
        """Nothing is wrong."""
        self._say("", "")

    def set_label(self, text: str) -> None:
        """Other words over the editor."""
        self.label.setText(text)
        self.label.setVisible(bool(text))
        self.editor.setAccessibleName(f"{text} {self.unit_label.text()}".strip())

    def set_unit(self, unit: str) -> None:
        """Another unit behind the editor."""
        self.unit_label.setText(unit)
        self.unit_label.setVisible(bool(unit))
        self.editor.setAccessibleName(f"{self.label.text()} {unit}".strip())

    def _say(self, refusal: str, question: str) -> None:
        self._refusal = refusal
        self._question = question
        state = "problem" if refusal else "asks" if question else ""
        set_look_property(self.editor, "state", state)
        set_look_property(self.message_label, "state", state)
        self.message_label.setText(refusal or question)
        self.message_label.setVisible(bool(state))
        self.editor.setAccessibleDescription(refusal or question)
