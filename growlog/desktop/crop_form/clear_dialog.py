"""Clearing a crop: only its day is asked."""

from collections.abc import Iterable
from datetime import date

from PySide6.QtCore import Signal
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import DayField, DialogFrame, TextLabel
from growlog.records.crop import Crop
from growlog.records.problems import Problem
from growlog.words import say


class ClearDialog(DialogFrame):
    """It stays open until its caller accepts it or shows problems."""

    cleared = Signal(str, object)

    def __init__(self, crop: Crop, today: date, parent: QWidget | None = None) -> None:
        super().__init__(say("Clear {name}", name=crop.name), "", parent, 480)
        self.setObjectName("clearDialog")
        self._crop_id = crop.id
        words = say("Its season ends on this day. Entries and photos stay, and it can be grown on again.")
        self.body.addWidget(TextLabel(words, "", wraps=True))
        self.day_field = DayField(
            say("Cleared on"), today, earliest=crop.day_zero, latest=today, near=today, required=True, name="cleared_on"
        )
        self.body.addWidget(self.day_field)
        self.body.addStretch(1)
        self.leave_button = self.add_button(say("Leave it growing"), name="leave")
        self.clear_button = self.add_button(say("Clear the crop"), "primary", "clear")
        self.leave_button.clicked.connect(self.reject)
        self.clear_button.clicked.connect(self.confirm)
        for keys in ("Ctrl+Return", "Ctrl+Enter"):
            QShortcut(QKeySequence(keys), self).activated.connect(self.confirm)
        self.day_field.setFocus()

    def confirm(self) -> None:
        """Emits the day if it can be taken."""
        day = self.day_field.value() if self.day_field.check() else None
        if day is not None:
            self.cleared.emit(self._crop_id, day)

    def show_problems(self, problems: Iterable[Problem]) -> None:
        """Why the logbook refused the day."""
        self.day_field.show_problem(" ".join(problem.sentence for problem in problems))
        self.day_field.setFocus()
