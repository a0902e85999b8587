"""What the tests of the database share."""

import shutil
from pathlib import Path

import pytest

from growlog.storage.logbook_folder import make_logbook


@pytest.fixture(scope="session")
def _made_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """An empty logbook; making one runs all schema steps, copying it does not."""
    folder = tmp_path_factory.mktemp("made-once") / "room"
    make_logbook(folder)
    return folder


@pytest.fixture
def empty_logbook(_made_once: Path, tmp_path: Path) -> Path:
    """The folder of an empty logbook of its own."""
    return Path(shutil.copytree(_made_once, tmp_path / "room"))
