"""Commands on a logbook as a whole."""

import json
import os
import shutil
import subprocess
import sys
from datetime import date
from pathlib import Path

import pytest

from growlog.services.logbooks import open_log
from tests.command_line.commands import Terminal
from tests.logbooks import still_clock
from tests.sharing.packages import AS_OF, PHOTO_BYTES, full_package

pytestmark = pytest.mark.slow


@pytest.fixture
def sample(terminal: Terminal) -> Path:
    """A sample season where the terminal's openers say that it is."""
    from growlog.sharing.data_package import write_package

    folder = terminal.folder / "sample_package"
    photo = folder / full_package().photos[0].path
    photo.parent.mkdir(parents=True)
    photo.write_bytes(PHOTO_BYTES)
    write_package(full_package(), folder)
    return folder


def test_a_new_crop_is_listed_with_its_numbers_as_numbers(terminal: Terminal) -> None:
    room = terminal.folder / "my room"
    assert terminal("new", room, "--name", "Box room") == 0
    arguments = ("--name", "Boxroom Gold", "--species", "pattypan", "--sown", "2019-10-01", "--packet-days", 58)
    assert terminal("add-crop", room, *arguments) == 0
    assert terminal("--as-of", "2019-11-01", "list", room, "--json") == 0
    assert json.loads(terminal.out) == {"crops": [{
        "name": "Boxroom Gold", "species": "pattypan", "sown": "2019-10-01", "cleared": None, "age_days": 31,
        "photos": 0, "entries": 0, "fruit": 0, "culled": 0, "weight_g": 0.0, "estimated_g": 0.0,
        "first_flower_age": None, "first_pick_age": None,
    }]}  # fmt: skip


def test_the_list_for_people_names_the_crop_and_its_age(terminal: Terminal, room: Path) -> None:
    assert terminal("list", room, "--as-of", "2019-11-01") == 0
    assert terminal.out == "Boxroom Gold (pattypan): day 31, photos 0, entries 0, fruit 0, 0 g\n"


def test_an_empty_logbook_says_that_it_has_no_crop(terminal: Terminal) -> None:
    terminal("new", terminal.folder / "empty")
    assert terminal("list", terminal.folder / "empty") == 0
    assert "no crop" in terminal.out


def test_a_logbook_made_at_a_relative_path_is_named_by_its_folder(
    terminal: Terminal, monkeypatch: pytest.MonkeyPatch
) -> None:
    (terminal.folder / "Zwölf Töpfe").mkdir()
    monkeypatch.chdir(terminal.folder / "Zwölf Töpfe")
    assert terminal("new", ".") == 0
    assert terminal("export", ".", "--to", "../out") == 0
    assert "Zwölf Töpfe" in (terminal.folder / "out" / "logbook.csv").read_text(encoding="utf-8")


def test_a_second_logbook_is_not_made_over_the_first(terminal: Terminal, room: Path) -> None:
    assert terminal("new", room) == 1
    assert "already holds a logbook" in terminal.err


@pytest.mark.parametrize("arguments, word", [
    (("--name", "boxroom gold", "--species", "pattypan", "--sown", "2019-10-01"), "crop of this name"),
    (("--name", "Other", "--species", "", "--sown", "2019-10-01"), "what kind of plant"),
    (("--name", "Other", "--species", "pattypan", "--sown", "2999-10-01"), "not come yet"),
    (("--name", "Other", "--species", "pattypan", "--sown", "2019-10-01", "--packet-days", "0"), "outside 1 to 400"),
])  # fmt: skip
def test_a_crop_that_would_not_be_true_is_refused_in_one_line(
    terminal: Terminal, room: Path, arguments: tuple[str, ...], word: str
) -> None:
    assert terminal("add-crop", room, *arguments) == 1
    assert word in terminal.err
    assert terminal.err.count("\n") == 1


def test_a_logbook_that_is_open_elsewhere_takes_no_crop_but_can_be_listed(terminal: Terminal, room: Path) -> None:
    log = open_log(room, still_clock(), terminal.folder / "cache")
    try:
        assert terminal("add-crop", room, "--name", "B", "--species", "chilli", "--sown", "2019-10-01") == 1
        assert "open in another window" in terminal.err
        assert terminal("list", room) == 0
    finally:
        log.close()


