"""The logger's dialog on a real logbook with one room."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.logger.logger_dialog import LoggerDialog
from growlog.desktop.logger.work import LoggerServices
from growlog.records.change import Change
from growlog.records.room import Room
from growlog.services.climate.carry_in import carry_in_logger, logger_files_of
from growlog.services.climate.logger_plan import answered, plan_logger_file
from growlog.services.climate.refused_rows import save_refused_rows
from growlog.services.open_logbook import OpenLogbook
from tests.desktop.fakes import FakeFileChoice
from tests.logbooks import furnish, logbook, plant_crop

HEADING = "Time,Temp (°C),RH (%)"


@dataclass
class Person:
    """Someone at the dialog."""

    dialog: LoggerDialog
    log: OpenLogbook
    room: Room
    folder: Path
    choice: FakeFileChoice
    wait: Callable[[], None]
    changes: list[Change] = field(default_factory=list)

    def read(self, *lines: str, name: str = "logger.csv", heading: str = HEADING) -> None:
        """Reads a file of these lines and waits until it was judged."""
        path = self.folder / name
        path.write_text("\n".join([heading, *lines]) + "\n", encoding="utf-8")
        self.dialog.read(path)
        self.wait()

    def answer(self, question: str, value: str) -> None:
        """Presses the answer of a question."""
        self.dialog.questions.buttons[question, value].click()
        self.wait()

    @property
    def files(self) -> list[str]:
        """The files that the room has."""
        return [file.name for file in logger_files_of(self.log, self.room.id)]


@pytest.fixture
def runner(qapp: object) -> Iterator[TaskRunner]:
    made = TaskRunner()
    yield made
    assert made.close()


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def person(qtbot: QtBot, runner: TaskRunner, log: OpenLogbook, tmp_path: Path) -> Iterator[Person]:
    """A shown dialog for the room of a crop."""
    room, _ = furnish(log, plant_crop(log))
    services = LoggerServices(
        partial(plan_logger_file, log), partial(answered, log), partial(carry_in_logger, log), save_refused_rows,
        partial(logger_files_of, log),
    )  # fmt: skip
    choice = FakeFileChoice()
    dialog = LoggerDialog(runner, services, [room], room.id, choice)
    qtbot.addWidget(dialog)
    dialog.show()

    def wait() -> None:
        qtbot.waitUntil(lambda: dialog.is_at_rest, timeout=20_000)

    made = Person(dialog, log, room, tmp_path, choice, wait)
    dialog.carried_in.connect(made.changes.append)
    yield made
    dialog.close()
