"""Changes a property that the style sheet looks at, and lets the style take notice."""

from PySide6.QtWidgets import QWidget


def set_look_property(widget: QWidget, name: str, value: str | bool) -> None:
    """Sets the property and dresses the widget anew if that changed anything."""
    if widget.property(name) == value:
        return
    widget.setProperty(name, value)
    style = widget.style()
    style.unpolish(widget)
    style.polish(widget)
    widget.update()
