"""A dialog whose content has become longer takes the room that the screen has left."""

from functools import partial

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QDialog


def grow_to_fit(dialog: QDialog) -> None:
    """Once its content is laid out: as high as it asks for, never beyond the screen; it never becomes lower."""
    QTimer.singleShot(0, dialog, partial(_grow, dialog))


def _grow(dialog: QDialog) -> None:
    screen = dialog.screen().availableGeometry()
    height = min(max(dialog.height(), dialog.sizeHint().height()), screen.height())
    dialog.resize(dialog.width(), height)
    beyond = dialog.y() + height - screen.bottom()
    if beyond > 0:
        dialog.move(dialog.x(), max(screen.top(), dialog.y() - beyond))
