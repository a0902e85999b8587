"""One line of words with proposals to choose from."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QComboBox, QCompleter

from growlog.desktop.look.widgets import Field
from growlog.desktop.look.widgets.choice_field import CalmComboBox
from growlog.words import say


class WordField(Field):
    """Any words may be typed; the list only helps. none_but_these: only what is in the list is taken."""

    def __init__(
        self, label: str, proposals: Sequence[str], text: str = "", name: str = "", none_but_these: str = ""
    ) -> None:
        self.box = CalmComboBox()
        self.box.setEditable(True)
        self.box.setInsertPolicy(QComboBox.InsertPolicy.NoInsert)
        self.box.addItems(list(proposals))
        super().__init__(label, self.box, "", name)
        self._sentence = none_but_these
        self._proposals = frozenset(proposals)
        completer = QCompleter(self.box.model(), self.box)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        completer.setCompletionMode(QCompleter.CompletionMode.PopupCompletion)
        completer.setFilterMode(Qt.MatchFlag.MatchContains)
        self.box.setCompleter(completer)
        self.set_value(text)
        self.box.currentTextChanged.connect(self._changed)

    def value(self) -> str:
        """The words."""
        return self.box.currentText().strip()

    def set_value(self, text: str) -> None:
        """Shows other words without emitting value_changed."""
        self.box.blockSignals(True)
        self.box.setCurrentIndex(self.box.findText(text))
        self.box.setEditText(text)
        self.box.blockSignals(False)
        self.clear_message()

    def check(self) -> bool:
        """Judges what stands there as if typing had ended; false if it is refused."""
        if self._sentence and self.value() not in self._proposals:
            self.show_problem(self._sentence)
        return not self.is_refused

    def _changed(self) -> None:
        self.clear_message()
        self.value_changed.emit()


SPECIES = (
    "aubergine",
    "bean",
    "chilli",
    "courgette",
    "cucumber",
    "melon",
    "okra",
    "pattypan",
    "pea",
    "strawberry",
    "summer squash",
    "sweet pepper",
    "tomato",
)


def species_field(text: str = "") -> WordField:
    """The crop's plain name, with the usual ones of a room proposed."""
    return WordField(say("Kind of plant"), [say(word) for word in SPECIES], text, "species")
