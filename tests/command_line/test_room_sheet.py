"""The command that writes the room sheet."""

from pathlib import Path

import pypdf

from tests.command_line.commands import Terminal


def test_the_sheet_of_a_week_is_written_as_a_pdf(terminal: Terminal, room: Path) -> None:
    target = terminal.folder / "sheet.pdf"
    code = terminal("--as-of", "2020-01-02", "room-sheet", room, "--to", target, "--paper", "letter")
    assert code == 0
    assert "30 December 2019" in terminal.out
    assert "Boxroom Gold" in pypdf.PdfReader(target).pages[0].extract_text()


def test_a_file_that_is_there_is_written_over_only_when_asked(terminal: Terminal, room: Path) -> None:
    target = terminal.folder / "sheet.pdf"
    target.write_bytes(b"mine")
    assert terminal("room-sheet", room, "--to", target) == 1
    assert "--replace" in terminal.err
    assert target.read_bytes() == b"mine"
    assert terminal("room-sheet", room, "--to", target, "--replace") == 0
    assert target.read_bytes().startswith(b"%PDF")


def test_a_day_of_any_other_week_may_be_named(terminal: Terminal, room: Path) -> None:
    target = terminal.folder / "sheet.pdf"
    assert terminal("room-sheet", room, "--to", target, "--week", "2019-11-07") == 0
    assert "4 November 2019" in terminal.out
