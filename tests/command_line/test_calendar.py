"""The calendar command."""

from datetime import date
from pathlib import Path

from icalendar import Calendar

from growlog.records.routine import Routine
from growlog.services.due import add_routines
from tests.command_line.commands import Terminal
from tests.logbooks import logbook, plant_crop


def test_it_writes_what_is_due_and_replaces_only_if_told(terminal: Terminal, tmp_path: Path) -> None:
    with logbook(tmp_path) as log:
        plant_crop(log)
        add_routines(log, [Routine("weigh", "Weigh, then note", every_days=5, from_day=date(2026, 3, 7))])
    target = tmp_path / "due.ics"
    given = ("calendar", tmp_path / "room", "--to", target, "--as-of", "2026-03-07", "--days", "11")
    assert terminal(*given) == 0
    assert terminal.out == f"3 things to do written to {target}.\n"
    read = Calendar.from_ical(target.read_bytes()).walk("VEVENT")
    assert [(e.decoded("dtstart"), str(e["summary"])) for e in read] == [
        (date(2026, 3, d), "Weigh, then note: Boxroom Gold") for d in (7, 12, 17)
    ]
    assert terminal(*given) == 1
    assert "is there already" in terminal.err
    assert terminal(*given, "--replace") == 0


def test_wrong_days_are_wrong_use_and_a_folder_without_a_logbook_is_a_sentence(
    terminal: Terminal, room: Path, tmp_path: Path
) -> None:
    assert terminal("calendar", room, "--to", tmp_path / "a.ics", "--days", "0") == 2
    assert terminal("calendar", tmp_path / "nothing", "--to", tmp_path / "a.ics") == 1
    assert not (tmp_path / "a.ics").exists()
