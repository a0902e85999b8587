"""Keys of the smaller number fields: Enter goes back to the scale, and a letter is refused, never swallowed."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QLineEdit

from growlog.words import say

_CONTROL = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier


class FigureKeys(QObject):
    """Watches any number of lines that take whole numbers only."""

    done = Signal()
    refused = Signal(str)

    def watch(self, line: QLineEdit) -> None:
        """One more line."""
        line.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Takes Enter and whatever is no figure."""
        if event.type() != QEvent.Type.KeyPress or not isinstance(event, QKeyEvent) or event.modifiers() & _CONTROL:
            return super().eventFilter(watched, event)
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.done.emit()
            return True
        text = event.text()
        if text and text.isprintable() and not text.isdigit():
            self.refused.emit(
                say("{letter} was not taken: a count stands here. Enter goes back to the weights.", letter=text.upper())
            )
            return True
        return super().eventFilter(watched, event)
