"""One line of the reading below the field: a sign, what was understood or not, and the particulars."""

from dataclasses import dataclass

from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetrics
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from growlog.desktop.look.icons import svg_pixmap
from growlog.desktop.look.marks import mark_pixmap
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets.labels import TextLabel

QUESTION = "question"
_SIGN_PX = 12
_QUESTION_PX = 14


@dataclass(frozen=True)
class ShownRow:
    """A row: its sign (a kind whose mark it is, "question", or "" for none), its words, and the tone of its title."""

    sign: str
    title: str = ""
    more: str = ""
    tone: str = ""


class ReadingRow(QWidget):
    """Shows other words whenever asked, since making a row takes longer than a key."""

    def __init__(self) -> None:
        super().__init__()
        self.shown = ShownRow("")
        self.sign_label = QLabel()
        self.sign_label.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.title_label = TextLabel("", "strong", wraps=True)
        self.more_label = TextLabel("", "small", wraps=True)
        words = QVBoxLayout()
        words.setContentsMargins(0, 0, 0, 0)
        words.setSpacing(1)
        words.addWidget(self.title_label)
        words.addWidget(self.more_label)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 3, 0, 3)
        row.setSpacing(8)
        row.addWidget(self.sign_label, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        theme_signal().changed.connect(self._draw_sign)

    def show_row(self, shown: ShownRow) -> None:
        """Other words and another sign."""
        self.shown = shown
        self.title_label.set_tone(shown.tone)
        self.title_label.setText(_unbroken(shown.title))
        self.title_label.setVisible(bool(shown.title))
        self.more_label.setText(_unbroken(shown.more))
        self.more_label.setVisible(bool(shown.more))
        self.setAccessibleName(", ".join(part for part in (shown.title, shown.more) if part))
        self._draw_sign()

    def _draw_sign(self) -> None:
        """As high as the first line of words, so that the two stand level."""
        look, sign = current(), self.shown.sign
        line = look.font(13, QFont.Weight.DemiBold) if self.shown.title else look.font(12)
        self.sign_label.setFixedSize(look.px(_QUESTION_PX), QFontMetrics(line).height())
        density = self.devicePixelRatioF()
        if sign == QUESTION:
            colour = look.palette.colour("light")
            self.sign_label.setPixmap(svg_pixmap("help", colour, look.px(_QUESTION_PX), density))
        elif sign:
            self.sign_label.setPixmap(mark_pixmap(sign, look.px(_SIGN_PX), look.palette, density))
        else:
            self.sign_label.clear()


def _unbroken(words: str) -> str:
    """A line may not end inside a unit such as mS/cm."""
    return words.replace("/", "/\u2060")
