"""The README names what there is."""

from pathlib import Path

from growlog.command_line.main import growing_room

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")


def test_every_command_stands_in_the_readme() -> None:
    assert [name for name in growing_room.commands if f"`growing-room {name}" not in README] == []
