"""The one door to the system's print dialog; tests hand in a fake instead."""

from collections.abc import Callable, Sequence
from typing import Protocol

from PySide6.QtCore import QObject
from PySide6.QtGui import QImage, QPageSize, QPainter
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QWidget

from growlog.services.paper import Paper

FINEST_DPI = 300  # finer is not seen in print, and four pages would not fit into memory
_SIZES = {Paper.A4: QPageSize.PageSizeId.A4, Paper.LETTER: QPageSize.PageSizeId.Letter}


class PrintTarget(Protocol):
    """Where pages go once the person has chosen a printer."""

    @property
    def paper(self) -> Paper:
        """The paper that was chosen."""

    @property
    def dots_per_inch(self) -> int:
        """How fine pages are to be drawn."""

    def paint(self, pages: Sequence[bytes]) -> bool:
        """Sends pages, each a PNG of a whole sheet; False where the printer does not take them."""


class Printing(Protocol):
    """Asks for a printer; `on_chosen` is called if one was chosen."""

    def choose(self, title: str, paper: Paper, on_chosen: Callable[[PrintTarget], None]) -> None:
        """Opens the dialog without holding up the program."""


class SystemPrinting(QObject):
    """The system's own dialog."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._printer: QPrinter | None = None
        self._dialog: QPrintDialog | None = None
        self._on_chosen: Callable[[PrintTarget], None] | None = None

    def choose(self, title: str, paper: Paper, on_chosen: Callable[[PrintTarget], None]) -> None:
        """Opens the dialog without holding up the program."""
        self._on_chosen = on_chosen
        self._printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        self._printer.setDocName(title)
        self._printer.setPageSize(QPageSize(_SIZES[paper]))
        self._printer.setFullPage(True)
        self._dialog = QPrintDialog(self._printer, self._window)
        self._dialog.setWindowTitle(title)
        self._dialog.accepted.connect(self._chosen)
        QDialog.open(self._dialog)

    def _chosen(self) -> None:
        if self._printer is not None and self._on_chosen is not None:
            self._on_chosen(PrinterTarget(self._printer))


class PrinterTarget:
    """A printer of the system."""

    def __init__(self, printer: QPrinter) -> None:
        self._printer = printer

    @property
    def paper(self) -> Paper:
        """Letter where that was chosen, else A4, which the pages are scaled from."""
        chosen = self._printer.pageLayout().pageSize().id()
        return Paper.LETTER if chosen == QPageSize.PageSizeId.Letter else Paper.A4

    @property
    def dots_per_inch(self) -> int:
        """The printer's, within reason."""
        return max(72, min(FINEST_DPI, self._printer.resolution()))

    def paint(self, pages: Sequence[bytes]) -> bool:
        """Each page fills a sheet; its own margins are drawn in it. Keeps to the pages that were asked for."""
        self._printer.setFullPage(True)
        wanted = _of_range(pages, self._printer.fromPage(), self._printer.toPage())
        painter = QPainter()
        if not painter.begin(self._printer):
            return False
        done = True
        for number, page in enumerate(wanted):
            done = done and (number == 0 or self._printer.newPage())
            self._draw(painter, QImage.fromData(page))
        return painter.end() and done

    def _draw(self, painter: QPainter, image: QImage) -> None:
        sheet = self._printer.paperRect(QPrinter.Unit.DevicePixel)
        scale = min(sheet.width() / max(1, image.width()), sheet.height() / max(1, image.height()))
        wide, high = image.width() * scale, image.height() * scale
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        left, top = (sheet.width() - wide) / 2, (sheet.height() - high) / 2
        painter.drawImage(sheet.__class__(left, top, wide, high), image)


def _of_range(pages: Sequence[bytes], first: int, last: int) -> Sequence[bytes]:
    """The pages from first to last, counted from 1; 0 means all."""
    return pages if first <= 0 else pages[first - 1 : last if last > 0 else None]
