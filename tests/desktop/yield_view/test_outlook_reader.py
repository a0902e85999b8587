"""The reader behind the bands on the board: off the window's thread, once for each state of a crop."""

from collections.abc import Iterator
from datetime import timedelta

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.desk import Desk
from growlog.desktop.yield_view.outlook_reader import OutlookReader
from growlog.records.crop import Crop
from growlog.services.entries import add_entry
from growlog.services.open_logbook import OpenLogbook
from growlog.services.yield_view.outlook import Outlook
from tests.logbooks import SOWN, entry_on, plant_crop
from tests.services.yield_view.seasons import SEASON, pick, picked

pytestmark = pytest.mark.slow


@pytest.fixture
def desk(log: OpenLogbook, crop: Crop, qtbot: QtBot) -> Iterator[Desk]:
    runner = TaskRunner()
    yield Desk(log, runner)
    qtbot.waitUntil(lambda: not runner.is_busy, timeout=20_000)
    runner.close()


def chosen(desk: Desk, crop: Crop) -> None:
    desk.selection.choose_crop(crop.id)


def test_the_outlook_of_the_chosen_crop_comes_after_its_board(
    qtbot: QtBot, log: OpenLogbook, crop: Crop, desk: Desk
) -> None:
    picked(log, crop)
    reader = OutlookReader(desk, desk)
    with qtbot.waitSignal(reader.told, timeout=20_000) as told:
        desk.open_first()
        assert desk.board is not None  # shown at once, the outlook is worked out later
    assert isinstance(told.args[0], Outlook)
    assert told.args[0].crop_id == crop.id


def test_what_is_known_is_told_at_once_and_a_pick_is_worked_out_anew(
    qtbot: QtBot, log: OpenLogbook, crop: Crop, desk: Desk
) -> None:
    picked(log, crop, SEASON)
    other = plant_crop(log, "Attic Gold")
    reader = OutlookReader(desk, desk)
    with qtbot.waitSignal(reader.told, timeout=20_000) as first:
        desk.open_first()
        chosen(desk, crop)
    chosen(desk, other)
    with qtbot.waitSignal(reader.told, timeout=1) as again:  # at once
        chosen(desk, crop)
    assert again.args[0] is first.args[0]
    with qtbot.waitSignal(reader.told, timeout=20_000) as fresh:
        desk.write(add_entry, entry_on(crop, SOWN + timedelta(78), pick(3, 250.0)))
    assert fresh.args[0] is not first.args[0]


def test_nothing_is_worked_out_for_a_crop_without_picks(qtbot: QtBot, desk: Desk) -> None:
    reader = OutlookReader(desk, desk)
    with qtbot.assertNotEmitted(reader.told, wait=60):
        desk.open_first()
    assert not desk.runner.is_busy


def test_another_crop_chosen_meanwhile_stops_the_one_before(
    qtbot: QtBot, log: OpenLogbook, crop: Crop, desk: Desk
) -> None:
    picked(log, crop)
    other = plant_crop(log, "Attic Gold")
    picked(log, other, SEASON[:3])
    reader = OutlookReader(desk, desk)
    desk.open_first()
    chosen(desk, crop)
    with qtbot.waitSignal(reader.told, timeout=20_000) as told:
        chosen(desk, other)
    assert told.args[0].crop_id == other.id
