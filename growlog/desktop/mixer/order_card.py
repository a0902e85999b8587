"""How this tank is mixed: the steps in their order, then what to beware of."""

from collections.abc import Sequence

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QGridLayout, QLabel, QVBoxLayout, QWidget

from growlog.desktop.look.icons import svg_pixmap
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import Card, TextLabel


class CautionLine(QWidget):
    """A sentence in the problem colour with its sign, so that the colour is not alone."""

    def __init__(self, sentence: str) -> None:
        super().__init__()
        self.sign = QLabel()
        self.label = TextLabel(sentence, tone="problem", wraps=True)
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(8)
        grid.setColumnStretch(1, 1)
        grid.addWidget(self.sign, 0, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(self.label, 0, 1)
        theme_signal().changed.connect(self._draw)
        self._draw()

    def _draw(self) -> None:
        look = current()
        picture = svg_pixmap("warning", look.palette.problem, look.px(16), self.devicePixelRatioF())
        self.sign.setPixmap(picture)


class OrderCard(Card):
    """The steps, warnings and cautions of the present mix."""

    def __init__(self) -> None:
        super().__init__(margin_px=12)
        self.setObjectName("orderCard")
        self._told: tuple[tuple[str, ...], ...] = ()
        self._content: QWidget | None = None

    def show_order(self, steps: Sequence[str], warnings: Sequence[str], cautions: Sequence[str]) -> None:
        """What to do in turn, and what to beware of; nothing of both hides the card."""
        told = (tuple(steps), tuple(warnings), tuple(cautions))
        self.setVisible(any(told))
        if told == self._told:
            return
        self._told = told
        if self._content is not None:
            self._content.hide()
            self._content.deleteLater()
        self._content = _content_of(*told)
        self.body.addWidget(self._content)


def _content_of(steps: Sequence[str], warnings: Sequence[str], cautions: Sequence[str]) -> QWidget:
    content = QWidget()
    column = QVBoxLayout(content)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(6)
    grid = QGridLayout()
    grid.setHorizontalSpacing(10)
    grid.setVerticalSpacing(4)
    grid.setColumnStretch(1, 1)
    for number, step in enumerate(steps):
        grid.addWidget(TextLabel(str(number + 1), "key"), number, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(TextLabel(step, wraps=True), number, 1)
    column.addLayout(grid)
    for sentence in (*warnings, *cautions):
        column.addWidget(CautionLine(sentence))
    return content
