"""The mark of each kind of entry: a shape of its own, so that colour never stands alone."""

import math
from collections.abc import Callable
from functools import cache

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QIcon, QPainter, QPainterPath, QPixmap, QPolygonF, QTransform
from PySide6.QtWidgets import QSizePolicy, QWidget

from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.tokens import MARK_TOKENS, Palette

KINDS = tuple(MARK_TOKENS)
SIZE_PX = 14


def paint_mark(painter: QPainter, kind: str, centre: QPointF, size: float, palette: Palette) -> None:
    """Draws the mark of a kind, `size` pixels wide and high, around a point."""
    place = QTransform().translate(centre.x(), centre.y()).scale(size, size)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(QColor(palette.mark(kind)))
    painter.drawPath(place.map(mark_path(kind)))
    painter.restore()


@cache
def mark_path(kind: str) -> QPainterPath:
    """The outline of a kind's mark in a square from -0.5 to 0.5, to be filled."""
    return _SHAPES[kind]()


def mark_pixmap(kind: str, size_px: int, palette: Palette, density: float = 2.0) -> QPixmap:
    """A mark as pixels."""
    side = round(size_px * density)
    pixmap = QPixmap(side, side)
    pixmap.fill(Qt.GlobalColor.transparent)
    painter = QPainter(pixmap)
    paint_mark(painter, kind, QPointF(side / 2, side / 2), side, palette)
    painter.end()
    pixmap.setDevicePixelRatio(density)
    return pixmap


def mark_icon(kind: str, size_px: int = SIZE_PX) -> QIcon:
    """A mark as an icon for a menu or a list, in the colours of now."""
    look = current()
    return _icon(kind, look.px(size_px), look.palette)


@cache
def _icon(kind: str, size_px: int, palette: Palette) -> QIcon:
    made = QIcon()
    for density in (1.0, 2.0):
        made.addPixmap(mark_pixmap(kind, size_px, palette, density))
    return made


