"""Buttons of a bar that show only their icons where the room is too small for all their words."""

from collections.abc import Sequence

from PySide6.QtWidgets import QPushButton


def fit_words(buttons: Sequence[QPushButton], room_px: int, spacing_px: int) -> None:
    """Takes the words off one button after the other, in the order given, until all fit; else gives them back.

    A button without words keeps them as its tool tip and for screen readers. Each needs an icon.
    """
    for button in buttons:
        words = str(button.property("words") or button.text())
        button.setProperty("words", words)
        button.setAccessibleName(words)
        _show(button, words)
    for button in buttons:
        if _needed(buttons, spacing_px) <= room_px:
            return
        _show(button, "")


def _show(button: QPushButton, text: str) -> None:
    if button.text() != text:
        button.setText(text)
    button.setToolTip("" if text else str(button.property("words")))


def _needed(buttons: Sequence[QPushButton], spacing_px: int) -> int:
    return sum(b.sizeHint().width() for b in buttons) + spacing_px * (len(buttons) - 1)
