"""The logbook that the program builds of the sample season, once for the tests that read it."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from growlog.services.exchange import sample_last_day
from growlog.services.logbooks import open_log
from growlog.services.open_logbook import OpenLogbook
from growlog.services.sample import build_sample
from tests.logbooks import still_clock

SAMPLE = Path(__file__).resolve().parents[2] / "sample_season"


@pytest.fixture(scope="session")
def built(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("sample") / "room"
    build_sample(SAMPLE, folder, still_clock(sample_last_day(SAMPLE)))
    return folder


@pytest.fixture
def log(built: Path, tmp_path: Path) -> Iterator[OpenLogbook]:
    opened = open_log(built, still_clock(sample_last_day(SAMPLE)), tmp_path / "cache", read_only=True)
    yield opened
    opened.close()
