"""The room sheet: which week, which paper."""

from datetime import date

from PySide6.QtCore import Signal, SignalInstance
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import ChoiceField, DayField, DialogFrame, TextLabel
from growlog.services.room_sheet import Paper, week_of
from growlog.words import say


class RoomSheetDialog(DialogFrame):
    """Stays open until its caller closes it."""

    wanted = Signal(object, object)  # the first day, the paper
    print_wanted = Signal(object, object)

    def __init__(self, today: date, paper: str, parent: QWidget | None = None) -> None:
        super().__init__(say("Room sheet"), say("a week on paper"), parent, 480)
        self.setObjectName("roomSheetDialog")
        words = say("A row for each day, columns for each growing crop, large enough for a pencil.")
        self.body.addWidget(TextLabel(words, "", wraps=True))
        self.day_field = DayField(say("A day of the week"), today, near=today, required=True, name="week_day")
        self.paper_field = ChoiceField(
            say("Paper"), [("a4", say("A4")), ("letter", say("US Letter"))], paper, name="paper"
        )
        self.body.addWidget(self.day_field)
        self.body.addWidget(self.paper_field)
        self.body.addStretch(1)
        self.leave_button = self.add_button(say("Close"), name="leave")
        self.print_button = self.add_button(say("Print…"), name="print")
        self.save_button = self.add_button(say("Save as PDF…"), "primary", "save")
        self.leave_button.clicked.connect(self.reject)
        self.save_button.clicked.connect(self.confirm)
        self.print_button.clicked.connect(self.print_sheet)
        self.day_field.setFocus()

    def confirm(self) -> None:
        """Emits the Monday of the week and the paper, if the day can be read."""
        self._announce(self.wanted)

    def print_sheet(self) -> None:
        """The same for the printer."""
        self._announce(self.print_wanted)

    def _announce(self, signal: SignalInstance) -> None:
        day = self.day_field.value() if self.day_field.check() else None
        if day is not None:
            signal.emit(week_of(day), Paper(self.paper_field.value() or Paper.A4))
