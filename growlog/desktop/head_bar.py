"""The bar above the open logbook, whose buttons give up their words where the room is too small."""

from collections.abc import Sequence

from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QWidget

from growlog.desktop.look.theme import theme_signal
from growlog.desktop.look.widgets import fit_words

_MARGIN_PX, _SPACING_PX = 16, 8


class HeadBar(QWidget):
    """A name, what counts, then buttons. first_silent: the order in which buttons give up their words."""

    def __init__(self, name: QLabel, counts: QWidget, buttons: Sequence[QPushButton],
                 first_silent: Sequence[QPushButton]) -> None:  # fmt: skip
        super().__init__()
        self.setObjectName("head_bar")
        self._name = name
        self._first_silent = list(first_silent)
        row = QHBoxLayout(self)
        row.setContentsMargins(_MARGIN_PX, 8, _MARGIN_PX, 8)
        row.setSpacing(_SPACING_PX)
        row.addWidget(name)
        row.addWidget(counts, 1)
        for button in buttons:
            row.addWidget(button)
        theme_signal().changed.connect(self._fit)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """As many words as fit."""
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        room = self.width() - 2 * _MARGIN_PX - self._name.sizeHint().width() - 2 * _SPACING_PX
        fit_words(self._first_silent, room, _SPACING_PX)
