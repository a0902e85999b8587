"""Small fields that the forms add to the shared ones: a tick, and a choice among a few words."""

from collections.abc import Sequence

from PySide6.QtWidgets import QButtonGroup, QCheckBox, QRadioButton, QWidget

from growlog.desktop.look.widgets import Field, FlowLayout


class TickField(Field):
    """One thing that is so or is not."""

    def __init__(self, label: str, name: str = "") -> None:
        self.box = QCheckBox(label)
        super().__init__("", self.box, "", name)
        self.set_label("\u00a0")  # keeps the box level with the editors beside it
        self.box.setAccessibleName(label)
        self.box.toggled.connect(self._toggled)

    def value(self) -> bool:
        """Whether it is ticked."""
        return self.box.isChecked()

    def set_value(self, ticked: bool) -> None:
        """Ticks without emitting value_changed."""
        self.box.blockSignals(True)
        self.box.setChecked(ticked)
        self.box.blockSignals(False)

    def _toggled(self) -> None:
        self.value_changed.emit()


class WordsChoice(Field):
    """A few words, one of which holds; arrow keys go from one to the next."""

    def __init__(self, label: str, choices: Sequence[tuple[str, str]], name: str = "") -> None:
        self.holder = QWidget()
        row = FlowLayout(self.holder, 12)
        self._group = QButtonGroup(self.holder)
        self._buttons: dict[str, QRadioButton] = {}
        for key, words in choices:
            button = QRadioButton(words)
            button.setObjectName(f"{name}.{key}")
            self._group.addButton(button)
            self._buttons[key] = button
            row.addWidget(button)
        super().__init__(label, self.holder, "", name)
        self.setFocusProxy(next(iter(self._buttons.values())))
        self._group.buttonToggled.connect(self._toggled)

    def value(self) -> str | None:
        """The key of what holds."""
        return next((key for key, button in self._buttons.items() if button.isChecked()), None)

    def set_value(self, key: str) -> None:
        """Chooses without emitting value_changed."""
        self._group.blockSignals(True)
        self._buttons[str(key)].setChecked(True)
        self._group.blockSignals(False)

    def button(self, key: str) -> QRadioButton:
        """The button of a key."""
        return self._buttons[key]

    def _toggled(self, button: QRadioButton, down: bool) -> None:
        if down:
            self.value_changed.emit()
