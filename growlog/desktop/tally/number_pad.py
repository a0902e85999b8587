"""Figures to tap, for who has no keyboard at hand: they go where the focus is."""

from functools import partial

from PySide6.QtCore import QEvent, QLocale, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QApplication, QGridLayout, QLineEdit, QWidget

from growlog.desktop.look.widgets import Button
from growlog.desktop.tally.touch import touch_button
from growlog.words import say

_BACKSPACE, _ENTER = "\u232b", "\u23ce"
_ROWS = ("789", "456", "123")


class NumberPad(QWidget):
    """Presses the key in the number field that has the focus, else in the one it was made for."""

    def __init__(self, home: QLineEdit) -> None:
        super().__init__()
        self.setObjectName("numberPad")
        self._home = home
        self._grid = QGridLayout(self)
        self._grid.setContentsMargins(0, 0, 0, 0)
        self._grid.setSpacing(6)
        for row, figures in enumerate(_ROWS):
            for column, figure in enumerate(figures):
                self._grid.addWidget(self._key(figure, figure, ord(figure), figure), row, column)
        point = QLocale().decimalPoint()
        self._grid.addWidget(self._key(point, say("Decimal sign"), ord(point), "Point"), 3, 0)
        self._grid.addWidget(self._key("0", "0", ord("0"), "0"), 3, 1)
        self._grid.addWidget(self._key(_BACKSPACE, say("Backspace"), Qt.Key.Key_Backspace, "Backspace"), 3, 2)
        self._grid.addWidget(self._key(_ENTER, say("Enter"), Qt.Key.Key_Return, "Enter"), 4, 0, 1, 3)

    def _key(self, text: str, words: str, key: int, name: str) -> Button:
        button = touch_button(text, "pad", name=f"pad{name}")
        button.setAccessibleName(words)
        button.setFocusPolicy(Qt.FocusPolicy.NoFocus)  # the figures go to the field that keeps the focus
        button.clicked.connect(partial(self._press, key, "" if text in (_BACKSPACE, _ENTER) else text))
        return button

    def _press(self, key: int, text: str) -> None:
        field = self.window().focusWidget()
        target = field if isinstance(field, QLineEdit) and not field.property("words") else self._home
        if target is not field:
            target.setFocus(Qt.FocusReason.OtherFocusReason)
        none = Qt.KeyboardModifier.NoModifier
        for kind in (QEvent.Type.KeyPress, QEvent.Type.KeyRelease):
            QApplication.sendEvent(target, QKeyEvent(kind, key, none, text))
