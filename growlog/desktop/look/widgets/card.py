"""Grounds: a card with a hairline round it, and the plain ground of a rail or a sheet."""

from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget


class Card(QFrame):
    """White ground with a hairline and round corners; `body` is its column."""

    def __init__(self, parent: QWidget | None = None, tone: str = "", margin_px: int = 16) -> None:
        super().__init__(parent)
        self.setProperty("role", "card")
        if tone:
            self.setProperty("tone", tone)
        self.body = QVBoxLayout(self)
        self.body.setContentsMargins(margin_px, margin_px, margin_px, margin_px)
        self.body.setSpacing(8)


class Ground(QFrame):
    """A ground without an outline. role: rail (soft), sheet (card), header-bar or footer-bar."""

    def __init__(self, role: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", role)
