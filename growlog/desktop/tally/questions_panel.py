"""What stands against the chosen crop's tally, and what is asked before it is written."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Banner
from growlog.desktop.tally.keys import YES
from growlog.desktop.tally.tally_model import TallyModel
from growlog.desktop.tally.touch import touch_button, with_key
from growlog.services.tally import TallyProblem
from growlog.services.tally.wording import minutes_text
from growlog.words import say

Answer = tuple[str, str, Callable[[], None]]  # name, words, what it does


class QuestionsPanel(QWidget):
    """One banner a sentence; a question has its answers beside it. It takes no room while there is nothing."""

    def __init__(self, model: TallyModel) -> None:
        super().__init__()
        self.setObjectName("questions")
        self._model = model
        self._shown: list[tuple[str, bool]] = []
        self.banners: list[Banner] = []
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(8)
        model.changed.connect(self.show_tally)
        self.show_tally()

    def answer_first(self) -> None:
        """The key of "it is right": answers the first question; refused where there is none."""
        question = next((p for p in self._model.problems(self._model.tally.chosen) if p.asks), None)
        if question is None:
            self._model.refuse(say("{letter} answers a question, and none is open.", letter=YES))
        else:
            self._model.answer(question)

    def go_to_watch(self) -> None:
        """To the answers of the stopwatch's question, which have no letter: a slip must not decide over hours."""
        button = self.findChild(QPushButton, "watchLeftOn")
        if button is not None:
            button.setFocus(Qt.FocusReason.OtherFocusReason)

    def show_tally(self) -> None:
        """Draws what the model holds."""
        model = self._model
        problems = model.problems(model.tally.chosen)
        doubtful = model.watch_is_doubtful
        wanted = [(p.sentence, p.asks) for p in problems] + ([(self._watch_sentence(), True)] if doubtful else [])
        if wanted == self._shown:
            return
        self._shown = wanted
        for banner in self.banners:
            self._column.removeWidget(banner)
            banner.hide()
            banner.deleteLater()
        self.banners = [self._problem(p) for p in problems]
        if doubtful:
            self.banners.append(self._watch())
        for banner in self.banners:
            self._column.addWidget(banner)
            banner.show()
        self.setVisible(bool(wanted))

    def _problem(self, problem: TallyProblem) -> Banner:
        answers: list[Answer] = []
        if problem.asks:
            answers.append(("yes", with_key(say("It is right"), YES), partial(self._model.answer, problem)))
        return _banner(problem.sentence, "asks" if problem.asks else "problem", answers)

    def _watch_sentence(self) -> str:
        now, watch = self._model.now(), self._model.tally.stopwatch
        if watch.started_at is not None and now < watch.started_at:
            return say("The stopwatch was started after this moment: was the clock changed? Its time is not taken.")
        run = minutes_text(watch.present_run_s(now) // 60 * 60)
        return say("The stopwatch has run for {time}. Was it left on? Its time is not taken yet.", time=run)

    def _watch(self) -> Banner:
        model = self._model
        answers: list[Answer] = [("watchLeftOn", say("Left on, leave it out"), model.drop_long_run)]
        if model.tally.stopwatch.present_run_s(model.now()):
            answers.append(("watchRight", say("The time is right"), model.keep_long_run))
        return _banner(self._watch_sentence(), "asks", answers)


def _banner(sentence: str, tone: str, answers: list[Answer]) -> Banner:
    banner = Banner(sentence, tone, can_close=False)
    for name, words, act in answers:
        button = touch_button(words, name=name)
        button.clicked.connect(partial(_call, act))
        banner.layout().addWidget(button)  # type: ignore[union-attr]
    return banner


def _call(act: Callable[[], None], _checked: bool = False) -> None:
    act()
