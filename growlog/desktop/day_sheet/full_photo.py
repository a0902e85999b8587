"""The photo over the whole window: zoom at the pointer, pan, and go from photo day to photo day."""

from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QColor, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from growlog.desktop.day_sheet.day_words import age_and_day, lost_sentence
from growlog.desktop.day_sheet.shown_picture import ShownPicture
from growlog.desktop.day_sheet.zoom import Zoom
from growlog.desktop.look.icons import IconButton
from growlog.desktop.look.theme import current
from growlog.desktop.look.widgets import Ground
from growlog.desktop.look.widgets.labels import TextLabel
from growlog.desktop.pictures import Pictures
from growlog.services.photo_uses import DayPhoto
from growlog.words import say

_WHEEL_STEP = 1.2
_ARROW_PX = 60


class FullPhoto(QWidget):
    """Lies over its parent and fills it. step asks for the photo day before (-1) or after (+1)."""

    step = Signal(int)
    closed = Signal()

    def __init__(self, pictures: Pictures, parent: QWidget) -> None:
        super().__init__(parent)
        self._window = parent
        self.setObjectName("fullPhoto")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.OpenHandCursor)
        self.shown = ShownPicture(pictures, self)
        self.zoom = Zoom()
        self._dragged_from: QPointF | None = None
        self.bar = Ground("header-bar", self)
        self.bar.setCursor(Qt.CursorShape.ArrowCursor)
        self.title_label = TextLabel("", "title")
        self.hint_label = TextLabel("", "small")
        self.earlier_button = IconButton("previous-day", say("The photo before"))
        self.later_button = IconButton("next-day", say("The photo after"))
        self.close_button = IconButton("close", say("Close (Esc)"))
        self._place_bar()
        self.shown.changed.connect(self._picture_changed)
        self.earlier_button.clicked.connect(self._earlier)
        self.later_button.clicked.connect(self._later)
        self.close_button.clicked.connect(self.leave)
        parent.installEventFilter(self)
        self.hide()

    def show_photo(self, photo: DayPhoto, age: int) -> None:
        """Opens, or shows another photo at the same zoom."""
        self.title_label.setText(age_and_day(age, photo.use.day))
        self.shown.follow(photo)
        self.setAccessibleName(self.title_label.text())
        if self.isHidden():
            self.zoom.fit()
            self.setGeometry(self._window.rect())
            self.show()
            self.raise_()
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def leave(self) -> None:
        """Closes; the window below is as it was."""
        if not self.isHidden():
            self.hide()
            self.closed.emit()

    def picture_rect(self) -> QRectF:
        """Where the picture lies now."""
        return self.zoom.target(self._area(), self._size())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Stays as large as the window."""
        if watched is self._window and event.type() == QEvent.Type.Resize:
            self.setGeometry(self._window.rect())
        return super().eventFilter(watched, event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Esc closes, left and right go to other days, plus and minus zoom, 0 fits."""
        key = event.key()
        if key == Qt.Key.Key_Escape:
            self.leave()
        elif key in (Qt.Key.Key_Left, Qt.Key.Key_Right):
            self.step.emit(-1 if key == Qt.Key.Key_Left else 1)
        elif key in (Qt.Key.Key_Up, Qt.Key.Key_Down):
            self._move(QPointF(0, _ARROW_PX if key == Qt.Key.Key_Up else -_ARROW_PX))
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal, Qt.Key.Key_Minus):
            self._zoom_at(QRectF(self.rect()).center(), 1 / _WHEEL_STEP if key == Qt.Key.Key_Minus else _WHEEL_STEP)
        elif key == Qt.Key.Key_0:
            self.zoom.fit()
            self._picture_changed()
        else:
            event.accept()  # a key meant for the sheet below must not write there unseen

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Zooms about the pointer."""
        notches = event.angleDelta().y() / 120
        self._zoom_at(event.position(), _WHEEL_STEP**notches)
        event.accept()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Takes hold of the picture."""
        if event.button() == Qt.MouseButton.LeftButton:
            self._dragged_from = event.position()
            self.setCursor(Qt.CursorShape.ClosedHandCursor)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Pans."""
        if self._dragged_from is not None:
            self._move(event.position() - self._dragged_from)
            self._dragged_from = event.position()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """Lets go."""
        self._dragged_from = None
        self.setCursor(Qt.CursorShape.OpenHandCursor)

    def mouseDoubleClickEvent(self, event: QMouseEvent) -> None:
        """From the whole picture to its own pixels, and back."""
        self.zoom.toggle(event.position(), self._area(), self._size())
        self._picture_changed()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """The bar goes across the top."""
        super().resizeEvent(event)
        self.bar.setGeometry(0, 0, self.width(), self.bar.sizeHint().height())
        self._picture_changed()

    def paintEvent(self, event: QPaintEvent) -> None:
        """The picture on a dark ground, in either theme."""
        painter = QPainter(self)
        painter.fillRect(self.rect(), QColor("#101214"))
        image = self.shown.image
        if image is not None:
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(self.picture_rect(), image, QRectF(image.rect()))
        else:
            self._paint_words(painter, lost_sentence() if self.shown.is_lost else say("Reading the picture\u2026"))
        painter.end()

    def _paint_words(self, painter: QPainter, words: str) -> None:
        painter.setPen(QColor("#ECE7DC"))
        painter.setFont(current().font(14))
        box = self.rect().adjusted(40, 40, -40, -40)
        painter.drawText(box, int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap), words)

    def _place_bar(self) -> None:
        row = QHBoxLayout(self.bar)
        row.setContentsMargins(20, 6, 12, 6)
        row.setSpacing(8)
        row.addWidget(self.title_label)
        row.addWidget(self.hint_label, 1)
        for button in (self.earlier_button, self.later_button, self.close_button):
            row.addWidget(button)

    def _area(self) -> QRectF:
        top = self.bar.sizeHint().height()
        return QRectF(0, top, self.width(), max(1, self.height() - top))

    def _size(self) -> tuple[int, int]:
        image = self.shown.image
        return (image.width(), image.height()) if image is not None else (1, 1)

    def _zoom_at(self, point: QPointF, factor: float) -> None:
        self.zoom.by(factor, point, self._area(), self._size())
        self._picture_changed()

    def _move(self, by: QPointF) -> None:
        self.zoom.move(by, self._area(), self._size())
        self.update()

    def _picture_changed(self) -> None:
        percent = round(100 * self.picture_rect().width() / self._size()[0])
        self.hint_label.setText(say("{percent} %", percent=percent) if self.shown.image is not None else "")
        self.update()

    def _earlier(self) -> None:
        self.step.emit(-1)
        self.setFocus(Qt.FocusReason.OtherFocusReason)

    def _later(self) -> None:
        self.step.emit(1)
        self.setFocus(Qt.FocusReason.OtherFocusReason)
