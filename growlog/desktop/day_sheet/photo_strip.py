"""All photos of the day in small, to choose which one is shown large."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import QPoint, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QContextMenuEvent, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QWidget

from growlog.desktop.day_sheet.photo_frame import cropped
from growlog.desktop.look.theme import current, theme_signal
from growlog.desktop.look.widgets import FlowLayout
from growlog.desktop.pictures import Pictures
from growlog.services.photo_uses import DayPhoto
from growlog.words import say

_WIDTH_PX, _HEIGHT_PX = 56, 56


class PhotoStrip(QWidget):
    """Says which photo was chosen, and where the menu of which photo is wanted."""

    chosen = Signal(int)
    menu_wanted = Signal(int, QPoint)

    def __init__(self, pictures: Pictures) -> None:
        super().__init__()
        self._pictures = pictures
        self._row = FlowLayout(self, 8)
        self.thumbnails: list[Thumbnail] = []

    def show_photos(self, photos: Sequence[DayPhoto], chosen: int = 0) -> None:
        """The photos of a day; a single one needs no strip."""
        for old in self.thumbnails:
            self._row.removeWidget(old)
            old.hide()
            old.deleteLater()
        shown = photos if len(photos) > 1 else ()
        self.thumbnails = [self._thumbnail(place, photo) for place, photo in enumerate(shown)]
        self.setVisible(len(photos) > 1)
        self.mark_chosen(chosen)

    def mark_chosen(self, place: int) -> None:
        """Outlines the one that is shown large."""
        for at, thumbnail in enumerate(self.thumbnails):
            thumbnail.setChecked(at == place)

    def _thumbnail(self, place: int, photo: DayPhoto) -> "Thumbnail":
        words = say("Photo {n}, leads the day", n=place + 1) if photo.use.leads else say("Photo {n}", n=place + 1)
        made = Thumbnail(self._pictures, photo, words)
        made.clicked.connect(partial(self.chosen.emit, place))
        made.menu_wanted.connect(partial(self.menu_wanted.emit, place))
        self._row.addWidget(made)
        made.show()
        return made


class Thumbnail(QAbstractButton):
    """One small photo."""

    menu_wanted = Signal(QPoint)

    def __init__(self, pictures: Pictures, photo: DayPhoto, words: str) -> None:
        super().__init__()
        self._image = pictures.small_now(photo.photo.sha256)
        self.setCheckable(True)
        self.setToolTip(words)
        self.setAccessibleName(words)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        theme_signal().changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        """A small square."""
        look = current()
        return QSize(look.px(_WIDTH_PX), look.px(_HEIGHT_PX))

    def nextCheckState(self) -> None:
        """Which one is shown large is told by the strip, not by the click."""

    def contextMenuEvent(self, event: QContextMenuEvent) -> None:
        """The menu of this photo."""
        self.menu_wanted.emit(event.globalPos())

    def paintEvent(self, event: QPaintEvent) -> None:
        """The photo, with an outline if it is shown large or has the focus."""
        painter = QPainter(self)
        painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform)
        area = QRectF(self.rect())
        outline = QPainterPath()
        outline.addRoundedRect(area, 4, 4)
        painter.save()
        painter.setClipPath(outline)
        painter.fillRect(area, current().colour("soft"))
        if self._image is not None:
            painter.drawImage(area, self._image, cropped(self._image, area.width() / area.height()))
        painter.restore()
        if self.isChecked() or self.hasFocus():
            painter.setPen(QPen(current().colour("accent"), 3 if self.hasFocus() else 2))
            painter.drawRoundedRect(area.adjusted(1, 1, -1, -1), 4, 4)
        painter.end()
