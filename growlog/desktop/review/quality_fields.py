"""Taste, shape and keeping in the grower's own words, changed in their place."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, FormGrid, TextField, TextLabel
from growlog.words import say

KEYS = ("taste", "fruit_shape", "keeping")


class QualityFields(QWidget):
    """Announces the words once they are to be kept."""

    saved = Signal(object)  # dict[str, str]

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("quality")
        self.fields = {
            "taste": TextField(say("Taste"), name="taste", placeholder=say("such as mild, nutty")),
            "fruit_shape": TextField(say("Shape"), name="fruit_shape", placeholder=say("such as round, even")),
            "keeping": TextField(say("Keeping"), name="keeping", placeholder=say("such as two weeks in the fridge")),
        }
        self._kept = dict.fromkeys(KEYS, "")
        self.save_button = Button(say("Keep these words"), name="keepQuality")
        self.save_button.setEnabled(False)
        grid = FormGrid(3, 170)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(TextLabel(say("Quality in your own words"), "heading"))
        column.addWidget(grid)
        column.addWidget(self.save_button, 0, Qt.AlignmentFlag.AlignLeft)
        for field in self.fields.values():
            grid.add(field)
            field.value_changed.connect(self._edited)
        self.save_button.clicked.connect(self.save)

    def show_words(self, words: dict[str, str]) -> None:
        """What is kept; words that are being typed stay."""
        for key, field in self.fields.items():
            if field.value() == self._kept[key]:
                field.set_value(words.get(key, ""))
        self._kept = {key: words.get(key, "").strip() for key in KEYS}
        self._edited()

    def save(self) -> None:
        """Announces the words."""
        self.saved.emit({key: field.value() for key, field in self.fields.items()})

    def _edited(self) -> None:
        changed = any(field.value() != self._kept[key] for key, field in self.fields.items())
        self.save_button.setEnabled(changed)
