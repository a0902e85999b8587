"""The shelf's dialog over a real logbook, its changes written as the window writes them."""

from collections.abc import Iterator
from functools import partial
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.shelf import ShelfDialog
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf import check_product
from tests.logbooks import TODAY, logbook


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def dialog(qtbot: QtBot, log: OpenLogbook) -> ShelfDialog:
    made = ShelfDialog(TODAY, "EUR", partial(check_product, log))
    qtbot.addWidget(made)
    made.show_shelf([])
    with qtbot.waitActive(made):
        made.show()
    return made
