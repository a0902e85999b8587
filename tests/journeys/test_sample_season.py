"""The sample season opens from the welcome, as of its own last day, then and later."""

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from PySide6.QtCore import Qt

from growlog.services.logbooks import clock_as_of
from tests.journeys.conftest import Person

pytestmark = [pytest.mark.journey, pytest.mark.slow]


def test_the_sample_season_opens_at_its_last_day_and_again_from_the_recent_ones(
    person: Callable[..., Person], tmp_path: Path
) -> None:
    someone = person()
    someone.close()
    someone.clock = clock_as_of()
    someone.start()
    someone.qtbot.mouseClick(someone.window.welcome.sample_button, Qt.MouseButton.LeftButton)
    someone.qtbot.waitUntil(lambda: someone.window.desk is not None, timeout=60_000)
    desk = someone.window.desk
    assert desk is not None
    assert desk.log.today() == date(2026, 3, 7)
    assert len(desk.crops) == 4
    someone.close()
    someone.start()
    someone.opening.start(None)
    reopened = someone.window.desk
    assert reopened is not None
    assert reopened.log.today() == date(2026, 3, 7)
