"""What must be answered before anything goes in, each with its answers as buttons beside it."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, Card, FlowLayout, TextLabel
from growlog.services.old_notes.import_plan import Question


class QuestionsBox(QWidget):
    """A card per question; answered tells the question and the answer's value."""

    answered = Signal(object, str)  # Question

    def __init__(self) -> None:
        super().__init__()
        self._questions: tuple[Question, ...] = ()
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        self.buttons: dict[tuple[str, str], Button] = {}
        self.hide()

    @property
    def sentences(self) -> list[str]:
        """What is asked."""
        return [question.sentence for question in self._questions]

    def show_questions(self, questions: Sequence[Question]) -> None:
        """Other questions; hidden where there are none."""
        if tuple(questions) == self._questions:
            return
        self._questions = tuple(questions)
        self.buttons.clear()
        while (item := self._column.takeAt(0)) is not None:
            widget = item.widget()
            if widget is not None:
                widget.hide()
                widget.deleteLater()
        for question in self._questions:
            self._column.addWidget(self._card(question))
        self.setVisible(bool(self._questions))

    def _card(self, question: Question) -> Card:
        card = Card(margin_px=12)
        card.body.addWidget(TextLabel(question.sentence, "strong", wraps=True))
        if question.choices:
            answers = FlowLayout()
            for value, words in question.choices:
                button = Button(words, "chip", name=f"{question.key}-{value or 'none'}")
                button.clicked.connect(partial(self._answer, question, value))
                self.buttons[question.key, value] = button
                answers.addWidget(button)
            card.body.addLayout(answers)
        return card

    def _answer(self, question: Question, value: str, _checked: bool = False) -> None:
        self.answered.emit(question, value)
