"""Logbooks for the tests of services: real files, a real database, readers shared by all tests of a process."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from growlog.records.crop import Crop
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import SharedReaders, logbook, plant_crop

PHOTOS = Path(__file__).parents[1] / "data" / "photos"


@pytest.fixture(scope="session")
def readers(tmp_path_factory: pytest.TempPathFactory) -> Iterator[SharedReaders]:
    shared = SharedReaders(tmp_path_factory.mktemp("previews"))
    yield shared
    shared.end()


@pytest.fixture
def log(tmp_path: Path, readers: SharedReaders) -> Iterator[OpenLogbook]:
    with logbook(tmp_path, readers=readers) as opened:
        yield opened


@pytest.fixture
def crop(log: OpenLogbook) -> Crop:
    return plant_crop(log)


@pytest.fixture
def rosettes() -> list[Path]:
    """Two real plants photographed once a day; the file names carry the days."""
    return sorted((PHOTOS / "daily-rosettes").glob("*.jpg"))
