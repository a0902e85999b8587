"""A dialog that takes the window's height at once, because what it will show is not there when it opens."""

from PySide6.QtCore import QSize, QTimer
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import DialogFrame

_HIGHEST_PX = 760


class TallDialog(DialogFrame):
    """As high as its body asks, but no lower than the window beside it allows."""

    def __init__(self, title: str, subtitle: str = "", parent: QWidget | None = None, width_px: int = 620) -> None:
        super().__init__(title, subtitle, parent, width_px)
        self._wanted: QWidget | None = None
        self._scroll_timer = QTimer(self)
        self._scroll_timer.setSingleShot(True)
        self._scroll_timer.timeout.connect(self._scroll)

    def sizeHint(self) -> QSize:
        """Within the window and the screen."""
        hint, window = super().sizeHint(), self.parentWidget()
        around = self.screen().availableGeometry().height() if window is None else window.window().height()
        least = min(current().px(_HIGHEST_PX), around - 112)
        return QSize(hint.width(), max(min(hint.height(), around - 64), least))

    def bring_into_view(self, widget: QWidget) -> None:
        """Scrolls to something that was just put into the body, once it has its place."""
        self._wanted = widget
        self._scroll_timer.start(0)

    def _scroll(self) -> None:
        layout = self.body_widget.layout()
        if self._wanted is None or not isValid(self._wanted) or layout is None:
            return
        layout.activate()
        self.scroll_area.ensureWidgetVisible(self._wanted, 0, 24)
