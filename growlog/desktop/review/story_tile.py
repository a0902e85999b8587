"""One photo of the story: the picture, its plant age and the milestone next to it."""

from PySide6.QtCore import QEvent, QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QEnterEvent, QFont, QFontMetrics, QImage, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QSizePolicy

from growlog.desktop.look.icons import svg_pixmap
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.pictures import Pictures
from growlog.desktop.review.wording import age_and_day, age_text
from growlog.services.review.model import StoryPhoto
from growlog.words import say

NARROWEST_PX = 76
_SHAPE = 4 / 3  # height to width, as a plant stands


class StoryTile(QAbstractButton):
    """Pressed, it tells which photo it shows; one that can be ticked shows whether it is."""

    chosen = Signal(object)  # StoryPhoto

    def __init__(self, photo: StoryPhoto, pictures: Pictures, *, ticks: bool = False) -> None:
        super().__init__()
        self.photo = photo
        self._pictures = pictures
        self._lost = self._inside = False
        self._caption_lines = 1
        self.setObjectName(f"photo.{photo.age}")
        self.setCheckable(ticks)
        self.setAccessibleName(", ".join(t for t in (age_and_day(photo.age, photo.day), photo.caption) if t))
        self.setToolTip(self.accessibleName())
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
        pictures.small_arrived.connect(self._arrived)
        pictures.lost.connect(self._gone)
        theme_signal().changed.connect(self.update)
        self.clicked.connect(self._tell)

    @property
    def is_lost(self) -> bool:
        """Whether neither a preview nor the original is there."""
        return self._lost

    def caption_lines(self, width: int) -> int:
        """How many lines its caption takes at a width, two at most."""
        words = QFontMetrics(current().font(11)).horizontalAdvance(self.photo.caption)
        return 0 if not self.photo.caption else 1 if words <= width - 4 else 2

    def fit(self, width: int, caption_lines: int = 1) -> None:
        """Takes a width; the height follows."""
        self._caption_lines = caption_lines
        self.setFixedSize(width, round(width * _SHAPE) + self._words_height())

    def sizeHint(self) -> QSize:
        """The least it needs."""
        width = current().px(NARROWEST_PX)
        return QSize(width, round(width * _SHAPE) + self._words_height())

    def enterEvent(self, event: QEnterEvent) -> None:
        """The mouse is over it."""
        self._inside = True
        self.update()
        super().enterEvent(event)

    def leaveEvent(self, event: QEvent) -> None:
        """The mouse is gone."""
        self._inside = False
        self.update()
        super().leaveEvent(event)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The picture fills its place; what does not fit is cut off evenly."""
        painter = QPainter(self)
        painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform)
        place = QRectF(1, 1, self.width() - 2, self.height() - self._words_height() - 2)
        image = self._pictures.small(self.photo.photo.sha256) if not self._lost else None
        self._paint_picture(painter, place, image)
        self._paint_frame(painter, place)
        self._paint_words(painter, place.bottom())
        painter.end()

    def _paint_picture(self, painter: QPainter, place: QRectF, image: QImage | None) -> None:
        look, shape = current(), QPainterPath()
        shape.addRoundedRect(place, 6, 6)
        painter.fillPath(shape, look.colour("soft"))
        if image is not None:
            painter.save()
            painter.setClipPath(shape)
            painter.drawImage(place, image, _middle(image, place))
            painter.restore()
        elif self._lost:
            painter.setPen(look.colour("mute"))
            painter.setFont(look.font(11))
            flags = Qt.AlignmentFlag.AlignCenter | Qt.TextFlag.TextWordWrap
            painter.drawText(place.adjusted(4, 4, -4, -4), flags, say("The file is missing"))

    def _paint_frame(self, painter: QPainter, place: QRectF) -> None:
        look = current()
        strong = self.hasFocus() or (self.isCheckable() and self.isChecked())
        if strong or self._inside:
            painter.setPen(QPen(look.colour("accent" if strong else "edge"), 2))
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.drawRoundedRect(place, 6, 6)
        if self.isCheckable() and self.isChecked():
            side = look.px(18)
            spot = QRectF(place.right() - side - 4, place.top() + 4, side, side)
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(look.colour("accent"))
            painter.drawEllipse(spot)
            inner = look.px(12)
            tick = svg_pixmap("check", look.palette.on_accent, inner, self.devicePixelRatioF())
            painter.drawPixmap(spot.center() - QPointF(inner / 2, inner / 2), tick)

    def _paint_words(self, painter: QPainter, top: float) -> None:
        look, width = current(), self.width()
        painter.setPen(look.colour("ink"))
        painter.setFont(look.font(12, QFont.Weight.DemiBold))
        painter.drawText(QRectF(1, top + look.px(3), width, look.px(16)), Qt.AlignmentFlag.AlignLeft, self._age())
        painter.setPen(look.colour("mute"))
        painter.setFont(look.font(11))
        flags = Qt.AlignmentFlag.AlignLeft | Qt.TextFlag.TextWordWrap
        painter.drawText(QRectF(1, top + look.px(19), width - 2, self._caption_height()), flags, self.photo.caption)

    def _age(self) -> str:
        return age_text(self.photo.age)

    def _words_height(self) -> int:
        return current().px(21) + self._caption_height()

    def _caption_height(self) -> int:
        return QFontMetrics(current().font(11)).lineSpacing() * self._caption_lines

    def _arrived(self, sha256: str) -> None:
        if sha256 == self.photo.photo.sha256:
            self.update()

    def _gone(self, sha256: str) -> None:
        if sha256 == self.photo.photo.sha256:
            self._lost = True
            self.setToolTip(say("{what}: the file is missing", what=self.accessibleName()))
            self.update()

    def _tell(self) -> None:
        self.chosen.emit(self.photo)


def _middle(image: QImage, place: QRectF) -> QRectF:
    """The middle part of a picture that has the shape of its place."""
    wide, high = float(image.width()), float(image.height())
    wanted = place.width() / max(place.height(), 1)
    if wide / max(high, 1) > wanted:
        part = high * wanted
        return QRectF((wide - part) / 2, 0, part, high)
    part = wide / wanted
    return QRectF(0, (high - part) / 2, wide, part)
