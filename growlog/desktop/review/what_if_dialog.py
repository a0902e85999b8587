"""What if the crop were grown again in another way: the inputs at the left, the partial budget at the right."""

from PySide6.QtCore import QTimer, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import Banner, EmptyState, TextLabel
from growlog.desktop.review.what_if_answer import WhatIfAnswerView
from growlog.desktop.review.what_if_form import WhatIfForm
from growlog.desktop.tall_dialog import TallDialog
from growlog.services.what_if import WhatIfAnswer, WhatIfStart
from growlog.words import say

_PAUSE_MS = 250
_NARROW_PX = 760


class WhatIfDialog(TallDialog):
    """Asks for an answer a moment after the last key; writes nothing."""

    asked = Signal(object)  # WhatIf

    def __init__(self, crop_name: str, parent: QWidget | None = None) -> None:
        super().__init__(say("What if…"), crop_name, parent, 980)
        self.setObjectName("whatIf")
        self.form: WhatIfForm | None = None
        self.view: WhatIfAnswerView | None = None
        self.banner = Banner(can_close=False)
        self.banner.hide()
        self.waiting_label = TextLabel(say("Reading how it was grown…"), "subtitle")
        self.empty = EmptyState(say("Change something at the left, and the partial budget of the change stands here."))
        self.empty.hide()
        self._pair = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        self._left, self._right = QVBoxLayout(), QVBoxLayout()
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_PAUSE_MS)
        self._lay_out()
        self.close_button = self.add_button(say("Put away"), name="putAway")
        words = say("A partial budget counts only what changes. It is worked out anew each time and not kept.")
        self.set_note(words)
        self.close_button.clicked.connect(self.close)
        self._timer.timeout.connect(self.ask)

    def show_start(self, start: WhatIfStart) -> None:
        """The inputs as they were; the form can be filled in."""
        self.waiting_label.hide()
        self.form = WhatIfForm(start)
        self._left.addWidget(self.form)
        self._right.insertWidget(0, self.form.yield_card)
        self.empty.show()
        self.form.changed.connect(self._later)
        self.form.lamp_w.setFocus()

    def show_answer(self, answer: WhatIfAnswer) -> None:
        """The partial budget."""
        self._put_away_answer()
        self.empty.hide()
        self.view = WhatIfAnswerView(answer)
        self._right.addWidget(self.view)

    def say_problem(self, sentence: str) -> None:
        """What kept it from being worked out."""
        self.waiting_label.hide()
        self.banner.show_message(sentence, "problem")
        self.banner.show()

    def ask(self) -> None:
        """Asks for the answer to what stands in the form, if that can be answered."""
        self._timer.stop()
        if self.form is None:
            return
        change = self.form.change()
        self.form.ask_for_yield(change.asks_for_yield)
        self.banner.hide()
        if self.form.is_refused() or not change.anything:
            self._put_away_answer()
            self.empty.show()
            return
        problems = change.problems()
        if problems:
            self.form.show_problems(problems)
        else:
            self.asked.emit(change)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """One below the other where there is little room."""
        super().resizeEvent(event)
        wide = self.width() >= current().px(_NARROW_PX)
        self._pair.setDirection(QBoxLayout.Direction.LeftToRight if wide else QBoxLayout.Direction.TopToBottom)

    def _lay_out(self) -> None:
        self._pair.setSpacing(32)
        self._pair.addLayout(self._left, 1)
        self._pair.addLayout(self._right, 1)
        self._right.addWidget(self.empty)
        self.body.addWidget(self.banner)
        self.body.addWidget(self.waiting_label)
        self.body.addLayout(self._pair)
        self.body.addStretch(1)

    def _later(self) -> None:
        self._timer.start()

    def _put_away_answer(self) -> None:
        if self.view is not None:
            self.view.hide()
            self._right.removeWidget(self.view)
            self.view.deleteLater()
            self.view = None
