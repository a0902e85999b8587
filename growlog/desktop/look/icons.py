"""The program's icons: drawn as SVG with one stroke weight, tinted with a token of the theme."""

from functools import cache

from PySide6.QtCore import QByteArray, QObject, QRectF, Qt
from PySide6.QtGui import QAction, QIcon, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QAbstractButton, QToolButton, QWidget

from growlog.desktop.look.theme import current, disabled_ink, theme_signal
from growlog.desktop.resources import resource_root, resource_text

SIZE_PX = 20
_DENSITIES = (1.0, 2.0)


def icon(name: str, token: str = "ink", size_px: int = SIZE_PX) -> QIcon:
    """An icon in a colour of the present theme; ask again after the theme has changed."""
    look = current()
    return _drawn(name, look.palette.colour(token), disabled_ink(look.palette), look.px(size_px))


def icon_names() -> list[str]:
    """The names of all icons that come with the program."""
    return sorted(path.stem for path in (resource_root() / "icons").glob("*.svg"))


@cache
def _drawn(name: str, colour: str, disabled: str, size_px: int) -> QIcon:
    made = QIcon()
    for density in _DENSITIES:
        made.addPixmap(svg_pixmap(name, colour, size_px, density), QIcon.Mode.Normal)
        made.addPixmap(svg_pixmap(name, disabled, size_px, density), QIcon.Mode.Disabled)
    return made


def svg_pixmap(name: str, colour: str, size_px: int, density: float = 1.0) -> QPixmap:
    """One icon as pixels; density is the number of device pixels to a pixel."""
    text = resource_text("icons", f"{name}.svg").replace("currentColor", colour)
    renderer = QSvgRenderer(QByteArray(text.encode()))
    if not renderer.isValid():
        raise ValueError(f"the icon {name} is not a picture")
    side = round(size_px * density)
    pixmap = QPixmap(side, side)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    renderer.render(painter, QRectF(0, 0, side, side))
    painter.end()
    pixmap.setDevicePixelRatio(density)
    return pixmap


class IconKeeper(QObject):
    """Gives its owner, a button or an action, the icon anew whenever the theme changes."""

    def __init__(self, owner: QAbstractButton | QAction, name: str, token: str, size_px: int) -> None:
        super().__init__(owner)
        self._owner = owner
        self._name = name
        self._token = token
        self._size_px = size_px
        theme_signal().changed.connect(self._draw)
        self._draw()

    def change(self, name: str, token: str) -> None:
        """Another icon from now on."""
        self._name = name
        self._token = token
        self._draw()

    def _draw(self) -> None:
        self._owner.setIcon(icon(self._name, self._token, self._size_px))
        if isinstance(self._owner, QAbstractButton):
            side = current().px(self._size_px)
            self._owner.setIconSize(self._owner.iconSize().scaled(side, side, Qt.AspectRatioMode.IgnoreAspectRatio))


def keep_icon(owner: QAbstractButton | QAction, name: str, token: str = "ink", size_px: int = SIZE_PX) -> IconKeeper:
    """Puts an icon on a button or an action and keeps it right when the theme changes."""
    for child in owner.children():
        if isinstance(child, IconKeeper):
            child.change(name, token)
            return child
    return IconKeeper(owner, name, token, size_px)


class IconButton(QToolButton):
    """A button that is only an icon. Its words are the tool tip and what a screen reader says."""

    def __init__(self, name: str, words: str, parent: QWidget | None = None, token: str = "ink") -> None:
        super().__init__(parent)
        self.setToolTip(words)
        self.setAccessibleName(words)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        keep_icon(self, name, token)

    def set_icon(self, name: str, words: str, token: str = "ink") -> None:
        """Another icon and other words, for a button that turns something on and off."""
        keep_icon(self, name, token)
        self.setToolTip(words)
        self.setAccessibleName(words)
