"""What a person's hands do to a field."""

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest


def retype(field: object, text: str) -> None:
    """Takes out what stands in a field's line and types other words."""
    line = field.line  # type: ignore[attr-defined]
    line.setFocus()
    line.selectAll()
    QTest.keyClick(line, Qt.Key.Key_Delete)
    QTest.keyClicks(line, text)


def choose(field: object, key: str) -> None:
    """Chooses from a field's list by its key."""
    box = field.box  # type: ignore[attr-defined]
    box.setCurrentIndex(box.findData(key))
