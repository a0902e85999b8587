"""Asks, below the list of what is due, for a later day or for the reason of leaving something out."""

from datetime import date, timedelta

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout

from growlog.desktop.crop_list.wording import due_spoken
from growlog.desktop.look.widgets import Button, Card, DayField, Field, TextField, TextLabel
from growlog.services.due import DueItem
from growlog.words import say


class DueQuestion(Card):
    """What both questions share: the words, one field, and two buttons. Enter answers, Escape leaves all as it is."""

    left = Signal()

    def __init__(self, item: DueItem, field: Field, verb: str) -> None:
        super().__init__(margin_px=8)
        self.item = item
        self.field = field
        self.body.setSpacing(6)
        self.body.addWidget(TextLabel(due_spoken(item), "small", wraps=True))
        self.body.addWidget(field)
        self.answer_button = Button(verb, "primary", name="answer")
        self.leave_button = Button(say("Go back"), "link", name="leave")
        row = QHBoxLayout()
        row.setSpacing(4)
        row.addWidget(self.answer_button)
        row.addWidget(self.leave_button)
        row.addStretch(1)
        self.body.addLayout(row)
        self.answer_button.clicked.connect(self.answer)
        self.leave_button.clicked.connect(self.left)

    def begin(self) -> None:
        """Typing begins in the field."""
        self.field.setFocus(Qt.FocusReason.OtherFocusReason)

    def answer(self) -> None:
        """Announces the answer if it is one."""
        raise NotImplementedError

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter answers, Escape leaves all as it is."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.answer()
        elif event.key() == Qt.Key.Key_Escape:
            self.left.emit()
        else:
            super().keyPressEvent(event)


class PutOffQuestion(DueQuestion):
    """To which day."""

    answered = Signal(str, object)

    def __init__(self, item: DueItem, today: date) -> None:
        tomorrow = today + timedelta(days=1)
        self.day = DayField(say("Put off to"), tomorrow, earliest=tomorrow, near=today, required=True, name="putOffDay")
        super().__init__(item, self.day, say("Put off"))

    def answer(self) -> None:
        """Announces the day."""
        day = self.day.value()
        if self.day.check() and day is not None:
            self.answered.emit(self.item.key, day)


class LeaveOutQuestion(DueQuestion):
    """Why."""

    answered = Signal(str, str)

    def __init__(self, item: DueItem) -> None:
        self.reason = TextField(say("Why it is left out"), required=True, name="reason")
        super().__init__(item, self.reason, say("Leave out"))

    def answer(self) -> None:
        """Announces the reason."""
        if self.reason.check():
            self.answered.emit(self.item.key, self.reason.value())
