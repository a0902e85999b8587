"""A count with a button on either side, large enough for a wet finger."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QIntValidator, QKeyEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QLineEdit, QVBoxLayout, QWidget

from growlog.desktop.look.marks import MarkSign
from growlog.desktop.look.widgets.buttons import Button
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.words import say


class CountStepper(QWidget):
    """Shows a mark, a name, a note, and a count that goes up and down by one."""

    value_changed = Signal(int)

    def __init__(
        self,
        label: str,
        note: str = "",
        kind: str = "",
        maximum: int = 999,
        less_key: str = "",
        more_key: str = "",
        name: str = "",
    ) -> None:
        """kind: the entry kind whose mark stands before the label. The keys are only shown, not listened to."""
        super().__init__()
        if name:
            self.setObjectName(name)
        self._maximum = maximum
        self._value = 0
        self.label = TextLabel(label, "heading")
        self.note_label = TextLabel(note, "small")
        self.note_label.setVisible(bool(note))
        self.less_button = self._button("\u2212", say("One less: {what}", what=label), "less")
        self.more_button = self._button("+", say("One more: {what}", what=label), "more")
        self.line = QLineEdit("0")
        self.line.setObjectName("count")
        self.line.setProperty("role", "count")
        self.line.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.line.setValidator(QIntValidator(0, maximum, self))
        self.line.setAccessibleName(label)
        self.line.setMinimumWidth(64)
        self.setFocusProxy(self.line)
        self._place(kind, less_key, more_key)
        self.line.installEventFilter(self)
        self.line.textEdited.connect(self._typed)
        self.less_button.clicked.connect(self.step_down)
        self.more_button.clicked.connect(self.step_up)

    def value(self) -> int:
        """The count."""
        return self._value

    def set_value(self, count: int) -> None:
        """Shows a count; says so if it is another than before."""
        count = max(0, min(self._maximum, count))
        changed = count != self._value
        self._value = count
        if self.line.text() != str(count):
            self.line.setText(str(count))
        self.less_button.setEnabled(count > 0)
        self.more_button.setEnabled(count < self._maximum)
        if changed:
            self.value_changed.emit(count)

    def set_note(self, note: str) -> None:
        """Other words below the label."""
        self.note_label.setText(note)
        self.note_label.setVisible(bool(note))

    def step_up(self) -> None:
        """One more."""
        self.set_value(self._value + 1)

    def step_down(self) -> None:
        """One less."""
        self.set_value(self._value - 1)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Up and down keys step; leaving an empty field puts the count back."""
        if watched is self.line and isinstance(event, QKeyEvent) and event.type() == QEvent.Type.KeyPress:
            if event.key() == Qt.Key.Key_Up:
                self.step_up()
                return True
            if event.key() == Qt.Key.Key_Down:
                self.step_down()
                return True
        if watched is self.line and event.type() == QEvent.Type.FocusOut:
            self.line.setText(str(self._value))
        return super().eventFilter(watched, event)

    def _typed(self, text: str) -> None:
        if text.isascii() and text.isdigit():
            self.set_value(int(text))
        elif not text:
            self.set_value(0)
            self.line.clear()

    def _button(self, text: str, words: str, name: str) -> Button:
        button = Button(text, "step", name=name)
        button.setAccessibleName(words)
        button.setToolTip(words)
        button.setAutoRepeat(True)
        return button

    def _place(self, kind: str, less_key: str, more_key: str) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        head = QHBoxLayout()
        head.setSpacing(8)
        if kind:
            head.addWidget(MarkSign(kind))
        head.addWidget(self.label, 1)
        column.addLayout(head)
        column.addWidget(self.note_label)
        grid = QGridLayout()
        grid.setSpacing(8)
        for place, widget in enumerate((self.less_button, self.line, self.more_button)):
            grid.addWidget(widget, 0, place)
        for place, key in ((0, less_key), (2, more_key)):
            if key:
                grid.addWidget(TextLabel(key, "small"), 1, place, Qt.AlignmentFlag.AlignHCenter)
        grid.setColumnStretch(1, 1)
        column.addLayout(grid)
        self.less_button.setEnabled(False)
