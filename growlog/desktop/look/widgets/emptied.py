"""Takes everything out of a layout that is filled anew."""

from PySide6.QtWidgets import QBoxLayout


def empty_layout(layout: QBoxLayout) -> None:
    """Hides its widgets at once; they go when the event that asked for it is over."""
    while layout.count():
        item = layout.takeAt(0)
        widget = item.widget() if item is not None else None
        if widget is not None:
            widget.hide()
            widget.deleteLater()
