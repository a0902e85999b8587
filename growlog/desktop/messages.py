"""The one door for messages to the person; tests hand in a fake instead.

What merely informs stands in a line of the window and waits for nobody; a question is asked only where
the way on depends on the answer.
"""

from collections.abc import Callable
from typing import Protocol

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import QDialog, QHBoxLayout, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets.banner import Banner, announce
from growlog.desktop.look.widgets.buttons import Button
from growlog.desktop.look.widgets.flow_layout import FlowLayout
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.words import say

INFORM_MS = 8000


class Messages(Protocol):
    """Tells and asks. The answer of a question comes back through `on_yes`, never as a return value."""

    def inform(self, sentence: str, action: str = "", on_action: Callable[[], None] | None = None) -> None:
        """Says what was done, for a while; the action is one button, for example Undo."""

    def problem(self, sentence: str, details: str = "") -> None:
        """Says what went wrong and the way on; stays until it is closed."""

    def ask(
        self,
        question: str,
        yes: str,
        on_yes: Callable[[], None],
        details: str = "",
        no: str = "",
        on_no: Callable[[], None] | None = None,
    ) -> None:
        """Asks; `yes` is the verb on the button ("Remove the photo"), the other button leaves all as it is."""

    def clear(self) -> None:
        """Takes away the message that stands in the window."""


class WindowMessages:
    """Messages in a strip of the window; questions in a small dialog before it."""

    def __init__(self, window: QWidget, strip: "MessageStrip") -> None:
        self._window = window
        self._strip = strip

    def inform(self, sentence: str, action: str = "", on_action: Callable[[], None] | None = None) -> None:
        """Says what was done, for a while."""
        self._strip.show_message(sentence, "inform", action, on_action)

    def problem(self, sentence: str, details: str = "") -> None:
        """Says what went wrong and the way on; stays until it is closed."""
        self._strip.show_message(f"{sentence} {details}".strip(), "problem")

    def ask(
        self,
        question: str,
        yes: str,
        on_yes: Callable[[], None],
        details: str = "",
        no: str = "",
        on_no: Callable[[], None] | None = None,
    ) -> None:
        """Opens the question over the window without holding up the program."""
        box = QuestionBox(self._window, question, yes, on_yes, details, no or say("Leave it as it is"), on_no)
        box.open()

    def clear(self) -> None:
        """Takes away the message that stands in the window."""
        self._strip.clear()


class QuestionBox(QDialog):
    """One question with two buttons that say what they do. Enter and Escape leave all as it is."""

    def __init__(
        self,
        window: QWidget,
        question: str,
        yes: str,
        on_yes: Callable[[], None],
        details: str,
        no: str,
        on_no: Callable[[], None] | None,
    ) -> None:
        super().__init__(window)
        self.setObjectName("question")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(say("Growing-room Logbook"))
        self.question_label = TextLabel(question, "heading", wraps=True)
        self.details_label = TextLabel(details, "subtitle", wraps=True)
        self.details_label.setVisible(bool(details))
        self.yes_button = Button(yes, name="yes")
        self.no_button = Button(no, name="no")
        self.no_button.setDefault(True)
        self._on_yes = on_yes
        self._on_no = on_no
        self._place()
        self.yes_button.clicked.connect(self.accept)
        self.no_button.clicked.connect(self.reject)
        self.finished.connect(self._answered)
        self.no_button.setFocus()
        announce(self.question_label, question)

    def _place(self) -> None:
        self.setProperty("ground", "card")
        buttons = FlowLayout()
        buttons.add_gap()
        buttons.addWidget(self.no_button)
        buttons.addWidget(self.yes_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(24, 20, 24, 16)
        column.setSpacing(8)
        column.addWidget(self.question_label)
        column.addWidget(self.details_label)
        column.addSpacing(8)
        column.addLayout(buttons)
        self.setMinimumWidth(current().px(360))

    def _answered(self, result: int) -> None:
        if result == QDialog.DialogCode.Accepted:
            self._on_yes()
        elif self._on_no is not None:
            self._on_no()


class MessageStrip(QWidget):
    """The line at the foot of the window where a message stands; it takes no room while there is none."""

    def __init__(self, parent: QWidget | None = None, inform_ms: int = INFORM_MS) -> None:
        super().__init__(parent)
        self.setObjectName("messageStrip")
        layout = QVBoxLayout(self)
        layout.setContentsMargins(16, 8, 16, 8)
        row = QHBoxLayout()
        layout.addLayout(row)
        self.banner = Banner()
        row.addWidget(self.banner)
        self._on_action: Callable[[], None] | None = None
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(inform_ms)
        self._timer.timeout.connect(self.clear)
        self.banner.action_chosen.connect(self._act)
        self.banner.closed.connect(self.clear)
        self.hide()

    def show_message(
        self, sentence: str, tone: str, action: str = "", on_action: Callable[[], None] | None = None
    ) -> None:
        """Shows one message in place of the last. A message of tone inform goes away by itself."""
        self._on_action = on_action
        self.banner.show_message(sentence, tone, action)
        self.show()
        if tone == "inform":
            self._timer.start()
        else:
            self._timer.stop()

    def clear(self) -> None:
        """Takes the message away."""
        self._timer.stop()
        self._on_action = None
        self.hide()

    def withdraw(self, action: Callable[[], None]) -> None:
        """Takes the message away if it offers this action, which has come to mean something else."""
        if self._on_action == action:
            self.clear()

    def _act(self) -> None:
        action = self._on_action
        self.clear()
        if action is not None:
            action()
