"""The fruit entered so far, one chip each; a click strikes it."""

from functools import partial

from PySide6.QtCore import QSize, Signal
from PySide6.QtWidgets import QFrame, QScrollArea, QWidget

from growlog.desktop.look.widgets import Button, FlowLayout
from growlog.desktop.tally.touch import touch_button
from growlog.words import say

_ROWS_SHOWN = 2  # further ones are scrolled to


class WeightChips(QScrollArea):
    """As high as its chips, up to two rows; the newest is in sight."""

    struck = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("fruitChips")
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.chips: list[Button] = []
        self._words: list[str] = []
        self._holder = QWidget()
        self._holder.setObjectName("scrolled")
        self._flow = FlowLayout(self._holder, 6)
        self.setWidget(self._holder)
        self.verticalScrollBar().rangeChanged.connect(self._to_newest)
        self.hide()

    def show_fruit(self, words: list[str]) -> None:
        """The fruit in the order entered; chips that stay are left as they are."""
        same = 0
        while same < min(len(words), len(self._words)) and words[same] == self._words[same]:
            same += 1
        while len(self.chips) > same:
            self._take_out(self.chips.pop())
        for place in range(same, len(words)):
            self.chips.append(self._chip(place, words[place]))
        self._words = list(words)
        self.setVisible(bool(words))
        self._holder.updateGeometry()
        self.updateGeometry()

    def sizeHint(self) -> QSize:
        """The height of its rows at the present width, two at most."""
        asked = self._flow.heightForWidth(max(1, self.viewport().width()))
        one = self.chips[0].sizeHint().height() + self._flow.spacing() if self.chips else 0
        return QSize(200, min(asked, one * _ROWS_SHOWN - self._flow.spacing()))

    def minimumSizeHint(self) -> QSize:
        """It does not become lower than its hint."""
        return QSize(100, self.sizeHint().height())

    def resizeEvent(self, event: object) -> None:
        """Another width may ask for another height."""
        super().resizeEvent(event)  # type: ignore[arg-type]
        self.updateGeometry()

    def _chip(self, place: int, text: str) -> Button:
        chip = touch_button(text, "chip", name=f"fruit{place}")
        chip.setToolTip(say("Strike {what}", what=text))
        chip.setAccessibleName(say("Strike {what}", what=text))
        chip.clicked.connect(partial(self.struck.emit, place))
        self._flow.addWidget(chip)
        chip.show()
        return chip

    def _take_out(self, chip: Button) -> None:
        self._flow.removeWidget(chip)
        chip.hide()
        chip.deleteLater()

    def _to_newest(self, _lowest: int, highest: int) -> None:
        self.verticalScrollBar().setValue(highest)
