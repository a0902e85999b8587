"""What all commands share: exit codes, one plain sentence, output that no terminal stumbles over."""

import io
import sys
from datetime import date
from pathlib import Path

import pytest

from growlog import __version__
from growlog.command_line.output import never_stumble, progress, tell
from tests.command_line.commands import Terminal


def test_the_version_is_told(terminal: Terminal) -> None:
    assert terminal("--version") == 0
    assert __version__ in terminal.out


def test_help_names_every_command(terminal: Terminal) -> None:
    assert terminal("--help") == 0
    commands = ("open", "demo", "new", "add-crop", "add-photos", "list", "export", "import", "picture",
                "work-out", "mix")  # fmt: skip
    assert all(f"  {name} " in terminal.out for name in commands)


@pytest.mark.parametrize("arguments", [
    ("grow",), ("list",), ("new", "a", "b"), ("list", "x", "--colour"), ("--as-of", "18.1.2026", "list", "x"),
    ("--as-of", "2026-02-30", "list", "x"), ("add-photos", "x", "--crop", "y"), ("export", "x"),
    ("add-crop", "x", "--name", "a", "--species", "b", "--sown", "soon"),
    ("picture", "x", "--screen", "season-board", "--to", "a.png", "--size", "big"),
    ("picture", "x", "--screen", "cellar", "--to", "a.png"),
    ("picture", "x", "--screen", "welcome", "--to", "a.png", "--theme", "pink"),
])  # fmt: skip
def test_wrong_use_is_exit_code_2_and_one_line(terminal: Terminal, arguments: tuple[str, ...]) -> None:
    assert terminal(*arguments) == 2
    assert terminal.out == ""
    assert terminal.err.count("\n") == 1


@pytest.mark.parametrize("command", [("list",), ("export", "--to", "out"), ("open",)])
def test_a_folder_that_is_no_logbook_is_exit_code_1_and_one_line(terminal: Terminal, command: tuple[str, ...]) -> None:
    assert terminal(command[0], terminal.folder, *command[1:]) == 1
    assert terminal.err.endswith("is not a logbook. It was left as it is.\n")


def test_a_path_that_no_system_allows_is_told_in_one_line(terminal: Terminal) -> None:
    assert terminal("new", terminal.folder / ("x" * 300)) == 1
    assert terminal.err.count("\n") == 1


def test_a_picture_is_asked_of_the_window_with_all_that_was_said(terminal: Terminal, room: Path) -> None:
    target = terminal.folder / "board.png"
    code = terminal(
        "picture", room, "--screen", "season-board", "--crop", "Boxroom Gold", "--day", 64, "--size", "1024x640",
        "--theme", "dark", "--text", 150, "--to", target, "--as-of", "2026-01-18",
    )  # fmt: skip
    request, as_of = terminal.pictures[0]
    assert (code, as_of) == (0, date(2026, 1, 18))
    assert (request.folder, request.screen, request.crop, request.day) == (room, "season-board", "Boxroom Gold", 64)
    assert (request.width_px, request.height_px, request.theme, request.text_percent) == (1024, 640, "dark", 150)
    assert request.to == target


def test_the_screens_are_listed_without_a_logbook(terminal: Terminal) -> None:
    assert terminal("picture", "--screens") == 0
    assert terminal.out.splitlines() == ["season-board", "welcome"]


def test_letters_that_a_terminal_cannot_show_are_replaced(monkeypatch: pytest.MonkeyPatch) -> None:
    raw = io.BytesIO()
    monkeypatch.setattr(sys, "stdout", io.TextIOWrapper(raw, encoding="cp1252"))
    never_stumble()
    tell("Böx 🌱")
    sys.stdout.flush()
    assert raw.getvalue().strip() == b"B\xf6x ?"


def test_progress_is_not_drawn_where_the_error_stream_is_no_terminal() -> None:
    with progress("Reading") as show:
        assert show is None


def test_progress_is_drawn_on_a_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    screen = io.StringIO()
    monkeypatch.setattr(screen, "isatty", lambda: True)
    monkeypatch.setattr(sys, "stderr", screen)
    with progress("Reading") as show:
        assert show is not None
        show(1, 2)
        show(2, 2)
    assert "100%" in screen.getvalue()
