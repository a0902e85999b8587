"""A thing to do today, with a box to tick."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QCheckBox, QSizePolicy

from growlog.desktop.look.theme import current


class DueBox(QCheckBox):
    """Its words end in an ellipsis where the room ends; ticked tells its key."""

    ticked = Signal(str)

    def __init__(self, key: str, words: str) -> None:
        super().__init__(words)
        self.setObjectName(f"due.{key}")
        self._key = key
        self._words = words
        self.setAccessibleName(words)
        self.setToolTip(words)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.clicked.connect(self._clicked)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Shows as much as fits."""
        super().resizeEvent(event)
        room = self.width() - current().px(32)
        self.setText(self.fontMetrics().elidedText(self._words, Qt.TextElideMode.ElideRight, room))

    def _clicked(self, is_ticked: bool) -> None:
        if is_ticked:
            self.ticked.emit(self._key)
