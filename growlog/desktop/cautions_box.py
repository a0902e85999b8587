"""The usual cautions of a screen: sentences with their sources, and what goes before them."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from growlog.desktop.look.icons import svg_pixmap
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import Card, TextLabel
from growlog.services.cautions import Caution, CautionTopic, cautions_for, local_first
from growlog.words import say


class CautionsBox(Card):
    """One or two sentences of a topic each; the sources stand in the tool tip, or below where `sources` is set."""

    def __init__(self, topics: Sequence[CautionTopic], most_of_each: int = 1, *, sources: bool = False) -> None:
        super().__init__(margin_px=12)
        self.setObjectName("cautions")
        self.cautions = [c for topic in topics for c in cautions_for(topic)[:most_of_each]]
        for caution in self.cautions:
            self.body.addWidget(_CautionLine(caution, sources))
        self.body.addWidget(TextLabel(local_first(), "small", wraps=True))


class _CautionLine(QWidget):
    """A sign and a sentence."""

    def __init__(self, caution: Caution, with_source: bool) -> None:
        super().__init__()
        self._sign = QLabel()
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(8)
        words = QVBoxLayout()
        words.setSpacing(2)
        sentence = TextLabel(caution.sentence, wraps=True)
        words.addWidget(sentence)
        source = say("Source: {source}", source=say(caution.source))
        if with_source:
            words.addWidget(TextLabel(source, "small", "mute", wraps=True))
        else:
            sentence.setToolTip(source)
        row.addWidget(self._sign, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(words, 1)
        theme_signal().changed.connect(self._draw)
        self._draw()

    def _draw(self) -> None:
        look = current()
        colour = look.palette.colour("light")
        self._sign.setPixmap(svg_pixmap("warning", colour, look.px(18), self.devicePixelRatioF()))
