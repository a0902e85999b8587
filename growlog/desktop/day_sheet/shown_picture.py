"""The best picture of a photo there is at this moment, and news when a better one has come."""

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QImage

from growlog.desktop.pictures import Pictures
from growlog.services.photo_uses import DayPhoto


class ShownPicture(QObject):
    """Follows one photo: the small picture at once, the sharp one when it arrives, or the word that it is lost."""

    changed = Signal()

    def __init__(self, pictures: Pictures, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._pictures = pictures
        self._photo: DayPhoto | None = None
        self._image: QImage | None = None
        self._sharp = False
        self._lost = False
        pictures.sharp_arrived.connect(self._arrived)
        pictures.lost.connect(self._gone)

    @property
    def photo(self) -> DayPhoto | None:
        """Which photo is followed."""
        return self._photo

    @property
    def image(self) -> QImage | None:
        """What can be painted now."""
        return self._image

    @property
    def is_sharp(self) -> bool:
        """Whether it is the sharp one."""
        return self._sharp

    @property
    def is_lost(self) -> bool:
        """Whether there is no picture and none will come."""
        return self._lost and self._image is None

    def follow(self, photo: DayPhoto | None) -> None:
        """Another photo from now on."""
        self._photo = photo
        self._image, self._sharp, self._lost = None, False, False
        if photo is not None:
            sharp = self._pictures.sharp(photo.photo)
            self._sharp = sharp is not None
            self._image = sharp or self._pictures.small_now(photo.photo.sha256)
        self.changed.emit()

    def _arrived(self, sha256: str) -> None:
        if self._photo is not None and sha256 == self._photo.photo.sha256 and not self._sharp:
            self._image = self._pictures.sharp(self._photo.photo) or self._image
            self._sharp = True
            self.changed.emit()

    def _gone(self, sha256: str) -> None:
        if self._photo is not None and sha256 == self._photo.photo.sha256 and not self._sharp:
            self._lost = True
            self.changed.emit()
