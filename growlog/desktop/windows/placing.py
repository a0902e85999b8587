"""Dialogs stand beside the board where that can be: at the right edge of the window, never off the screen."""

from PySide6.QtWidgets import QDialog, QWidget


def open_beside(dialog: QDialog, window: QWidget) -> None:
    """Shows a dialog at the window's right edge without holding the window up."""
    dialog.show()
    outer, screen = window.frameGeometry(), window.screen().availableGeometry()
    left = min(outer.right() - dialog.width() - 24, screen.right() - dialog.width())
    top = min(outer.top() + 72, screen.bottom() - dialog.height())
    dialog.move(max(left, screen.left()), max(top, screen.top()))
    dialog.raise_()
    dialog.activateWindow()
