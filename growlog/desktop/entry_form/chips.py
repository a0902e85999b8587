"""A line whose Enter adds what was typed as a chip; Backspace on the empty line strikes the last chip."""

from functools import partial

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from growlog.desktop.look.widgets import Button, FlowLayout
from growlog.words import say


class ChipLine(QWidget):
    """Chips below a line. It keeps no values: it says what was typed and which chip was struck."""

    entered = Signal(str)
    struck = Signal(int)

    def __init__(self, placeholder: str = "", beside: QWidget | None = None) -> None:
        super().__init__()
        self.line = QLineEdit()
        self.line.setPlaceholderText(placeholder)
        self.line.setMinimumWidth(72)
        self.setFocusProxy(self.line)
        self.chips: list[Button] = []
        self._chip_widget = QWidget()
        self._chip_row = FlowLayout(self._chip_widget, 4)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(6)
        row = QHBoxLayout()
        row.setSpacing(8)
        row.addWidget(self.line, 1)
        if beside is not None:
            row.addWidget(beside)
        column.addLayout(row)
        column.addWidget(self._chip_widget)
        self._chip_widget.hide()
        self.line.installEventFilter(self)

    def show_chips(self, words: list[str]) -> None:
        """Other chips from now on."""
        for chip in self.chips:
            self._chip_row.removeWidget(chip)
            chip.hide()
            chip.deleteLater()
        self.chips = [self._chip(place, text) for place, text in enumerate(words)]
        self._chip_widget.setVisible(bool(words))
        self._chip_widget.updateGeometry()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Enter adds, Backspace strikes."""
        if watched is self.line and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            return self._took(event)
        return super().eventFilter(watched, event)

    def _took(self, event: QKeyEvent) -> bool:
        plain = event.modifiers() in (Qt.KeyboardModifier.NoModifier, Qt.KeyboardModifier.KeypadModifier)
        if plain and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            if self.line.text().strip():
                self.entered.emit(self.line.text().strip())
            return True
        if event.key() == Qt.Key.Key_Backspace and not self.line.text() and self.chips:
            self.struck.emit(len(self.chips) - 1)
            return True
        return False

    def _chip(self, place: int, text: str) -> Button:
        chip = Button(f"{text}  \u00d7", "chip", name=f"chip{place}")
        chip.setToolTip(say("Strike {what}", what=text))
        chip.setAccessibleName(say("Strike {what}", what=text))
        chip.clicked.connect(partial(self.struck.emit, place))
        self._chip_row.addWidget(chip)
        chip.show()
        return chip