class MarkSign(QWidget):
    """A mark standing by itself, for example before an entry's words, which name the kind."""

    def __init__(self, kind: str, size_px: int = SIZE_PX, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._kind = kind
        self._size_px = size_px
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        theme_signal().changed.connect(self.updateGeometry)
        theme_signal().changed.connect(self.update)

    @property
    def kind(self) -> str:
        """Which kind it stands for."""
        return self._kind

    def set_kind(self, kind: str) -> None:
        """Another kind from now on."""
        self._kind = kind
        self.update()

    def sizeHint(self) -> QSize:
        """The square of the mark."""
        side = current().px(self._size_px)
        return QSize(side, side)

    def paintEvent(self, event: object) -> None:
        """Draws the mark in the middle."""
        look = current()
        painter = QPainter(self)
        middle = QPointF(self.width() / 2, self.height() / 2)
        paint_mark(painter, self._kind, middle, look.px(self._size_px), look.palette)
        painter.end()


def _polygon(*points: tuple[float, float]) -> QPainterPath:
    path = QPainterPath()
    path.addPolygon(QPolygonF([QPointF(x, y) for x, y in points]))
    path.closeSubpath()
    return path


def _disc(x: float, y: float, radius: float) -> QPainterPath:
    path = QPainterPath()
    path.addEllipse(QPointF(x, y), radius, radius)
    return path


def _box(left: float, top: float, width: float, height: float, corner: float = 0.0) -> QPainterPath:
    path = QPainterPath()
    path.addRoundedRect(QRectF(left, top, width, height), corner, corner)
    return path


def _turned(path: QPainterPath, degrees: float) -> QPainterPath:
    return QTransform().rotate(degrees).map(path)


def _plus(reach: float, thickness: float) -> QPainterPath:
    across = _box(-reach, -thickness / 2, 2 * reach, thickness, 0.03)
    return across.united(_turned(across, 90))


def _feed() -> QPainterPath:
    return _disc(0, 0, 0.42)


def _reading() -> QPainterPath:
    return _polygon((0, -0.42), (0.46, 0.38), (-0.46, 0.38))


def _training() -> QPainterPath:
    return _turned(_plus(0.52, 0.2), 45)


def _pollination() -> QPainterPath:
    return _polygon((0, -0.49), (0.49, 0), (0, 0.49), (-0.49, 0))


def _fruit_check() -> QPainterPath:
    ring = _disc(0, 0, 0.46).subtracted(_disc(0, 0, 0.32))
    return ring.united(_disc(0, 0, 0.15))


def _pick() -> QPainterPath:
    return _box(-0.4, -0.4, 0.8, 0.8, 0.08)


def _problem() -> QPainterPath:
    corners = [(-90 + 72 * n) * math.pi / 180 for n in range(5)]
    whole = _polygon(*((0.52 * math.cos(a), 0.52 * math.sin(a) + 0.03) for a in corners))
    return whole.subtracted(_box(-0.07, -0.26, 0.14, 0.34)).subtracted(_box(-0.07, 0.16, 0.14, 0.14))


def _treatment() -> QPainterPath:
    return _plus(0.46, 0.3)


def _stage() -> QPainterPath:
    leaf = QPainterPath(QPointF(-0.42, 0.42))
    leaf.cubicTo(QPointF(-0.52, -0.22), QPointF(-0.1, -0.44), QPointF(0.46, -0.46))
    leaf.cubicTo(QPointF(0.44, 0.1), QPointF(0.22, 0.52), QPointF(-0.42, 0.42))
    vein = _polygon((-0.3, 0.24), (0.1, -0.18), (0.16, -0.12), (-0.22, 0.32))
    return leaf.subtracted(vein)


def _light() -> QPainterPath:
    path = _disc(0, 0, 0.22)
    for turn in range(8):
        path = path.united(_turned(_box(-0.05, -0.5, 0.1, 0.17), 45 * turn))
    return path


def _potting_on() -> QPainterPath:
    pot = _polygon((-0.34, -0.1), (0.34, -0.1), (0.22, 0.46), (-0.22, 0.46))
    return pot.united(_box(-0.46, -0.36, 0.92, 0.2, 0.03))


def _calibration() -> QPainterPath:
    half = _disc(0, 0.26, 0.5).subtracted(_disc(0, 0.26, 0.36)).subtracted(_box(-0.6, 0.3, 1.2, 0.6))
    needle = QTransform().translate(0, 0.24).map(_turned(_box(-0.055, -0.34, 0.11, 0.38), 32))
    return half.united(needle).united(_disc(0, 0.26, 0.11))


def _tank_care() -> QPainterPath:
    wall = _box(-0.46, -0.4, 0.92, 0.84, 0.1).subtracted(_box(-0.36, -0.5, 0.72, 0.84))
    return wall.united(_box(-0.36, -0.02, 0.72, 0.4))


def _meter() -> QPainterPath:
    return _polygon((0.14, -0.5), (-0.34, 0.1), (-0.04, 0.1), (-0.14, 0.5), (0.34, -0.12), (0.04, -0.12))


def _note() -> QPainterPath:
    page = _polygon((-0.36, -0.46), (0.12, -0.46), (0.36, -0.2), (0.36, 0.46), (-0.36, 0.46))
    inner = _polygon((-0.25, -0.35), (0.04, -0.35), (0.04, -0.11), (0.25, -0.11), (0.25, 0.35), (-0.25, 0.35))
    return page.subtracted(inner)


def _photo() -> QPainterPath:
    frame = _box(-0.48, -0.36, 0.96, 0.74, 0.06).subtracted(_box(-0.37, -0.25, 0.74, 0.52))
    hill = _polygon((-0.37, 0.27), (-0.08, -0.1), (0.1, 0.1), (0.2, 0.0), (0.37, 0.27))
    return frame.united(hill).united(_disc(0.18, -0.1, 0.07))


_SHAPES: dict[str, Callable[[], QPainterPath]] = {
    "feed": _feed,
    "light": _light,
    "training": _training,
    "pollination": _pollination,
    "fruit-check": _fruit_check,
    "pick": _pick,
    "reading": _reading,
    "calibration": _calibration,
    "problem": _problem,
    "treatment": _treatment,
    "stage": _stage,
    "potting-on": _potting_on,
    "tank-care": _tank_care,
    "meter": _meter,
    "note": _note,
    "photo": _photo,
}
