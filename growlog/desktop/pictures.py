"""Pictures for the screen: small ones kept in memory, sharp ones as soon as they are read, off the window's thread."""

from collections import OrderedDict
from collections.abc import Callable
from functools import partial
from typing import Any

from PySide6.QtCore import QByteArray, QObject, Signal
from PySide6.QtGui import QImage

from growlog.desktop.background import Lane, TaskRunner
from growlog.records.photo import Photo

_SMALL_KEPT = 1500  # some 150 kB each once decoded
_SHARP_KEPT = 8


class Pictures(QObject):
    """Hands out decoded previews. What is not at hand is fetched, and announced when it has arrived.

    read_small takes a content hash, read_sharp a Photo; both give JPEG bytes or None. make_small, called in the
    background only, may take its time to make a preview again that the cache has lost.
    """

    small_arrived = Signal(str)
    sharp_arrived = Signal(str)
    lost = Signal(str)  # neither preview nor original is there

    def __init__(
        self,
        runner: TaskRunner,
        read_small: Callable[[str], bytes | None],
        read_sharp: Callable[[Photo], bytes | None],
        parent: QObject | None = None,
        make_small: Callable[[str], bytes | None] | None = None,
    ) -> None:
        super().__init__(parent)
        self._runner = runner
        self._read_small = read_small
        self._make_small = make_small or read_small
        self._read_sharp = read_sharp
        self._small: OrderedDict[str, QImage] = OrderedDict()
        self._sharp: OrderedDict[str, QImage] = OrderedDict()
        self._asked: set[str] = set()

    def small(self, sha256: str) -> QImage | None:
        """The small picture if it is in memory; else None now, and small_arrived or lost later."""
        if sha256 in self._small:
            self._small.move_to_end(sha256)
            return self._small[sha256]
        self._fetch(f"small {sha256}", partial(_decoded_small, self._make_small, sha256), self._small_read)
        return None

    def small_now(self, sha256: str) -> QImage | None:
        """The small picture, read here and now if need be: a few milliseconds, for the day line."""
        if sha256 not in self._small:
            _, image = _decoded_small(self._read_small, sha256)
            if image is None:
                self.small(sha256)
                return None
            self._keep(self._small, sha256, image, _SMALL_KEPT)
        return self._small[sha256]

    def sharp(self, photo: Photo) -> QImage | None:
        """The sharp picture if it is in memory; else None now, and sharp_arrived or lost later."""
        if photo.sha256 in self._sharp:
            self._sharp.move_to_end(photo.sha256)
            return self._sharp[photo.sha256]
        self._fetch(f"sharp {photo.sha256}", partial(_decoded_sharp, self._read_sharp, photo), self._sharp_read)
        return None

    def _fetch(self, key: str, work: Callable[[], Any], on_done: Callable[[Any], None]) -> None:
        if key not in self._asked:
            self._asked.add(key)
            self._runner.run(work, on_done=on_done, lane=Lane.WORK)

    def _small_read(self, result: tuple[str, QImage | None]) -> None:
        sha256, image = result
        self._asked.discard(f"small {sha256}")
        if image is None:
            self.lost.emit(sha256)
            return
        self._keep(self._small, sha256, image, _SMALL_KEPT)
        self.small_arrived.emit(sha256)

    def _sharp_read(self, result: tuple[str, QImage | None]) -> None:
        sha256, image = result
        self._asked.discard(f"sharp {sha256}")
        if image is None:
            self.lost.emit(sha256)
            return
        self._keep(self._sharp, sha256, image, _SHARP_KEPT)
        self.sharp_arrived.emit(sha256)

    @staticmethod
    def _keep(kept: "OrderedDict[str, QImage]", sha256: str, image: QImage, at_most: int) -> None:
        kept[sha256] = image
        while len(kept) > at_most:
            kept.popitem(last=False)


def _decoded_small(read: Callable[[str], bytes | None], sha256: str) -> tuple[str, QImage | None]:
    return sha256, _image(read(sha256))


def _decoded_sharp(read: Callable[[Photo], bytes | None], photo: Photo) -> tuple[str, QImage | None]:
    return photo.sha256, _image(read(photo))


def _image(content: bytes | None) -> QImage | None:
    if content is None:
        return None
    image = QImage.fromData(QByteArray(content))
    return None if image.isNull() else image
