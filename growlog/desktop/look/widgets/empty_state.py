"""What a screen shows while it has nothing: what to do first, in one sentence and one button."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets.buttons import Button
from growlog.desktop.look.widgets.labels import TextLabel


class EmptyState(QWidget):
    """One sentence and, where there is something to do, one button."""

    chosen = Signal()

    def __init__(self, sentence: str, button: str = "", role: str = "primary", name: str = "") -> None:
        super().__init__()
        if name:
            self.setObjectName(name)
        self.sentence_label = TextLabel(sentence, "subtitle", wraps=True)
        self.sentence_label.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.sentence_label.setMinimumWidth(160)
        self.sentence_label.setMaximumWidth(current().px(420))
        self.button = Button(button, role, name="start")
        self.button.setVisible(bool(button))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 16, 16, 16)
        layout.setSpacing(12)
        layout.addStretch(1)
        row = QHBoxLayout()
        row.addStretch(1)
        row.addWidget(self.sentence_label, 10)
        row.addStretch(1)
        layout.addLayout(row)
        layout.addWidget(self.button, 0, Qt.AlignmentFlag.AlignHCenter)
        layout.addStretch(2)
        self.button.clicked.connect(self._clicked)

    def set_sentence(self, sentence: str, button: str = "") -> None:
        """Other words; an empty button text hides the button."""
        self.sentence_label.setText(sentence)
        self.button.setText(button)
        self.button.setVisible(bool(button))

    def _clicked(self) -> None:
        self.chosen.emit()