def test_open_hands_the_folder_and_the_day_to_the_window(terminal: Terminal, room: Path) -> None:
    assert terminal("--as-of", "2026-01-18", "open", room, "--read-only") == 0
    assert terminal.windows == [(room, date(2026, 1, 18), True)]


def test_open_refuses_what_is_no_logbook_without_a_window(terminal: Terminal) -> None:
    assert terminal("open", terminal.folder / "nowhere") == 1
    assert "is not a logbook" in terminal.err
    assert terminal.windows == []


def test_without_a_command_the_last_logbook_is_asked_for(terminal: Terminal) -> None:
    assert terminal() == 0
    assert terminal.windows == [(None, None, False)]


@pytest.mark.usefixtures("sample")
def test_demo_builds_the_sample_season_and_opens_it_as_of_its_last_day(terminal: Terminal) -> None:
    assert terminal("demo") == 0
    folder = terminal.folder / "data" / "sample-season"
    assert terminal.windows == [(folder, AS_OF, False)]
    assert str(folder) in terminal.out


@pytest.mark.usefixtures("sample")
def test_demo_leaves_a_sample_season_that_is_there_as_it_is(terminal: Terminal) -> None:
    target = terminal.folder / "mine"
    assert terminal("demo", "--to", target, "--no-open") == 0
    terminal("add-crop", target, "--name", "Another", "--species", "chilli", "--sown", "2026-01-01")
    assert terminal("demo", "--to", target, "--no-open") == 0
    terminal("list", target, "--json")
    assert {c["name"] for c in json.loads(terminal.out)["crops"]} == {"Boxroom Gold", "Another"}
    assert terminal.windows == []


def test_demo_without_its_sample_season_says_so(terminal: Terminal) -> None:
    assert terminal("demo") == 1
    assert "datapackage.json: The file is missing" in terminal.err


def test_a_logbook_goes_out_as_a_data_set_and_comes_back(terminal: Terminal, sample: Path) -> None:
    back, out = terminal.folder / "back", terminal.folder / "out"
    assert terminal("import", sample, "--to", back) == 0
    assert terminal("--as-of", AS_OF, "export", back, "--to", out, "--complete") == 0
    assert "places and cameras are still in them" in terminal.out
    assert (out / "entries.csv").read_bytes() == (sample / "entries.csv").read_bytes()
    assert (out / "datapackage.json").read_bytes() == (sample / "datapackage.json").read_bytes()


def test_an_import_that_is_wrong_names_the_place_and_makes_no_logbook(terminal: Terminal, sample: Path) -> None:
    (sample / "culls.csv").write_bytes(b"entry\r\n")
    assert terminal("import", sample, "--to", terminal.folder / "back") == 1
    assert terminal.err.startswith("culls.csv, row 1: ")
    assert not (terminal.folder / "back").exists()


def test_an_import_into_a_logbook_with_a_crop_is_refused(terminal: Terminal, sample: Path, room: Path) -> None:
    assert terminal("import", sample, "--to", room) == 1
    assert "Read it into a new logbook" in terminal.err


@pytest.mark.slow
def test_the_program_runs_as_a_module_without_touching_qt(terminal: Terminal, room: Path) -> None:
    environment = {**os.environ, "PYTHONPATH": str(Path(__file__).parents[2]), "PYTHONIOENCODING": "ascii"}
    odd = shutil.copytree(room, terminal.folder / "Böx")
    listing = [sys.executable, "-X", "importtime", "-m", "growlog", "list", str(odd)]
    done = subprocess.run(listing, env=environment, capture_output=True, text=True, timeout=60, check=False)
    assert done.returncode == 0, done.stderr[-2000:]
    assert done.stdout.startswith("Boxroom Gold (pattypan)")
    assert "PySide6" not in done.stderr


def test_starting_the_module_imports_nothing_heavy() -> None:
    heavy = ("PySide6", "sqlalchemy", "PIL", "click")
    code = f"import sys, growlog.__main__; print([m for m in {heavy} if m in sys.modules])"
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=Path(__file__).parents[2],
        capture_output=True,
        text=True,
        timeout=60,
        check=True,
    )
    assert done.stdout.strip() == "[]"
