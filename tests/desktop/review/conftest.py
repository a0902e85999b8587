"""The main window on a real logbook, with and without photos."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from tests.desktop.review.at_the_desk import Desktop, at_the_desk
from tests.services.photo_rows import photo_on


@pytest.fixture
def desktop(qtbot: QtBot, tmp_path: Path) -> Iterator[Desktop]:
    with at_the_desk(qtbot, tmp_path) as made:
        for day in (date(2025, 11, 20), date(2025, 12, 29), date(2026, 1, 20)):
            photo_on(made.log, made.crop, day, leads=True)
        yield made


@pytest.fixture
def without_photos(qtbot: QtBot, tmp_path: Path) -> Iterator[Desktop]:
    with at_the_desk(qtbot, tmp_path) as made:
        yield made
