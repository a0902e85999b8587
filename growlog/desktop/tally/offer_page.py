"""An unfinished tally, offered again: what stands in it, to go on with or to write off."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import FlowLayout, TextLabel
from growlog.desktop.tally.touch import touch_button
from growlog.words import say


class OfferPage(QWidget):
    """Says when it was begun and what it holds; the buttons stand well apart."""

    go_on = Signal()
    write_off = Signal()

    def __init__(self, sentence: str, lines: Sequence[str]) -> None:
        super().__init__()
        self.setObjectName("offer")
        self.sentence_label = TextLabel(sentence, "title", wraps=True)
        self.lines_label = TextLabel("\n".join(lines), "", wraps=True)
        self.hint_label = TextLabel(
            say("Nothing of it is in the log yet. Written off, it is gone for good."), "small", wraps=True
        )
        self.go_on_button = touch_button(say("Go on with it"), "primary", name="goOn")
        self.write_off_button = touch_button(say("Write it off"), "danger", name="writeOff")
        buttons = FlowLayout(None, 32)
        buttons.addWidget(self.go_on_button)
        buttons.addWidget(self.write_off_button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 24, 0, 24)
        column.setSpacing(12)
        for widget in (self.sentence_label, self.lines_label, self.hint_label):
            column.addWidget(widget)
        column.addLayout(buttons)
        column.addStretch(1)
        self.go_on_button.clicked.connect(self.go_on)
        self.write_off_button.clicked.connect(self.write_off)
