"""A dialog that takes the window's height at once, because what it will show is not there when it opens."""

from PySide6.QtCore import QSize

from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import DialogFrame

_HIGHEST_PX = 760


class TallDialog(DialogFrame):
    """As high as its body asks, but no lower than the window beside it allows."""

    def sizeHint(self) -> QSize:
        """Within the window and the screen."""
        hint, window = super().sizeHint(), self.parentWidget()
        around = self.screen().availableGeometry().height() if window is None else window.window().height()
        least = min(current().px(_HIGHEST_PX), around - 112)
        return QSize(hint.width(), max(min(hint.height(), around - 64), least))
