"""Words on the screen in the roles that the style sheet knows."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QFont, QPainter, QPaintEvent
from PySide6.QtWidgets import QFrame, QLabel, QSizePolicy, QWidget

from growlog.desktop.look.restyle import set_look_property


class TextLabel(QLabel):
    """Plain text in one of the roles: page-title, title, subtitle, heading, strong, small, figure, unit, key."""

    def __init__(self, text: str = "", role: str = "", tone: str = "", wraps: bool = False) -> None:
        super().__init__(text)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setWordWrap(wraps)
        if role:
            self.setProperty("role", role)
        if tone:
            self.setProperty("tone", tone)

    def set_tone(self, tone: str) -> None:
        """Another tone: "", mute, accent or problem."""
        set_look_property(self, "tone", tone)


class SectionTitle(QLabel):
    """A small title over a group, in spaced capitals; a screen reader hears the words as they were given."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setProperty("role", "section")
        font = self.font()
        font.setCapitalization(QFont.Capitalization.AllUppercase)
        font.setLetterSpacing(QFont.SpacingType.PercentageSpacing, 110)
        self.setFont(font)
        self.set_title(text)

    def set_title(self, text: str) -> None:
        """Other words."""
        self.setText(text)
        self.setAccessibleName(text)


class ElidedLabel(TextLabel):
    """One line that ends in an ellipsis where the room ends; the whole text is in the tool tip."""

    def __init__(self, text: str = "", role: str = "", tone: str = "", shortest_px: int = 40) -> None:
        super().__init__("", role, tone)
        self._shortest_px = shortest_px
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        self.setText(text)

    def setText(self, text: str) -> None:
        """Other words."""
        super().setText(text)
        self.setToolTip(text)

    def minimumSizeHint(self) -> QSize:
        """It may become narrow."""
        return QSize(self._shortest_px, super().minimumSizeHint().height())

    def shown_text(self) -> str:
        """What is seen of the text at the present width."""
        return self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, self.width())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draws as much of the text as fits."""
        painter = QPainter(self)
        painter.setPen(self.palette().color(self.foregroundRole()))
        painter.drawText(self.rect(), self.alignment() | Qt.AlignmentFlag.AlignVCenter, self.shown_text())
        painter.end()


class Rule(QFrame):
    """A hairline between two things."""

    def __init__(self, vertical: bool = False, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "rule-vertical" if vertical else "rule")
