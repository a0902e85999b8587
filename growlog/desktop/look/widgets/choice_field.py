"""One of a few things, by name; what is kept is its key."""

from collections.abc import Sequence

from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QComboBox

from growlog.desktop.look.widgets.field import Field
from growlog.words import say


class ChoiceField(Field):
    """A list to choose from. choices: pairs of key and words; none: words for no choice, if that is allowed."""

    def __init__(
        self,
        label: str,
        choices: Sequence[tuple[str, str]],
        value: str | None = None,
        none: str = "",
        name: str = "",
        beside: bool = False,
    ) -> None:
        self.box = CalmComboBox()
        super().__init__(label, self.box, "", name, beside)
        self._none = none
        self.set_choices(choices, value)
        self.box.currentIndexChanged.connect(self._chosen)

    def set_choices(self, choices: Sequence[tuple[str, str]], value: str | None = None) -> None:
        """Other things to choose from; says nothing of the change."""
        self.box.blockSignals(True)
        self.box.clear()
        if self._none:
            self.box.addItem(self._none, None)
        for key, words in choices:
            self.box.addItem(words, key)
        self.box.blockSignals(False)
        self.set_value(value)

    def value(self) -> str | None:
        """The key of what is chosen."""
        key = self.box.currentData()
        return None if key is None else str(key)

    def set_value(self, key: str | None) -> None:
        """Chooses without emitting value_changed; an unknown key leaves the field without a choice."""
        self.box.blockSignals(True)
        self.box.setCurrentIndex(self.box.findData(key) if key is not None else (0 if self._none else -1))
        self.box.blockSignals(False)
        self.clear_message()

    def check(self) -> bool:
        """False, with a sentence, if nothing is chosen where something must be."""
        if not self._none and self.value() is None:
            self.show_problem(say("Choose one."))
        return not self.is_refused

    def _chosen(self) -> None:
        self.clear_message()
        self.value_changed.emit()
        self.editing_finished.emit()


class CalmComboBox(QComboBox):
    """A list that the wheel does not change by accident while a form is scrolled."""

    def __init__(self) -> None:
        super().__init__()
        self.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(10)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Leaves the wheel to the page."""
        event.ignore()
