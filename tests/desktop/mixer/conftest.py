"""The mixer at a bench that was read from a real logbook, beside hands that press real keys."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QLineEdit
from pytestqt.qtbot import QtBot

from growlog.desktop.mixer import MixerDialog
from growlog.desktop.mixer.dose_line import DoseLine
from growlog.services.mixer import MixerState, bench_of, offers_at
from growlog.services.open_logbook import OpenLogbook
from growlog.services.shelf import add_product
from tests.logbooks import logbook, plant_crop
from tests.services.mixer.bottles import Shelf, bottle, make_shelf


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def shelf(log: OpenLogbook) -> Shelf:
    """Two concentrates and a salt; beside them a bottle without a label, and a sharp one."""
    made = make_shelf(log, plant_crop(log))
    add_product(log, bottle("Tonic"))
    add_product(log, replace(bottle("Strong", n_nitrate=8.0, k2o=10.0), label_max_per_l=2.0))
    return made


@pytest.fixture
def state(shelf: Shelf) -> MixerState:
    return shelf.state


@pytest.fixture
def dialog(qtbot: QtBot, log: OpenLogbook, state: MixerState) -> MixerDialog:
    bench = bench_of(log, state)
    made = MixerDialog(bench, state, offers_at(bench), "for Boxroom Gold, day 112")
    made._throttle._timer.setInterval(0)
    qtbot.addWidget(made)
    with qtbot.waitActive(made):
        made.show()
    return made


def retype(dialog: MixerDialog, line: QLineEdit, text: str) -> None:
    """Types another text into a field, key by key, and lets the last key count."""
    line.setFocus()
    line.selectAll()
    QTest.keyClick(line, Qt.Key.Key_Delete)
    QTest.keyClicks(line, text)
    dialog.current_state()


def line_of(dialog: MixerDialog, product: str) -> DoseLine:
    """The line of a product."""
    return next(line for line in dialog.table.lines if line.dose().product == product)
