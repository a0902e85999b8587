"""A thing that is kept, as a card: its name, lines about it, and the buttons that change and remove it."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.widgets.card import Card
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.words import say


class KeptRow(Card):
    """Announces with the thing itself that it is to be changed or removed. lines stand below its title."""

    change_wanted = Signal(object)
    remove_wanted = Signal(object)

    def __init__(
        self, thing: object, title: str, lines: list[TextLabel], writable: bool, before_buttons: QWidget | None = None
    ) -> None:
        super().__init__(margin_px=8)
        self.thing = thing
        self.title_label = TextLabel(title, "strong", wraps=True)
        self.change_button = IconButton("edit", say("Change {name}", name=title))
        self.remove_button = IconButton("bin", say("Remove {name}", name=title))
        row = QHBoxLayout()
        row.setSpacing(8)
        words = QVBoxLayout()
        words.setSpacing(2)
        for label in (self.title_label, *lines):
            words.addWidget(label)
        row.addLayout(words, 1)
        if before_buttons is not None:
            row.addWidget(before_buttons, 0, Qt.AlignmentFlag.AlignVCenter)
        for button in (self.change_button, self.remove_button):
            button.setEnabled(writable)
            row.addWidget(button, 0, Qt.AlignmentFlag.AlignVCenter)
        self.body.addLayout(row)
        self.change_button.clicked.connect(self._change)
        self.remove_button.clicked.connect(self._remove)

    def _change(self) -> None:
        self.change_wanted.emit(self.thing)

    def _remove(self) -> None:
        self.remove_wanted.emit(self.thing)
