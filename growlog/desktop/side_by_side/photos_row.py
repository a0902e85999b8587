"""Photos of the crops at one plant age, beside each other."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from growlog.desktop.day_sheet.day_words import lost_sentence
from growlog.desktop.day_sheet.shown_picture import ShownPicture
from growlog.desktop.look.theme import current
from growlog.desktop.pictures import Pictures
from growlog.services.side_by_side.beside import CropBeside
from growlog.words import say

_GAP_PX, _HEIGHT_PX, _TITLE_PX = 12, 190, 20


class PhotosRow(QWidget):
    """A pane for each crop: its name, the age of the photo shown, and the photo nearest to the age asked for."""

    def __init__(self, pictures: Pictures) -> None:
        super().__init__()
        self.setObjectName("photosRow")
        self._pictures = pictures
        self._crops: list[CropBeside] = []
        self._shown: list[ShownPicture] = []
        self.titles: list[str] = []
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)

    def show_crops(self, crops: Sequence[CropBeside], age: int) -> None:
        """Other crops."""
        for old in self._shown:
            old.changed.disconnect(self.update)
            old.deleteLater()
        self._crops = list(crops)
        self._shown = [ShownPicture(self._pictures, self) for _ in crops]
        for shown in self._shown:
            shown.changed.connect(self.update)
        self.show_age(age)

    def show_age(self, age: int) -> None:
        """The photos nearest to a plant age, within three days."""
        self.titles = []
        for crop, shown in zip(self._crops, self._shown, strict=True):
            near = crop.photo_near(age)
            shown.follow(None if near is None else near[1])
            day = say("no photo near day {age}", age=age) if near is None else say("day {age}", age=near[0])
            self.titles.append(f"{crop.crop.name}, {day}")
        self.setAccessibleName("; ".join(self.titles))
        self.update()

    def sizeHint(self) -> QSize:
        """A row."""
        return QSize(current().px(560), current().px(_HEIGHT_PX))

    def minimumSizeHint(self) -> QSize:
        """High enough to see a plant."""
        return QSize(current().px(200), current().px(_HEIGHT_PX))

    def paintEvent(self, event: QPaintEvent) -> None:
        """All panes."""
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        count = max(len(self._shown), 1)
        width = (self.width() - _GAP_PX * (count - 1)) / count
        for number, (shown, title) in enumerate(zip(self._shown, self.titles, strict=True)):
            pane = QRectF(number * (width + _GAP_PX), 0, width, self.height())
            self._paint_pane(painter, pane, shown, title)
        painter.end()

    def _paint_pane(self, painter: QPainter, pane: QRectF, shown: ShownPicture, title: str) -> None:
        look = current()
        head = look.px(_TITLE_PX)
        painter.setFont(look.font(11))
        painter.setPen(look.colour("ink"))
        text = painter.fontMetrics().elidedText(title, Qt.TextElideMode.ElideRight, int(pane.width()))
        painter.drawText(QRectF(pane.left(), 0, pane.width(), head), Qt.AlignmentFlag.AlignVCenter, text)
        area = pane.adjusted(0, head, 0, 0)
        painter.fillRect(area, look.colour("soft"))
        image = shown.image
        if image is not None:
            painter.drawImage(_fitted(area, image.width() / max(1, image.height())), image)
            return
        painter.setPen(look.colour("mute"))
        words = say("No photo of this age.") if shown.photo is None else (
            lost_sentence() if shown.is_lost else say("Reading the picture…")
        )  # fmt: skip
        flags = int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap)
        painter.drawText(area.adjusted(8, 8, -8, -8), flags, words)


def _fitted(area: QRectF, shape: float) -> QRectF:
    width = min(area.width(), area.height() * shape)
    return QRectF(area.center().x() - width / 2, area.center().y() - width / shape / 2, width, width / shape)
