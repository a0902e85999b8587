"""A real logbook for dialogs that show what was worked out of it."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from growlog.records.crop import Crop
from growlog.services.open_logbook import OpenLogbook
from tests.logbooks import logbook, plant_crop


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def crop(log: OpenLogbook) -> Crop:
    return plant_crop(log)
