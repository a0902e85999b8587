"""Taking back what makes many days of the climate again: off the window's thread, one at a time."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from growlog.desktop.background import TaskRunner
from growlog.desktop.desk import Desk
from growlog.records.change import Change
from growlog.records.room import Room
from growlog.services import undo as undoing
from growlog.services.climate.carry_in import carry_in_logger, logger_files_of, remove_logger_file
from growlog.services.climate.logger_plan import plan_logger_file
from growlog.services.open_logbook import OpenLogbook
from growlog.services.undo import takes_long, undo
from tests.logbooks import furnish, logbook, plant_crop


@pytest.fixture
def log(tmp_path: Path) -> Iterator[OpenLogbook]:
    with logbook(tmp_path) as opened:
        yield opened


@pytest.fixture
def room(log: OpenLogbook) -> Room:
    return furnish(log, plant_crop(log))[0]


@pytest.fixture
def desk(log: OpenLogbook, room: Room, qtbot: QtBot) -> Iterator[Desk]:
    runner = TaskRunner()
    yield Desk(log, runner)
    qtbot.waitUntil(lambda: not runner.is_busy, timeout=20_000)
    runner.close()


def carried_in(log: OpenLogbook, room: Room, folder: Path) -> Change:
    path = folder / "logger.csv"
    path.write_text("Time,Temp (°C),RH (%)\n2026-01-10 08:00,21.5,60\n2026-01-10 08:10,21.7,61\n", encoding="utf-8")
    plan = plan_logger_file(log, path, room.id)
    assert plan is not None
    change = carry_in_logger(log, plan)
    assert change is not None
    return change


def names(log: OpenLogbook, room: Room) -> list[str]:
    return [file.name for file in logger_files_of(log, room.id)]


def test_a_removed_file_comes_back_and_goes_again_off_the_thread(
    qtbot: QtBot, log: OpenLogbook, room: Room, desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(undoing, "_SAMPLES_AT_ONCE", 1)
    carried_in(log, room, tmp_path)
    desk.take(remove_logger_file(log, logger_files_of(log, room.id)[0].id))
    said: list[str] = []
    desk.told.connect(said.append)
    with qtbot.waitSignal(desk.undo_stack.changed, timeout=20_000):
        desk.undo()
        assert desk.slow_undo.is_under_way
        desk.undo()  # a second press of the key takes nothing else back
    what = f"Undo: {desk.undo_stack.redo_title}"
    assert said == [f"{what}. This takes some seconds."] * 2 + [f"{what}. Done."]
    assert (names(log, room), desk.undo_stack.undo_title) == (["logger.csv"], "")
    with qtbot.waitSignal(desk.written, timeout=20_000):
        desk.redo()
    assert names(log, room) == []


def test_what_is_refused_is_said_and_stays_on_the_stack(
    qtbot: QtBot, log: OpenLogbook, room: Room, desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(undoing, "_SAMPLES_AT_ONCE", 1)
    change = carried_in(log, room, tmp_path)
    desk.take(change)
    undo(log, change)  # as another hand would
    with qtbot.waitSignal(desk.refused, timeout=20_000) as said:
        desk.undo()
    assert "cannot be taken back" in said.args[0]
    assert desk.undo_stack.undo_title == change.title


def test_before_the_logbook_is_closed_it_is_waited_for(
    log: OpenLogbook, room: Room, desk: Desk, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(undoing, "_SAMPLES_AT_ONCE", 1)
    desk.take(carried_in(log, room, tmp_path))
    desk.undo()
    desk.slow_undo.wait(20)
    assert names(log, room) == []


def test_only_what_makes_many_days_again_takes_long(log: OpenLogbook, room: Room, tmp_path: Path) -> None:
    assert not takes_long(log, carried_in(log, room, tmp_path))
