"""The main window on a real logbook with a cleared crop that was picked three times, beside an earlier one."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from pytestqt.qtbot import QtBot

from growlog.desktop.main_window import MainWindow
from growlog.desktop.review.review_dialog import ReviewDialog
from growlog.desktop.settings import Settings
from growlog.records.crop import Crop
from growlog.records.entry import Note, Pick
from growlog.services.crops import clear_crop
from growlog.services.open_logbook import OpenLogbook
from tests.desktop.fakes import FakeFileChoice, FakeMessages
from tests.logbooks import logbook, plant_crop, write


@dataclass
class Desktop:
    """All that a test of the review touches."""

    window: MainWindow
    log: OpenLogbook
    crop: Crop
    messages: FakeMessages
    files: FakeFileChoice
    qtbot: QtBot

    def review(self) -> ReviewDialog:
        """The open review once it was read."""
        assert self.window.opened is not None
        self.window.opened.reviews.open()
        return self.read_review()

    def read_review(self) -> ReviewDialog:
        """The review as read last."""
        assert self.window.opened is not None
        dialog = self.window.opened.reviews.dialog
        assert dialog is not None
        self.wait()
        assert dialog.review is not None
        return dialog

    def wait(self) -> None:
        """Until nothing runs in the background."""
        self.qtbot.waitUntil(self._idle, timeout=20_000)

    def _idle(self) -> bool:
        return not self.window.runner.is_busy


@contextmanager
def at_the_desk(qtbot: QtBot, folder: Path) -> Iterator[Desktop]:
    messages, files = FakeMessages(), FakeFileChoice()
    window = MainWindow(Settings(folder / "settings.ini"), messages, files)
    qtbot.addWidget(window)
    with logbook(folder) as log:
        before = plant_crop(log, "Skylight Round", date(2025, 6, 1))
        write(log, before, date(2025, 8, 1), Pick(4, 300.0))
        clear_crop(log, before.id, date(2025, 9, 5))
        crop = plant_crop(log)
        for day, grams in ((date(2025, 12, 29), 160.0), (date(2026, 1, 4), 250.0), (date(2026, 1, 20), 90.0)):
            write(log, crop, day, Pick(2, grams))
        write(log, crop, date(2026, 1, 4), Note(), note="a good week")
        clear_crop(log, crop.id, date(2026, 3, 1))
        window.show_logbook(log)
        window.show()
        assert window.desk is not None
        window.desk.selection.choose_crop(crop.id)
        yield Desktop(window, log, crop, messages, files, qtbot)
