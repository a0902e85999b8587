"""Pages on their way to a printer: the system's printer writes a PDF here, which is read again."""

from collections.abc import Callable
from pathlib import Path

import pypdf
import pytest
from PySide6.QtCore import QBuffer, QIODevice
from PySide6.QtGui import QColor, QImage, QPageSize
from PySide6.QtPrintSupport import QPrinter
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.printing import PrinterTarget
from growlog.desktop.windows.page_printer import PagePrinter
from growlog.services.open_logbook import LogbookProblem
from growlog.services.paper import Paper
from tests.desktop.fakes import FakeMessages, FakePrinting


def png(colour: str = "#C04A00") -> bytes:
    image = QImage(210, 297, QImage.Format.Format_RGB32)  # the sides of A4 in mm
    image.fill(QColor(colour))
    buffer = QBuffer()
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    image.save(buffer, "PNG")
    return bytes(buffer.data().data())


def printer_to(path: Path, size: QPageSize.PageSizeId = QPageSize.PageSizeId.A4) -> QPrinter:
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))
    printer.setPageSize(QPageSize(size))
    return printer


@pytest.mark.usefixtures("qapp")
def test_each_page_fills_a_sheet(tmp_path: Path) -> None:
    path = tmp_path / "printed.pdf"
    target = PrinterTarget(printer_to(path))
    assert target.paper is Paper.A4
    assert 72 <= target.dots_per_inch <= 300
    assert target.paint([png(), png("#0072B2"), png()])
    pages = pypdf.PdfReader(path).pages
    assert len(pages) == 3
    # ISO 216: A4 is 210 mm by 297 mm; a point is 1/72 inch of 25.4 mm
    assert float(pages[0].mediabox.width) == pytest.approx(210 / 25.4 * 72, abs=1)
    assert float(pages[0].mediabox.height) == pytest.approx(297 / 25.4 * 72, abs=1)


@pytest.mark.usefixtures("qapp")
def test_only_the_pages_that_were_asked_for_are_printed(tmp_path: Path) -> None:
    printer = printer_to(tmp_path / "printed.pdf", QPageSize.PageSizeId.Letter)
    printer.setFromTo(2, 2)
    target = PrinterTarget(printer)
    assert target.paper is Paper.LETTER
    assert target.paint([png(), png("#0072B2"), png()])
    assert len(pypdf.PdfReader(tmp_path / "printed.pdf").pages) == 1


class Office:
    """A printer, what was said, and the way to both."""

    def __init__(self, qtbot: QtBot, takes: bool = True) -> None:
        self.window = QWidget()
        qtbot.addWidget(self.window)
        self.runner = TaskRunner(self.window)
        self.messages, self.printing = FakeMessages(), FakePrinting(takes)
        self.printer = PagePrinter(self.runner, self.messages, self.printing, self.window)
        self._qtbot = qtbot

    def print_(self, pages: Callable[[Paper, int], list[bytes]]) -> None:
        self.printer.print_pages("Room sheet", Paper.A4, pages)
        self._qtbot.waitUntil(self._idle)
        assert self.runner.close()

    def _idle(self) -> bool:
        return not self.runner.is_busy


def test_pages_are_set_for_the_paper_and_the_fineness_that_were_chosen(qtbot: QtBot) -> None:
    office = Office(qtbot)
    office.print_(told_pages)
    assert office.printing.painted == [b"letter 72"]
    assert office.messages.informed[-1] == "1 page went to the printer."


def test_a_printer_that_takes_nothing_is_told(qtbot: QtBot) -> None:
    office = Office(qtbot, takes=False)
    office.print_(told_pages)
    assert office.messages.problems == ["The printer did not take the pages. Look whether it is on, then print again."]


def test_pages_that_cannot_be_set_are_told(qtbot: QtBot, caplog: pytest.LogCaptureFixture) -> None:
    office = Office(qtbot)
    office.print_(refused_pages)
    assert office.messages.problems == ["Boxroom Gold begins later."]
    assert "failed" in caplog.text


def told_pages(paper: Paper, dots_per_inch: int) -> list[bytes]:
    return [f"{paper.value} {dots_per_inch}".encode()]


def refused_pages(_paper: Paper, _dots_per_inch: int) -> list[bytes]:
    raise LogbookProblem("Boxroom Gold begins later.")
