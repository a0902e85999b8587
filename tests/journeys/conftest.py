"""The real window on a real logbook, as a person meets it."""

import gc
from collections.abc import Callable, Iterator
from datetime import date
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.main_window import MainWindow
from growlog.desktop.opening import Opening
from growlog.desktop.settings import Settings
from growlog.services.requests import Folders
from tests.desktop.fakes import FakeFileChoice, FakeMessages
from tests.logbooks import TODAY, still_clock

SAMPLE = Path(__file__).parents[2] / "sample_season"


class Person:
    """Someone at the desk: the window, what it told them, and where their files are."""

    def __init__(self, qtbot: QtBot, home: Path, today: date | None = None, hour: int = 12) -> None:
        self.qtbot = qtbot
        home.mkdir(exist_ok=True)
        self.home = home
        self.settings = Settings(home / "settings.ini")
        self.messages = FakeMessages()
        self.files = FakeFileChoice()
        self.folders = Folders(home / "cache", home / "data", SAMPLE)
        self.clock = still_clock(today or TODAY, hour)
        self.start()

    def start(self) -> None:
        """Starts the program."""
        self.window = MainWindow(self.settings, self.messages, self.files)
        self.qtbot.addWidget(self.window)
        self.opening = Opening(self.window, self.settings, self.clock, self.folders)
        self.window.resize(1440, 900)
        self.window.show()

    def new_logbook(self) -> None:
        """Makes a logbook and opens it."""
        self.opening.make(self.home / "room")

    def until_idle(self) -> None:
        """Waits for what runs in the background."""
        self.qtbot.waitUntil(lambda: not self.window.runner.is_busy, timeout=30_000)

    def close(self) -> None:
        """Ends the program."""
        self.window.close()


@pytest.fixture
def person(qtbot: QtBot, tmp_path: Path) -> Iterator[Callable[..., Person]]:
    """Makes a person; what they left open is closed at the end."""
    made: list[Person] = []

    def make(today: date | None = None, hour: int = 12) -> Person:
        made.append(Person(qtbot, tmp_path / f"{len(made)}", today, hour))
        return made[-1]

    gc.collect()
    yield make
    for one in made:
        one.close()
