"""The README names what there is."""

import json
from pathlib import Path

import pytest

from growlog.calculations.dose_units import DOSE_UNITS
from growlog.command_line.main import growing_room
from tests.command_line.commands import Terminal

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")


def test_every_command_stands_in_the_readme() -> None:
    assert [name for name in growing_room.commands if f"`growing-room {name}" not in README] == []


def test_the_mix_of_the_readme_is_worked_out(terminal: Terminal) -> None:
    example = README.split("```toml\n")[1].split("```")[0]
    (terminal.folder / "mix.toml").write_text(example, encoding="utf-8")
    assert terminal("mix", terminal.folder / "mix.toml", "--json") == 0
    found = json.loads(terminal.out)
    # By hand: 10 mL in a US gallon of 3.785411784 L, of 1.19 g/mL and 4.2 %; water 6 and 8 g in 40 L of 16 % MgO.
    assert found["elements_mg_per_l"]["N"] == pytest.approx(10 / 3.785411784 * 1190 * 0.042, rel=1e-4)
    assert found["elements_mg_per_l"]["Mg"] == pytest.approx(6 + 200 * 0.16 * 0.60304, rel=1e-4)
    assert found["doses"][1]["tank_amount"] == 8


def test_every_unit_of_a_dose_stands_in_the_readme() -> None:
    told = README.split("A dose is in ")[1].split(". With a")[0]
    for sign in "`,()":
        told = told.replace(sign, " ")
    assert {part for unit in DOSE_UNITS for part in unit.split("/")} <= set(told.split())
