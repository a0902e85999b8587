"""The dialog of the room sheet, and the file that comes of it."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pypdf
import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.desk import Desk
from growlog.desktop.room_sheet.room_sheet_dialog import RoomSheetDialog
from growlog.desktop.settings import Settings
from growlog.desktop.windows.sheet_windows import SheetWindows
from growlog.services.room_sheet import Paper
from tests.desktop.fakes import FakeFileChoice, FakeMessages, FakePrinting
from tests.logbooks import logbook, plant_crop


def test_the_week_of_the_day_and_the_paper_are_asked_for(qtbot: QtBot) -> None:
    dialog = RoomSheetDialog(date(2026, 3, 7), "letter")
    qtbot.addWidget(dialog)
    dialog.show()
    with qtbot.waitSignal(dialog.wanted) as wanted:
        QTest.mouseClick(dialog.save_button, Qt.MouseButton.LeftButton)
    assert wanted.args == [date(2026, 3, 2), Paper.LETTER]


def test_a_day_that_cannot_be_read_is_not_taken(qtbot: QtBot) -> None:
    dialog = RoomSheetDialog(date(2026, 3, 7), "a4")
    qtbot.addWidget(dialog)
    dialog.show()
    dialog.day_field.line.setText("sometime")
    with qtbot.assertNotEmitted(dialog.wanted):
        dialog.confirm()
    assert dialog.day_field.is_refused


class AtTheDesk:
    """The window's way to the sheet, with a place to save it."""

    def __init__(self, qtbot: QtBot, folder: Path, target: Path) -> None:
        self._made = logbook(folder)
        self.log = self._made.__enter__()
        plant_crop(self.log)
        self.window = QWidget()
        qtbot.addWidget(self.window)
        self.window.resize(900, 600)
        self.window.show()
        self.runner = TaskRunner(self.window)
        desk = Desk(self.log, self.runner, self.window)
        self.messages = FakeMessages()
        self.settings = Settings(folder / "settings.ini")
        self.printing = FakePrinting()
        files = FakeFileChoice([target])
        self.sheets = SheetWindows(desk, self.window, self.settings, files, self.messages, self.printing)

    def save(self, qtbot: QtBot) -> None:
        self.sheets.open()
        assert self.sheets.dialog is not None
        qtbot.addWidget(self.sheets.dialog)
        self.sheets.dialog.confirm()
        qtbot.waitUntil(lambda: not self.runner.is_busy)

    def end(self) -> None:
        self.runner.close()
        self._made.__exit__(None, None, None)


@pytest.fixture
def at_the_desk(qtbot: QtBot, tmp_path: Path) -> Callable[[Path], AtTheDesk]:
    made: list[AtTheDesk] = []

    def make(target: Path) -> AtTheDesk:
        made.append(AtTheDesk(qtbot, tmp_path, target))
        return made[-1]

    yield make  # type: ignore[misc]
    for one in made:
        one.end()


def test_the_sheet_is_saved_and_its_file_named(
    qtbot: QtBot, at_the_desk: Callable[[Path], AtTheDesk], tmp_path: Path
) -> None:
    here = at_the_desk(tmp_path / "week.pdf")
    here.save(qtbot)
    assert "Boxroom Gold" in pypdf.PdfReader(tmp_path / "week.pdf").pages[0].extract_text()
    assert here.messages.informed == ["The room sheet is in week.pdf."]


def test_a_disk_that_does_not_take_it_is_said_and_nothing_is_left(
    qtbot: QtBot, at_the_desk: Callable[[Path], AtTheDesk], tmp_path: Path
) -> None:
    here = at_the_desk(tmp_path / "nowhere" / "week.pdf")
    here.save(qtbot)
    assert here.messages.problems == ["The room sheet could not be written: No such folder."]


def test_the_sheet_goes_to_the_printer_as_whole_pages(
    qtbot: QtBot, at_the_desk: Callable[[Path], AtTheDesk], tmp_path: Path
) -> None:
    here = at_the_desk(tmp_path / "week.pdf")
    here.sheets.open()
    assert here.sheets.dialog is not None
    qtbot.addWidget(here.sheets.dialog)
    here.sheets.dialog.print_button.click()
    qtbot.waitUntil(lambda: not here.runner.is_busy)
    (page,) = here.printing.painted
    image = QImage.fromData(page)
    # US Letter is 8.5 by 11 inches (ANSI/ASME Y14.1), the sheet lies across; 72 dots to the inch here
    assert (image.width(), image.height()) == (792, 612)
    assert here.messages.informed[-1] == "1 page went to the printer."
