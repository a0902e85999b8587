"""Targets that a wet thumb hits: every button and field of the tally is at least this high and wide."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget

from growlog.desktop.look.widgets import Button

LARGE_TEXT = 1.4  # from this scale of the text on, what stood side by side stands one below the other


def touch(widget: QWidget) -> QWidget:
    """Makes a field or a button as large as a thumb asks."""
    widget.setProperty("reach", "thumb")
    return widget


def touch_button(text: str, role: str = "", icon: str = "", name: str = "") -> Button:
    """A large button. A click leaves the focus where it is, at the scale; Tab still reaches it."""
    button = Button(text, role, icon, name)
    touch(button)
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    return button


def with_key(words: str, key: str) -> str:
    """A button's words and its key behind them."""
    return f"{words}  {key}"
