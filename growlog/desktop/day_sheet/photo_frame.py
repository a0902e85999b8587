"""The large photo of the day sheet, cropped to the column, with its buttons for comparing."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import (
    QContextMenuEvent,
    QFont,
    QFontMetrics,
    QImage,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPainterPath,
    QPaintEvent,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import QMenu, QSizePolicy, QWidget

from growlog.desktop.day_sheet.compare_ages import suggested_age, suggested_ages
from growlog.desktop.day_sheet.day_words import lost_sentence
from growlog.desktop.day_sheet.shown_picture import ShownPicture
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import Button
from growlog.desktop.pictures import Pictures
from growlog.services.photo_uses import DayPhoto
from growlog.words import say

_LOWEST, _HIGHEST = 0.6, 1.05  # height of the frame by its width: a portrait is cropped, not let run down the column


class PhotoFrame(QWidget):
    """Click or Enter opens the photo; the menu key or the right button asks for its menu."""

    opened = Signal()
    compare_wanted = Signal(int)
    menu_wanted = Signal(QPoint)

    def __init__(self, pictures: Pictures) -> None:
        super().__init__()
        self.setObjectName("dayPhoto")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        self.shown = ShownPicture(pictures, self)
        self.compare_button = self._corner_button("compare")
        self.other_button = self._corner_button("compareOther")
        self.other_button.setText("\u25be")
        self.other_button.setAccessibleName(say("Compare with another day"))
        self.other_button.setToolTip(say("Compare with another day"))
        self._age = 0
        self._other: int | None = None
        self._others: list[int] = []
        self.shown.changed.connect(self.update)
        theme_signal().changed.connect(self.updateGeometry)
        self.compare_button.clicked.connect(self._compare)
        self.other_button.clicked.connect(self._open_menu)

    def show_photo(self, photo: DayPhoto, age: int, photo_ages: Sequence[int]) -> None:
        """Another photo, of a plant age; the others are what it may be compared with."""
        self.shown.follow(photo)
        self.setAccessibleName(say("Photo of day {age}, Enter opens it large", age=age))
        self._age = age
        self._other = suggested_age(age, photo_ages)
        self._others = suggested_ages(age, photo_ages)
        self.compare_button.setVisible(self._other is not None)
        self.other_button.setVisible(len(self._others) > 1)
        self.compare_button.setAccessibleName(say("Compare with day {age}", age=self._other))
        self.updateGeometry()
        self._place_buttons()

    def sizeHint(self) -> QSize:
        """As wide as the column."""
        return QSize(320, self.heightForWidth(320))

    def hasHeightForWidth(self) -> bool:
        """It keeps its shape."""
        return True

    def heightForWidth(self, width: int) -> int:
        """The photo's own shape within bounds."""
        photo = self.shown.photo
        if photo is None or not photo.photo.width_px:
            return round(width * _LOWEST)
        shape = photo.photo.height_px / photo.photo.width_px
        return round(width * min(_HIGHEST, max(_LOWEST, shape)))

    def minimumSizeHint(self) -> QSize:
        """It may become narrow."""
        return QSize(160, 100)

    def paintEvent(self, event: QPaintEvent) -> None:
        """The photo with round corners, a placeholder, or a sentence."""
        painter = QPainter(self)
        painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform)
        outline = QPainterPath()
        outline.addRoundedRect(QRectF(self.rect()), 6, 6)
        painter.save()
        painter.setClipPath(outline)
        self._paint_inside(painter)
        painter.restore()
        if self.hasFocus():
            painter.setPen(QPen(current().colour("accent"), 2))
            painter.drawRoundedRect(QRectF(self.rect()).adjusted(1, 1, -1, -1), 6, 6)
        painter.end()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Enter opens it large."""
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Space):
            self.opened.emit()
        else:
            super().keyPressEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """A click opens it large."""
        if event.button() == Qt.MouseButton.LeftButton and self.rect().contains(event.position().toPoint()):
            self.opened.emit()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Taken, so that the release comes here."""
        event.accept()

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The menu of the photo."""
        self.menu_wanted.emit(event.globalPos())

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keeps the buttons in their corner."""
        super().resizeEvent(event)
        self._place_buttons()

    def _paint_inside(self, painter: QPainter) -> None:
        image = self.shown.image
        if image is not None:
            painter.drawImage(QRectF(self.rect()), image, cropped(image, self.width() / max(1, self.height())))
            return
        painter.fillRect(self.rect(), current().colour("soft"))
        painter.setPen(current().colour("mute"))
        painter.setFont(current().font())
        words = lost_sentence() if self.shown.is_lost else say("Reading the picture\u2026")
        box = self.rect().adjusted(16, 16, -16, -48)
        painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap), words)

    def _corner_button(self, name: str) -> Button:
        button = Button("", "chip", name=name)
        button.setParent(self)
        button.setCursor(Qt.CursorShape.ArrowCursor)
        button.hide()
        return button

    def _place_buttons(self) -> None:
        right, bottom = self.width() - 8, self.height() - 8
        if self._other is not None:
            self.compare_button.setText(self._compare_words())
        for button in (self.other_button, self.compare_button):
            if button.isHidden():
                continue
            button.adjustSize()
            button.move(right - button.width(), bottom - button.height())
            right -= button.width() + 4

    def _compare_words(self) -> str:
        """In full where the frame has room for it."""
        words = say("Compare with day {age}", age=self._other)
        look = current()
        long_px = QFontMetrics(look.font(13, QFont.Weight.DemiBold)).horizontalAdvance(words) + look.px(72) + 24
        return words if long_px < self.width() else say("Day {age}", age=self._other)

    def compare_menu(self) -> QMenu:
        """The days that the photo is worth being compared with."""
        menu = QMenu(self)
        menu.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        for age in self._others:
            action = menu.addAction(say("Day {age}", age=age))
            action.triggered.connect(partial(self.compare_wanted.emit, age))
        return menu

    def _open_menu(self) -> None:
        self.compare_menu().popup(self.other_button.mapToGlobal(QPoint(0, self.other_button.height())))

    def _compare(self) -> None:
        if self._other is not None:
            self.compare_wanted.emit(self._other)


def cropped(image: QImage, shape: float) -> QRectF:
    """The middle of an image in a shape (width by height); a portrait loses less at its foot, where the pot stands."""
    width, height = image.width(), image.height()
    if width > height * shape:
        kept = height * shape
        return QRectF((width - kept) / 2, 0, kept, height)
    kept = width / shape
    return QRectF(0, (height - kept) * 0.6, width, kept)
