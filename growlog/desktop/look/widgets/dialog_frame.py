"""The frame of every dialog: a bar with its title, a body that scrolls, a bar with its buttons."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QDialog, QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets.buttons import Button
from growlog.desktop.look.widgets.card import Ground
from growlog.desktop.look.widgets.flow_layout import FlowLayout
from growlog.desktop.look.widgets.labels import TextLabel


class DialogFrame(QDialog):
    """Fill `body`, a column on paper, and add buttons. It never grows beyond the screen: the body scrolls."""

    def __init__(self, title: str, subtitle: str = "", parent: QWidget | None = None, width_px: int = 620) -> None:
        super().__init__(parent)
        self._width_px = width_px
        self.setWindowTitle(title)
        self.title_label = TextLabel(title, "page-title", wraps=True)
        self.subtitle_label = TextLabel(subtitle, "subtitle", wraps=True)
        self.header = Ground("header-bar")
        self.header_row = QHBoxLayout(self.header)
        self.body_widget = QWidget()
        self.body_widget.setObjectName("scrolled")
        self.body = QVBoxLayout(self.body_widget)
        self.note_label = TextLabel("", "small", wraps=True)
        self.footer = Ground("footer-bar")
        self.buttons = FlowLayout()
        self._place()

    def set_title(self, title: str, subtitle: str = "") -> None:
        """Other words in the bar above."""
        self.setWindowTitle(title)
        self.title_label.setText(title)
        self.subtitle_label.setText(subtitle)

    def set_note(self, text: str) -> None:
        """A quiet line above the buttons, such as what is kept and what is not."""
        self.note_label.setText(text)
        self.note_label.setVisible(bool(text))

    def add_button(self, text: str, role: str = "", name: str = "", left: bool = False) -> Button:
        """A button in the bar below; `left` puts it at the left end."""
        button = Button(text, role, name=name)
        if left:
            self.buttons.insert_before_gap(button)
        else:
            self.buttons.addWidget(button)
        if role == "primary":
            button.setDefault(True)
        return button

    def sizeHint(self) -> QSize:
        """As wide as asked, as high as its body, within the screen."""
        room = self.screen().availableGeometry().size() - QSize(24, 48)
        width = min(current().px(self._width_px), room.width())
        bars = self.header.sizeHint().height() + self.footer.heightForWidth(width)
        height = bars + self._body_height(width - 12)
        return QSize(width, min(height, room.height()))

    def setVisible(self, visible: bool) -> None:
        """Takes its own size when first shown; Qt would allow two thirds of the screen only."""
        if visible and not self.testAttribute(Qt.WidgetAttribute.WA_Resized):
            self.resize(self.sizeHint())
        super().setVisible(visible)

    def showEvent(self, event: QShowEvent) -> None:
        """Keeps within the screen, however large the text."""
        room = self.screen().availableGeometry().size()
        if self.width() > room.width() or self.height() > room.height():
            self.resize(self.size().boundedTo(room))
        super().showEvent(event)

    def _body_height(self, width: int) -> int:
        asked = self.body.heightForWidth(width) if self.body.hasHeightForWidth() else -1
        return max(asked, self.body.sizeHint().height()) if asked < 0 else asked

    def _place(self) -> None:
        self.header_row.setContentsMargins(24, 14, 24, 14)
        self.header_row.setSpacing(16)
        self.header_row.addWidget(self.title_label, 1)
        self.header_row.addWidget(self.subtitle_label, 1)
        self.subtitle_label.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.body.setContentsMargins(24, 20, 24, 20)
        self.body.setSpacing(12)
        self.scroll_area = QScrollArea()
        self.scroll_area.setWidgetResizable(True)
        self.scroll_area.setFrameShape(QFrame.Shape.NoFrame)
        self.scroll_area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.scroll_area.setWidget(self.body_widget)
        foot = QVBoxLayout(self.footer)
        foot.setContentsMargins(24, 12, 24, 12)
        foot.setSpacing(8)
        foot.addWidget(self.note_label)
        foot.addLayout(self.buttons)
        self.buttons.add_gap()
        self.note_label.hide()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.header)
        column.addWidget(self.scroll_area, 1)
        column.addWidget(self.footer)
