"""What was decided of the crop, with the figures as they stood, and the way to decide."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, Card, FlowLayout, TextLabel
from growlog.desktop.review.wording import quoted_line
from growlog.services.review.model import DecisionMade
from growlog.words import say, show_day


class DecisionCard(Card):
    """One decision; or, without any, the words that none was made."""

    decide_wanted = Signal()
    correct_wanted = Signal(str)
    remove_wanted = Signal(str)
    what_if_wanted = Signal()

    def __init__(self, decisions: Sequence[DecisionMade], *, growing: bool, writable: bool) -> None:
        super().__init__(tone="soft", margin_px=20)
        self.setObjectName("decision")
        self._newest = decisions[0] if decisions else None
        words = say("Decide…") if self._newest is None else say("Decide anew…")
        self.decide_button = Button(words, "" if growing or self._newest is not None else "primary", name="decide")
        self.correct_button = Button(say("Correct its words…"), "link", "edit", "correctDecision")
        self.remove_button = Button(say("Remove it"), "link", "bin", "removeDecision")
        self.what_if_button = Button(say("What if…"), name="whatIf")
        if self._newest is None:
            self._say_none(growing)
        for number, decision in enumerate(decisions):
            self._add(decision, newest=number == 0)
        self._place_buttons(writable)
        self.decide_button.clicked.connect(self.decide_wanted)
        self.what_if_button.clicked.connect(self.what_if_wanted)
        self.correct_button.clicked.connect(self._correct)
        self.remove_button.clicked.connect(self._remove)

    def _say_none(self, growing: bool) -> None:
        self.body.addWidget(TextLabel(say("Decision"), "small"))
        self.body.addWidget(TextLabel(say("Not decided yet"), "title"))
        words = (
            say("It is still growing. Once it is cleared, say whether it is grown again, and why.")
            if growing
            else say("Say whether it is grown again, and why. The figures of today are kept with it.")
        )
        self.body.addWidget(TextLabel(words, "", wraps=True))

    def _add(self, decision: DecisionMade, *, newest: bool) -> None:
        part = QWidget()
        column = QVBoxLayout(part)
        column.setContentsMargins(0, 0 if newest else 8, 0, 0)
        column.setSpacing(4)
        day = show_day(decision.day)
        head = say("Decision, {day}", day=day) if newest else say("Before, {day}", day=day)
        column.addWidget(TextLabel(head, "small"))
        column.addWidget(TextLabel(decision.title, "title" if newest else "strong", wraps=True))
        changes = say("Next time: {changes}", changes=decision.changes) if decision.changes else ""
        for text in (decision.reasons, changes):
            if text:
                column.addWidget(TextLabel(text, "", wraps=True))
        if decision.figures:
            quoted = say("As it stood on {day}: {figures}", day=day, figures=quoted_line(decision.figures))
            column.addWidget(TextLabel(quoted, "small", wraps=True))
        self.body.addWidget(part)

    def _place_buttons(self, writable: bool) -> None:
        row = FlowLayout()
        row.addWidget(self.decide_button)
        row.addWidget(self.what_if_button)
        self.decide_button.setEnabled(writable)
        for button in (self.correct_button, self.remove_button):
            row.addWidget(button)
            button.setVisible(self._newest is not None)
            button.setEnabled(writable)
        self.body.addSpacing(4)
        self.body.addLayout(row)

    def _correct(self) -> None:
        if self._newest is not None:
            self.correct_wanted.emit(self._newest.id)

    def _remove(self) -> None:
        if self._newest is not None:
            self.remove_wanted.emit(self._newest.id)
