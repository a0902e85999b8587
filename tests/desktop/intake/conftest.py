"""An open tray on a real logbook with two crops, and real photos of a week in a phone's folder."""

import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import date
from functools import partial
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.intake import IntakeTray
from growlog.records.crop import Crop
from growlog.services import photo_intake, photo_uses
from growlog.services.crops import crops_of
from growlog.services.open_logbook import OpenLogbook
from tests.desktop.fakes import FakeFileChoice
from tests.logbooks import logbook, plant_crop

ROSETTES = Path(__file__).parents[2] / "data" / "photos" / "daily-rosettes"
TODAY = date(2019, 11, 3)


@dataclass
class Bench:
    """All that a test of the tray touches."""

    tray: IntakeTray
    log: OpenLogbook
    gold: Crop
    light: Crop
    choice: FakeFileChoice
    wait: Callable[[], None]


@pytest.fixture
def phone(tmp_path: Path) -> Path:
    """Three days of one plant, one of them twice, and a file that is no picture."""
    folder = tmp_path / "phone"
    folder.mkdir()
    for day in (22, 23, 24):
        shutil.copy(ROSETTES / f"plant-a_2019-10-{day}-11-05.jpg", folder)
    shutil.copy(ROSETTES / "plant-a_2019-10-24-11-05.jpg", folder / "plant-a_2019-10-25-copy.jpg")
    (folder / "torn.jpg").write_bytes(b"not a picture")
    return folder


@pytest.fixture
def runner(qapp: object) -> Iterator[TaskRunner]:
    made = TaskRunner()
    yield made
    assert made.close()


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path, TODAY) as opened:
        yield opened


@pytest.fixture
def bench(qtbot: QtBot, runner: TaskRunner, log: OpenLogbook) -> Iterator[Bench]:
    """A shown tray whose photos go to Boxroom Gold."""
    gold = plant_crop(log, "Boxroom Gold", date(2019, 10, 20))
    light = plant_crop(log, "Landing Light", date(2019, 10, 1), "chilli")
    choice = FakeFileChoice()
    tray = IntakeTray(
        runner,
        partial(photo_intake.look_at, log),
        partial(photo_intake.judge, log),
        partial(photo_intake.take_in, log),
        crops_of(log),
        gold.id,
        partial(photo_uses.small_picture, log),
        choice,
        TODAY,
    )
    qtbot.addWidget(tray)
    tray.resize(1000, 700)
    tray.show()

    def wait() -> None:
        qtbot.waitUntil(lambda: tray.is_at_rest, timeout=20000)

    yield Bench(tray, log, gold, light, choice, wait)
    tray.close()
