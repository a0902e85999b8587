"""What a logger file leaves open, each question with its answers as chips; an answer may be changed."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, Card, FlowLayout, TextLabel
from growlog.services.climate.logger_plan import Question


class QuestionCards(QWidget):
    """answered tells the question's key and the value of the answer."""

    answered = Signal(str, str)

    def __init__(self) -> None:
        super().__init__()
        self._questions: tuple[Question, ...] = ()
        self.buttons: dict[tuple[str, str], Button] = {}
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        self.hide()

    def show_questions(self, questions: Sequence[Question]) -> None:
        """Other questions, or other answers; hidden where there are none."""
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
        if not question.answer:
            card.setProperty("role", "banner")
            card.setProperty("tone", "asks")
        card.body.addWidget(TextLabel(question.sentence, "strong", wraps=True))
        answers = FlowLayout()
        for choice in question.choices:
            button = Button(choice.label, "chip", name=f"{question.asked}-{choice.value}")
            button.setCheckable(True)
            button.setChecked(choice.value == question.answer)
            button.clicked.connect(partial(self._answer, question, choice.value))
            self.buttons[question.asked.value, choice.value] = button
            answers.addWidget(button)
        card.body.addLayout(answers)
        return card

    def _answer(self, question: Question, value: str, _down: bool = False) -> None:
        self.answered.emit(question.asked.value, value)
