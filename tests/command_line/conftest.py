"""A terminal for each test."""

import shutil
from datetime import date
from pathlib import Path

import pytest

from tests.command_line.commands import Terminal
from tests.logbooks import logbook, plant_crop


@pytest.fixture
def terminal(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Terminal:
    """A terminal in a folder of its own."""
    return Terminal(tmp_path, capsys)


@pytest.fixture(scope="session")
def made_room(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A logbook with one crop, made once: making its database takes longer than copying it."""
    folder = tmp_path_factory.mktemp("made")
    with logbook(folder) as log:
        plant_crop(log, sown=date(2019, 10, 1))
    return folder / "room"


@pytest.fixture
def room(terminal: Terminal, made_room: Path) -> Path:
    """A logbook with one crop for one test."""
    return shutil.copytree(made_room, terminal.folder / "my room")
