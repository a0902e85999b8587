"""In the head of the yield chart: the switch that shows what is to come, and its sentence."""

from PySide6.QtCore import QRect, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from growlog.calculations.coming_picks import ComingPicks
from growlog.calculations.yield_forecast import YieldForecast
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets.buttons import Button
from growlog.desktop.look.widgets.labels import ElidedLabel
from growlog.services.yield_view.outlook import Outlook
from growlog.words import say

_LEAST_WORDS_PX = 70


class OutlookStrip(QWidget):
    """Rests hidden until there is something to say."""

    toggled = Signal(bool)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setObjectName("outlook")
        self.button = Button(say("to come"), "segment", name="show-outlook")
        self.button.setCheckable(True)
        self.button.setChecked(True)
        self.button.setToolTip(say("Show or hide what is still to come"))
        self.label = ElidedLabel("", "small", "mute", shortest_px=0)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        row.addWidget(self.button)
        row.addWidget(self.label, 1)
        self.button.toggled.connect(self._toggled)
        self.hide()

    @property
    def is_on(self) -> bool:
        """Whether the bands are wanted."""
        return self.button.isChecked()

    def set_on(self, on: bool) -> None:
        """Switches the bands on or off."""
        self.button.setChecked(on)

    def show_outlook(self, outlook: Outlook | None) -> None:
        """The sentence of the coming picks, or why there is none; more in the tool tip."""
        self.label.setText("" if outlook is None else outlook.sentence)
        self.button.setEnabled(outlook is not None and outlook.has_band)
        if outlook is not None:
            self.label.setToolTip("\n".join(_told(outlook)))
            self.label.setAccessibleName(outlook.sentence)
            self.button.setToolTip("\n".join((say("Show or hide what is still to come"), "", *_told(outlook))))

    def place(self, right_of: QRect, right_end: int, may_go_below: bool) -> int:
        """Stands right of the other switch, or below it where the sentence would not fit; the height it adds.

        Where there is no room below either, the sentence ends in an ellipsis, or is in the tool tip alone.
        """
        gap = current().px(12)
        height = right_of.height()
        wanted = self.button.sizeHint().width() + 8 + self.label.fontMetrics().horizontalAdvance(self.label.text()) + 4
        beside = right_end - right_of.right() - gap
        left_for_words = beside - self.button.sizeHint().width() - 8
        self.label.setVisible(beside >= wanted or may_go_below or left_for_words >= current().px(_LEAST_WORDS_PX))
        if self.label.isHidden():
            wanted = self.button.sizeHint().width()
        if beside >= wanted or not may_go_below:
            self.setGeometry(right_of.right() + gap, right_of.top(), min(wanted, beside), height)
            return 0
        self.setGeometry(right_of.left(), right_of.bottom() + 3, min(wanted, right_end - right_of.left()), height)
        return height + 3

    def _toggled(self, on: bool) -> None:
        self.toggled.emit(on)


def _told(outlook: Outlook) -> list[str]:
    lines = [outlook.sentence]
    if isinstance(outlook.coming, ComingPicks):
        lines.append(outlook.coming.basis_sentence)
    for told in (outlook.fruit, outlook.grams):
        lines += list(told.sentences[:1]) if isinstance(told, YieldForecast) else []
    return [*lines, outlook.reason] if outlook.reason else lines
