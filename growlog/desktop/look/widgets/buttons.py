"""Buttons in the roles that the style sheet knows, and the switch between a few ways of seeing."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QLayout, QPushButton, QSizePolicy, QWidget

from growlog.desktop.look.icons import keep_icon
from growlog.desktop.look.widgets.flow_layout import FlowLayout


class Button(QPushButton):
    """A button with words. role: "" (plain), primary, danger, link, chip or step."""

    def __init__(self, text: str, role: str = "", icon: str = "", name: str = "") -> None:
        super().__init__(text)
        self.setAutoDefault(False)
        if role:
            self.setProperty("role", role)
        if icon:
            keep_icon(self, icon, _ICON_TOKENS.get(role, "ink"), 16)
        if name:
            self.setObjectName(name)


_ICON_TOKENS = {"primary": "on_accent", "link": "accent", "danger": "problem"}


class SegmentSwitch(QWidget):
    """A few buttons of which one is down; arrow keys go from one to the next."""

    value_changed = Signal(str)

    def __init__(
        self, choices: Sequence[tuple[str, str]], value: str = "", words: str = "", wraps: bool = False
    ) -> None:
        """wraps: the buttons go on in a further row where the room ends."""
        super().__init__()
        self.setAccessibleName(words)
        across = QSizePolicy.Policy.Preferred if wraps else QSizePolicy.Policy.Maximum
        self.setSizePolicy(across, across if wraps else QSizePolicy.Policy.Fixed)
        layout: QLayout = FlowLayout(self, 4) if wraps else QHBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(4)
        self._group = QButtonGroup(self)
        self._buttons: dict[str, QPushButton] = {}
        for key, text in choices:
            button = _Segment(text)
            button.setObjectName(key)
            self._group.addButton(button)
            self._buttons[key] = button
            layout.addWidget(button)
        self.set_value(value or choices[0][0])
        self._group.buttonToggled.connect(self._toggled)

    def value(self) -> str:
        """The key of the button that is down."""
        return next(key for key, button in self._buttons.items() if button.isChecked())

    def set_value(self, key: str) -> None:
        """Presses a button."""
        self._buttons[key].setChecked(True)

    def button(self, key: str) -> QPushButton:
        """The button of a key."""
        return self._buttons[key]

    def _toggled(self, button: QPushButton, down: bool) -> None:
        if down:
            self.value_changed.emit(self.value())


class _Segment(QPushButton):
    """One button of a switch."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.setProperty("role", "segment")
        self.setCheckable(True)
        self.setAutoDefault(False)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
