"""Words: one line, or a note of several."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QLineEdit, QPlainTextEdit

from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets.field import Field
from growlog.words import say, say_count


class TextField(Field):
    """One line of words; blanks at the ends do not count."""

    def __init__(
        self,
        label: str,
        text: str = "",
        required: bool = False,
        longest: int = 200,
        placeholder: str = "",
        name: str = "",
        beside: bool = False,
    ) -> None:
        self.line = QLineEdit(text)
        super().__init__(label, self.line, "", name, beside)
        self.line.setMaxLength(longest)
        self.line.setPlaceholderText(placeholder)
        self.required = required
        self.line.textEdited.connect(self._typed)
        self.line.editingFinished.connect(self._finished)

    def value(self) -> str:
        """The words."""
        return self.line.text().strip()

    def set_value(self, text: str) -> None:
        """Shows other words without emitting value_changed."""
        self.line.setText(text)
        self.clear_message()

    def check(self) -> bool:
        """Judges what stands there as if typing had ended; false if it is refused."""
        if self.required and not self.value():
            self.show_problem(say("This cannot be left empty."))
        return not self.is_refused

    def is_empty(self) -> bool:
        """Whether nothing stands there."""
        return not self.value()

    def _typed(self) -> None:
        self.clear_message()
        self.value_changed.emit()

    def _finished(self) -> None:
        self.check()
        self.editing_finished.emit()


class NoteField(Field):
    """Several lines of words. Tab goes on to the next field."""

    def __init__(
        self,
        label: str,
        text: str = "",
        lines: int = 3,
        longest: int = 10_000,
        placeholder: str = "",
        name: str = "",
    ) -> None:
        self.box = QPlainTextEdit(text)
        super().__init__(label, self.box, "", name)
        self._longest = longest
        self.box.setPlaceholderText(placeholder)
        self.box.setTabChangesFocus(True)
        self.box.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        self._lines = lines
        self._fit()
        self.box.textChanged.connect(self._typed)
        theme_signal().changed.connect(self._fit)

    def value(self) -> str:
        """The words."""
        return self.box.toPlainText().strip()

    def set_value(self, text: str) -> None:
        """Shows other words without emitting value_changed."""
        self.box.blockSignals(True)
        self.box.setPlainText(text)
        self.box.blockSignals(False)
        self.clear_message()

    def check(self) -> bool:
        """False if it is longer than can be kept."""
        self._judge()
        return not self.is_refused

    def is_empty(self) -> bool:
        """Whether nothing stands there."""
        return not self.value()

    def _typed(self) -> None:
        self._judge()
        self.value_changed.emit()

    def _judge(self) -> None:
        over = len(self.value()) - self._longest
        one, many = "{n} character too long.", "{n} characters too long."
        self.show_problem(say_count(one, many, over) if over > 0 else "")

    def _fit(self) -> None:
        look = current()
        height = QFontMetrics(look.font()).lineSpacing() * self._lines
        self.box.setFixedHeight(height + look.px(20))
