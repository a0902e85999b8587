"""The command that prints every computed figure of a crop."""

import json
from pathlib import Path

import pytest

from tests.command_line.commands import Terminal

pytestmark = pytest.mark.slow


@pytest.fixture
def terminal(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Terminal:
    made = Terminal(tmp_path, capsys)
    made("new", tmp_path / "room")
    made("add-crop", tmp_path / "room", "--name", "Boxroom Gold", "--species", "pattypan", "--sown", "2025-11-15",
         "--packet-days", 58)  # fmt: skip
    return made


def test_figures_are_told_as_json_under_nine_names(terminal: Terminal) -> None:
    code = terminal("facts", terminal.folder / "room", "--crop", "boxroom gold", "--as-of", "2026-01-02", "--json")
    told = json.loads(terminal.out)
    assert (code, list(told)) == (0, ["figures"])
    names = {"key", "value", "unit", "low", "high", "inputs", "method", "source", "as_of"}
    assert {frozenset(f) for f in told["figures"]} == {frozenset(names)}
    by_key = {f["key"]: f for f in told["figures"]}
    assert (by_key["plant-age"]["value"], by_key["plant-age"]["as_of"]) == (48, "2026-01-02")
    assert by_key["cost-per-fruit"]["value"] is None


def test_figures_are_told_as_lines(terminal: Terminal) -> None:
    assert terminal("facts", terminal.folder / "room", "--as-of", "2026-01-02") == 0
    assert "plant-age: 48" in terminal.out
    assert "cost-per-fruit: none yet" in terminal.out
    assert terminal.err == ""


def test_keys_are_listed_without_a_logbook(terminal: Terminal) -> None:
    assert terminal("facts", "--keys") == 0
    assert "kwh-per-kg (kWh/kg): Electricity for a kg of marketable fruit" in terminal.out
    assert terminal("facts", "--keys", "--json") == 0
    rows = json.loads(terminal.out)["keys"]
    families = {r["family"] for r in rows}
    assert families >= {"crop", "yield", "light", "climate", "energy", "money", "labour"}
    terminal("facts", terminal.folder / "room", "--json")
    assert [f["key"] for f in json.loads(terminal.out)["figures"]] == [r["key"] for r in rows]


def test_of_several_crops_the_first_is_told_and_named(terminal: Terminal) -> None:
    terminal(
        "add-crop", terminal.folder / "room", "--name", "Shelf Ember", "--species", "chilli", "--sown", "2025-12-01"
    )
    assert terminal("facts", terminal.folder / "room", "--as-of", "2026-01-02") == 0
    assert terminal.out.startswith("Boxroom Gold, as of 2026-01-02")
    assert "Say --crop for another" in terminal.err


@pytest.mark.parametrize(
    ("arguments", "code", "sentence"),
    [
        (("--crop", "Nothing"), 1, "There is no crop called Nothing"),
        (("--as-of", "2025-01-01"), 1, "There is no crop in this logbook that had begun by 1 January 2025."),
        (("--crop", "Boxroom Gold", "--as-of", "2025-01-01"), 1, "Boxroom Gold begins on"),
        (("--as-of", "soon"), 2, "soon is not a date"),
    ],
)
def test_what_cannot_be_told_is_a_plain_sentence(
    terminal: Terminal, arguments: tuple[str, ...], code: int, sentence: str
) -> None:
    assert terminal("facts", terminal.folder / "room", *arguments) == code
    assert sentence in terminal.err


def test_without_a_folder_it_says_what_is_missing(terminal: Terminal) -> None:
    assert terminal("facts") == 2
    assert "Say which logbook" in terminal.err


def test_an_empty_logbook_has_no_figures(terminal: Terminal) -> None:
    terminal("new", terminal.folder / "empty")
    assert terminal("facts", terminal.folder / "empty") == 1
    assert "There is no crop in this logbook that had begun by" in terminal.err
