"""The field of the quick line: shows how a begun word may go on, and keeps the lines that were written."""

from PySide6.QtCore import QEvent, QPoint, Qt, Signal
from PySide6.QtGui import QKeyEvent, QKeySequence, QPainter, QPaintEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from growlog.desktop.look.theme import current
from growlog.services.quick_line import Completion, LineWords, completions

_KEPT_LINES = 50
_CURSOR_TO_TEXT_PX = 1


class LineField(QLineEdit):
    """Tab or the right arrow accepts what is shown behind the cursor; up and down bring written lines back.

    Escape clears; in an empty field it asks to be left.
    """

    confirmed = Signal()
    help_wanted = Signal()
    left = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = LineWords()
        self._written: list[str] = []
        self._place = 0  # in the written lines; behind the last one stands what is being typed
        self._typed = ""
        self.returnPressed.connect(self.confirmed)
        self.textEdited.connect(self._edited)
        self.cursorPositionChanged.connect(self._moved)

    @property
    def completion(self) -> Completion | None:
        """How the begun word would go on, None for nothing."""
        if not self.hasFocus() or self.cursorPosition() != len(self.text()) or self.hasSelectedText():
            return None
        found = completions(self.text(), self.cursorPosition(), self.words)
        return found[0] if found else None

    def keep(self, line: str) -> None:
        """Keeps a written line and empties the field; undo of the field does not bring it back."""
        if line in self._written:
            self._written.remove(line)
        self._written = [*self._written, line][-_KEPT_LINES:]
        self.setText("")
        self._edited()

    def event(self, event: QEvent) -> bool:
        """Tab goes on to the next field only where there is nothing to accept."""
        if event.type() == QEvent.Type.KeyPress and isinstance(event, QKeyEvent):
            if event.key() == Qt.Key.Key_Tab and self._accept():
                return True
        elif event.type() == QEvent.Type.ShortcutOverride and isinstance(event, QKeyEvent) and self._leaves(event):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """The keys that are the field's own."""
        key = event.key()
        if key == Qt.Key.Key_Escape:
            self._escape()
        elif key == Qt.Key.Key_F1:
            self.help_wanted.emit()
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self._bring(-1 if key == Qt.Key.Key_Up else 1)
        elif key != Qt.Key.Key_Right or event.modifiers() or not self._accept():
            super().keyPressEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The rest of a word that can be accepted, in second ink behind the cursor."""
        super().paintEvent(event)
        found = self.completion
        if found is None:
            return
        rest = found.text[found.end - found.start :]
        cursor = self.cursorRect()
        start = QPoint(cursor.center().x() + _CURSOR_TO_TEXT_PX, cursor.top() + self.fontMetrics().ascent())
        painter = QPainter(self)
        painter.setPen(current().colour("mute"))
        room = self.width() - start.x() - current().px(8)
        rest = self.fontMetrics().elidedText(rest, Qt.TextElideMode.ElideRight, room)
        painter.drawText(start, rest)
        painter.end()

    def _leaves(self, event: QKeyEvent) -> bool:
        """Undo and redo are the logbook's where the field has nothing to take back."""
        undo = event.matches(QKeySequence.StandardKey.Undo) and not self.isUndoAvailable()
        redo = event.matches(QKeySequence.StandardKey.Redo) and not self.isRedoAvailable()
        return undo or redo

    def _accept(self) -> bool:
        found = self.completion
        if found is None:
            return False
        self.setSelection(found.start, found.end - found.start)
        self.insert(found.text)
        self._edited()
        return True

    def _escape(self) -> None:
        if self.text():
            self.clear()
            self._edited()
        else:
            self.left.emit()

    def _bring(self, step: int) -> None:
        if not 0 <= self._place + step <= len(self._written):
            return
        if self._place == len(self._written):
            self._typed = self.text()
        self._place += step
        self.setText(self._written[self._place] if self._place < len(self._written) else self._typed)

    def _edited(self, _text: str = "") -> None:
        self._place = len(self._written)

    def _moved(self, _old: int, _new: int) -> None:
        self.update()
