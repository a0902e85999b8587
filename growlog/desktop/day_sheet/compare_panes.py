"""Two pictures beside each other, or one over the other with a divider that can be moved."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from growlog.desktop.day_sheet.day_words import lost_sentence
from growlog.desktop.day_sheet.shown_picture import ShownPicture
from growlog.desktop.look.theme import current
from growlog.words import say

SIDE_BY_SIDE, SWIPE = "side", "swipe"
_GAP_PX = 12
_STEP, _LARGE_STEP = 0.02, 0.1


class ComparePanes(QWidget):
    """Paints two pictures. In a swipe the left and right keys, and the mouse, move the divider."""

    divider_moved = Signal(float)

    def __init__(self, left: ShownPicture, right: ShownPicture) -> None:
        super().__init__()
        self.setObjectName("comparePanes")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(say("The two photos; left and right keys move the divider of a swipe"))
        self._pictures = (left, right)
        self._mode = SIDE_BY_SIDE
        self._divider = 0.5
        left.changed.connect(self.update)
        right.changed.connect(self.update)

    @property
    def divider(self) -> float:
        """Where the divider stands: 0 at the left end of the picture, 1 at the right."""
        return self._divider

    def set_mode(self, mode: str) -> None:
        """side or swipe."""
        self._mode = mode
        self.setCursor(Qt.CursorShape.SplitHCursor if mode == SWIPE else Qt.CursorShape.ArrowCursor)
        self.update()

    def set_divider(self, share: float) -> None:
        """Moves the divider."""
        self._divider = min(1.0, max(0.0, round(share, 4)))
        self.divider_moved.emit(self._divider)
        self.update()

    def sizeHint(self) -> QSize:
        """Room for two photos."""
        return QSize(880, 520)

    def minimumSizeHint(self) -> QSize:
        """May become small."""
        return QSize(280, 200)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Moves the divider; with Shift in larger steps."""
        step = _LARGE_STEP if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else _STEP
        if self._mode == SWIPE and event.key() in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self.set_divider(self._divider + (step if event.key() == Qt.Key.Key_Right else -step))
        elif self._mode == SWIPE and event.key() in (Qt.Key.Key_Home, Qt.Key.Key_End):
            self.set_divider(0.0 if event.key() == Qt.Key.Key_Home else 1.0)
        else:
            super().keyPressEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """The divider goes where the mouse is."""
        self._drag_to(event.position())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """And follows it."""
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._drag_to(event.position())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Both pictures."""
        painter = QPainter(self)
        painter.setRenderHints(QPainter.RenderHint.SmoothPixmapTransform | QPainter.RenderHint.Antialiasing)
        if self._mode == SWIPE:
            self._paint_swipe(painter)
        else:
            half = (self.width() - _GAP_PX) / 2
            self._paint_one(painter, self._pictures[0], QRectF(0, 0, half, self.height()))
            self._paint_one(painter, self._pictures[1], QRectF(half + _GAP_PX, 0, half, self.height()))
        painter.end()

    def swipe_rect(self) -> QRectF:
        """Where both pictures lie in a swipe: the shape of the right one, the newer by habit."""
        image = self._pictures[1].image or self._pictures[0].image
        area = QRectF(self.rect())
        if image is None:
            return area
        return _fitted(area, image.width() / max(1, image.height()))

    def _paint_swipe(self, painter: QPainter) -> None:
        rect = self.swipe_rect()
        at = rect.left() + rect.width() * self._divider
        for picture, part in (
            (self._pictures[0], QRectF(rect.left(), rect.top(), at - rect.left(), rect.height())),
            (self._pictures[1], QRectF(at, rect.top(), rect.right() - at, rect.height())),
        ):
            painter.save()
            painter.setClipRect(part)
            self._paint_one(painter, picture, rect)
            painter.restore()
        self._paint_divider(painter, at, rect)

    def _paint_divider(self, painter: QPainter, at: float, rect: QRectF) -> None:
        look = current()
        painter.setPen(QPen(look.colour("card"), 4))
        painter.drawLine(QPointF(at, rect.top()), QPointF(at, rect.bottom()))
        painter.setPen(QPen(look.colour("accent"), 3 if self.hasFocus() else 2))
        painter.drawLine(QPointF(at, rect.top()), QPointF(at, rect.bottom()))
        painter.setBrush(look.colour("card"))
        painter.drawEllipse(QPointF(at, rect.center().y()), 12, 12)
        for side in (-1, 1):
            tip = QPointF(at + side * 7, rect.center().y())
            painter.drawLine(tip, tip + QPointF(-side * 3, -3))
            painter.drawLine(tip, tip + QPointF(-side * 3, 3))

    def _paint_one(self, painter: QPainter, picture: ShownPicture, area: QRectF) -> None:
        image = picture.image
        if image is not None:
            rect = area if self._mode == SWIPE else _fitted(area, image.width() / max(1, image.height()))
            painter.drawImage(rect, image, QRectF(image.rect()))
            return
        look = current()
        painter.fillRect(area, look.colour("soft"))
        painter.setPen(look.colour("mute"))
        painter.setFont(look.font())
        flags = int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap)
        painter.drawText(area.adjusted(16, 16, -16, -16), flags, _words_for(picture))

    def _drag_to(self, point: QPointF) -> None:
        if self._mode == SWIPE:
            rect = self.swipe_rect()
            self.set_divider((point.x() - rect.left()) / max(1.0, rect.width()))


def _words_for(picture: ShownPicture) -> str:
    if picture.photo is None:
        return say("No photo of this day.")
    return lost_sentence() if picture.is_lost else say("Reading the picture\u2026")


def _fitted(area: QRectF, shape: float) -> QRectF:
    width = min(area.width(), area.height() * shape)
    height = width / shape
    return QRectF(area.center().x() - width / 2, area.center().y() - height / 2, width, height)
