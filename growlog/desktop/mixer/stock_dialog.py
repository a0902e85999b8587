"""Whether all doses of the mix could stand together as a concentrate in one vessel."""

from collections.abc import Callable, Sequence

from PySide6.QtWidgets import QVBoxLayout, QWidget

from growlog.desktop.look.widgets import DialogFrame, NumberField, TextLabel
from growlog.desktop.mixer.order_card import CautionLine
from growlog.words import say

Warn = Callable[[float], Sequence[str]]


class StockDialog(DialogFrame):
    """Says for so many times the strength of the feed what would fall out; live while the number is typed."""

    def __init__(self, warn: Warn, parent: QWidget | None = None) -> None:
        """warn: sentences for a strength, none where nothing falls out."""
        super().__init__(say("As one concentrate"), "", parent, 480)
        self.setObjectName("stockDialog")
        self._warn = warn
        self.times_field = NumberField(
            say("Times as strong as the feed"), "×", 1, 1000, decimals=1, name="stock_times", required=True
        )
        self.times_field.set_value(100)
        self._lines = QVBoxLayout()
        self._lines.setSpacing(6)
        self._content: QWidget | None = None
        small = say(
            "All doses of this mix together in one vessel. Two vessels keep calcium from sulfate and phosphate."
        )
        self.body.addWidget(TextLabel(small, "", "mute", wraps=True))
        self.body.addWidget(self.times_field)
        self.body.addLayout(self._lines)
        self.body.addStretch(1)
        self.close_button = self.add_button(say("Close"), name="close")
        self.close_button.clicked.connect(self.close)
        self.times_field.value_changed.connect(self._judge)
        self._judge()

    def sentences(self) -> list[str]:
        """What is said at present."""
        return [] if self._content is None else [label.text() for label in self._content.findChildren(TextLabel)]

    def _judge(self) -> None:
        if self._content is not None:
            self._content.hide()
            self._content.deleteLater()
        self._content = QWidget()
        column = QVBoxLayout(self._content)
        column.setContentsMargins(0, 0, 0, 0)
        times = self.times_field.value()
        found = [] if times is None or times < 1 else self._warn(float(times))
        for sentence in found:
            column.addWidget(CautionLine(sentence))
        if not found and times is not None:
            nothing = say("Nothing of this is known to fall out. Keep it cool and dark, and look before you use it.")
            column.addWidget(TextLabel(nothing, wraps=True))
        self._lines.addWidget(self._content)
