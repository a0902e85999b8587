"""The weight field at the scale: figures are a weight, and while it is empty letters are keys."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QLineEdit

_WEIGHT_SIGNS = "0123456789.,"
_PAGES = {Qt.Key.Key_PageUp: -1, Qt.Key.Key_PageDown: 1}  # here, since the scroll area would take them


class WeightLine(QLineEdit):
    """Says what was meant and judges nothing. `letter` comes only while it is empty."""

    entered = Signal()
    strike_last = Signal()
    letter = Signal(str, bool)  # the letter in capitals, and whether shift takes it back
    letter_after_figures = Signal(str)
    turned = Signal(int)  # Page Down 1, Page Up -1

    def __init__(self) -> None:
        super().__init__()
        self.setProperty("role", "large")
        self.setAlignment(Qt.AlignmentFlag.AlignRight)
        self.setMaxLength(12)
        self.setInputMethodHints(Qt.InputMethodHint.ImhPreferNumbers)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter enters, Backspace in the empty field strikes, letters are keys; all else is the field's own."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and not _with_control(event):
            self.entered.emit()
        elif event.key() == Qt.Key.Key_Backspace and not self.text():
            if not event.isAutoRepeat():  # a key held down to empty the field does not go on into the fruit
                self.strike_last.emit()
        elif event.key() in _PAGES:
            self.turned.emit(_PAGES[Qt.Key(event.key())])
        elif _is_sign(event):
            if not event.isAutoRepeat():  # one press counts one
                self._take(event.text().upper(), bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier))
        else:
            super().keyPressEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        """What stands there is gone on with, never typed over."""
        super().focusInEvent(event)
        self.deselect()
        self.end(False)

    def _take(self, letter: str, shift: bool) -> None:
        if self.text():
            self.letter_after_figures.emit(letter)
        else:
            self.letter.emit(letter, shift)


def _with_control(event: QKeyEvent) -> bool:
    held = Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier | Qt.KeyboardModifier.MetaModifier
    return bool(event.modifiers() & held)


def _is_sign(event: QKeyEvent) -> bool:
    """A sign that can be seen and is no part of a weight."""
    text = event.text()
    return bool(text) and text.isprintable() and text not in _WEIGHT_SIGNS and not _with_control(event)
