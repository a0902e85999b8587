"""A message in its place: what was done, what is wrong, or what is asked, with one way on."""

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QAccessible, QAccessibleEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QWidget

from growlog.desktop.look.icons import IconButton, svg_pixmap
from growlog.desktop.look.restyle import set_look_property
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets.buttons import Button
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.words import say

TONES = ("inform", "asks", "problem")
_SIGNS = {"inform": ("info", "mute"), "asks": ("help", "light"), "problem": ("warning", "problem")}


class Banner(QFrame):
    """A sentence with a sign, at most one action, and a way to close it."""

    action_chosen = Signal()
    closed = Signal()

    def __init__(self, sentence: str = "", tone: str = "inform", action: str = "", can_close: bool = True) -> None:
        super().__init__()
        self.setProperty("role", "banner")
        self._tone = ""
        self.sign = QLabel()
        self.sentence_label = TextLabel("", "", wraps=True)
        self.action_button = Button("", "link", name="action")
        self.close_button = IconButton("close", say("Close the message"))
        self.close_button.setObjectName("closeMessage")
        self.close_button.setVisible(can_close)
        row = QHBoxLayout(self)
        row.setContentsMargins(12, 8, 8, 8)
        row.setSpacing(8)
        row.addWidget(self.sign, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.sentence_label, 1)
        row.addWidget(self.action_button, 0, Qt.AlignmentFlag.AlignVCenter)
        row.addWidget(self.close_button, 0, Qt.AlignmentFlag.AlignVCenter)
        self.action_button.clicked.connect(self._act)
        self.close_button.clicked.connect(self._close)
        theme_signal().changed.connect(self._draw_sign)
        self.show_message(sentence, tone, action)

    @property
    def tone(self) -> str:
        """inform, asks or problem."""
        return self._tone

    @property
    def sentence(self) -> str:
        """What it says."""
        return self.sentence_label.text()

    def show_message(self, sentence: str, tone: str = "inform", action: str = "") -> None:
        """Another message."""
        if tone not in TONES:
            raise ValueError(f"tone is {tone}, allowed are {', '.join(TONES)}")
        self._tone = tone
        set_look_property(self, "tone", tone)
        self.sentence_label.setText(sentence)
        self.action_button.setText(action)
        self.action_button.setVisible(bool(action))
        self._draw_sign()
        if sentence:
            announce(self.sentence_label, sentence)

    def minimumSizeHint(self) -> QSize:
        """Words wrap, so it may become narrow."""
        return QSize(200, super().minimumSizeHint().height())

    def _draw_sign(self) -> None:
        name, token = _SIGNS[self._tone]
        look = current()
        self.sign.setPixmap(svg_pixmap(name, look.palette.colour(token), look.px(18), self.devicePixelRatioF()))

    def _act(self) -> None:
        self.action_chosen.emit()

    def _close(self) -> None:
        self.closed.emit()


def announce(widget: QWidget, sentence: str) -> None:
    """Lets a screen reader say a sentence that has just appeared."""
    widget.setAccessibleName(sentence)
    QAccessible.updateAccessibility(QAccessibleEvent(widget, QAccessible.Event.Alert))
