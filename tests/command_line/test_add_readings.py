"""The command that brings an air logger's file in."""

import json
from datetime import date
from pathlib import Path

import pytest

from growlog.records.room import Room
from growlog.services.climate.of_crop import climate_of_room
from growlog.services.open_logbook import new_id
from growlog.services.rooms import rooms_of, save_thing
from tests.command_line.commands import Terminal
from tests.logbooks import logbook


@pytest.fixture
def terminal(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Terminal:
    with logbook(tmp_path) as log:
        save_thing(log, Room(new_id(), "Box room", zone="Europe/Berlin"))
    return Terminal(tmp_path, capsys)


def write_file(terminal: Terminal, *rows: str, heading: str = "Time,Temp (°C),RH (%)") -> Path:
    path = terminal.folder / "logger.csv"
    path.write_text("\n".join([heading, *rows]), encoding="utf-8")
    return path


def days(terminal: Terminal) -> list[tuple[date, int]]:
    with logbook(terminal.folder, make=False) as log:
        return [(d.day, d.sample_count) for d in climate_of_room(log, rooms_of(log)[0].room.id)]


def test_a_plain_file_goes_in(terminal: Terminal) -> None:
    path = write_file(terminal, "2026-01-10 12:00,21,60", "2026-01-10 12:10,22,61")
    assert terminal("add-readings", terminal.folder / "room", path) == 0
    assert "2 samples for Box room" in terminal.out
    assert "It is in the logbook now." in terminal.out
    assert days(terminal) == [(date(2026, 1, 10), 2)]
    assert terminal("add-readings", terminal.folder / "room", path) == 1
    assert "in the logbook already" in terminal.err


def test_a_dry_run_writes_nothing(terminal: Terminal) -> None:
    path = write_file(terminal, "2026-01-10 12:00,21,60")
    assert terminal("add-readings", terminal.folder / "room", path, "--dry-run", "--json") == 0
    told = json.loads(terminal.out)
    assert (told["samples"], told["written"], told["questions"]) == (1, False, [])
    assert days(terminal) == []


def test_humidity_up_to_one_is_asked_about(terminal: Terminal) -> None:
    path = write_file(terminal, "2026-01-10 12:00,21,0.6")
    assert terminal("add-readings", terminal.folder / "room", path) == 1
    assert "Say --humidity with one of: percent (per cent), fraction (a part of one)." in terminal.err
    assert days(terminal) == []
    assert terminal("add-readings", terminal.folder / "room", path, "--humidity", "fraction") == 0
    assert days(terminal) == [(date(2026, 1, 10), 1)]


def test_an_hour_that_came_twice_is_asked_about(terminal: Terminal) -> None:
    path = write_file(terminal, "2025-10-26 02:30,21,60")
    assert terminal("add-readings", terminal.folder / "room", path) == 1
    assert "--repeated-hour" in terminal.err
    assert terminal("add-readings", terminal.folder / "room", path, "--repeated-hour", "later", "--json") == 0
    assert json.loads(terminal.out)["first"] == "2025-10-26T01:30:00+00:00"


def test_rows_are_called_refused_only_once_the_questions_are_answered(terminal: Terminal) -> None:
    path = write_file(terminal, "2025-10-26 02:30,21,60", "2025-10-26 02:30,22,60", "2025-10-26 02:10,23,60")
    assert terminal("add-readings", terminal.folder / "room", path) == 1
    assert "Row 3" not in terminal.err
    assert terminal("add-readings", terminal.folder / "room", path, "--repeated-hour", "later", "--dry-run") == 1
    assert "Row 3: This moment stands in the file already, with other values. 2025-10-26 02:30,22,60" in terminal.err


def test_refused_rows_are_named_and_the_others_go_in(terminal: Terminal) -> None:
    path = write_file(terminal, "soon,21,60", "2026-01-10 12:10,22,61")
    assert terminal("add-readings", terminal.folder / "room", path) == 1
    assert "Row 2: The day and time of this row cannot be read. soon,21,60" in terminal.err
    assert days(terminal) == [(date(2026, 1, 10), 1)]


def test_the_room_is_asked_for_where_there_are_several(terminal: Terminal) -> None:
    with logbook(terminal.folder, make=False) as log:
        save_thing(log, Room(new_id(), "Landing"))
    path = write_file(terminal, "2026-01-10 12:00,21,60")
    assert terminal("add-readings", terminal.folder / "room", path) == 2
    assert "Box room, Landing" in terminal.err
    assert terminal("add-readings", terminal.folder / "room", path, "--room", "Attic") == 1
    assert terminal("add-readings", terminal.folder / "room", path, "--room", "landing") == 0


def test_a_logbook_without_a_room_is_told_so(terminal: Terminal) -> None:
    terminal("new", terminal.folder / "bare")
    assert terminal("add-readings", terminal.folder / "bare", write_file(terminal, "2026-01-10 12:00,21,60")) == 1
    assert "There is no room in this logbook yet." in terminal.err


def test_a_file_that_is_not_there_is_told_so(terminal: Terminal) -> None:
    assert terminal("add-readings", terminal.folder / "room", terminal.folder / "nothing.csv") == 1
    assert "nothing.csv cannot be read" in terminal.err
