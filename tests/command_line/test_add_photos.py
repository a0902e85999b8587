"""Photos taken in from the command line, each file accounted for."""

import json
import os
import sys
from datetime import date
from pathlib import Path

import pytest

from growlog.services.logbooks import open_log
from tests.command_line.commands import PHOTOS, Terminal
from tests.logbooks import still_clock

pytestmark = pytest.mark.slow

ONE = PHOTOS / "plant-a_2019-10-23-11-05.jpg"
OTHER = PHOTOS / "plant-a_2019-10-24-11-05.jpg"


@pytest.fixture
def no_picture(tmp_path: Path) -> Path:
    """A file that only calls itself a picture."""
    path = tmp_path / "notes.jpg"
    path.write_text("no picture at all", encoding="utf-8")
    return path


def outcomes(terminal: Terminal) -> list[tuple[str, str]]:
    """Name and outcome of each file in the JSON that was printed."""
    return [(Path(f["file"]).name, f["outcome"]) for f in json.loads(terminal.out)["files"]]


def test_each_file_is_told_with_its_day_and_where_the_day_came_from(terminal: Terminal, room: Path) -> None:
    assert terminal("add-photos", room, "--crop", "boxroom gold", ONE, "--json") == 0
    assert json.loads(terminal.out) == {"files": [
        {"file": str(ONE), "day": "2019-10-23", "date_source": "file-name", "outcome": "added", "reason": ""},
    ]}  # fmt: skip
    assert terminal.err == ""


def test_the_same_picture_is_taken_once(terminal: Terminal, room: Path) -> None:
    terminal("add-photos", room, "--crop", "Boxroom Gold", ONE)
    assert terminal("add-photos", room, "--crop", "Boxroom Gold", ONE, OTHER, OTHER, "--json") == 0
    assert outcomes(terminal) == [(ONE.name, "duplicate"), (OTHER.name, "added")]
    terminal("list", room, "--json")
    assert json.loads(terminal.out)["crops"][0]["photos"] == 2


def test_what_is_no_picture_is_refused_and_the_others_go_in(terminal: Terminal, room: Path, no_picture: Path) -> None:
    assert terminal("add-photos", room, "--crop", "Boxroom Gold", no_picture, ONE, "--json") == 1
    assert dict(outcomes(terminal)) == {"notes.jpg": "refused", ONE.name: "added"}


def test_a_doubtful_day_goes_in_with_its_question_unless_strict(terminal: Terminal, room: Path) -> None:
    asking = ("--as-of", "2019-10-20", "add-photos", room, "--crop", "Boxroom Gold", "--json")
    assert terminal(*asking, "--strict", ONE) == 1
    assert outcomes(terminal) == [(ONE.name, "left-out")]
    assert terminal(*asking, ONE) == 0
    assert outcomes(terminal) == [(ONE.name, "questioned")]
    assert "not come yet" in json.loads(terminal.out)["files"][0]["reason"]


def test_strict_takes_the_sure_ones(terminal: Terminal, room: Path) -> None:
    asking = ("--as-of", "2019-10-23", "add-photos", room, "--crop", "Boxroom Gold", "--json", "--strict")
    assert terminal(*asking, OTHER, ONE) == 1
    assert dict(outcomes(terminal)) == {OTHER.name: "left-out", ONE.name: "added"}


def test_a_whole_folder_is_told_in_one_line_for_people(terminal: Terminal, room: Path) -> None:
    pictures = sorted(PHOTOS.glob("plant-a*.jpg"))
    assert terminal("add-photos", room, "--crop", "Boxroom Gold", *pictures) == 0
    assert terminal.out == f"{len(pictures)} photos added\n"
    assert terminal.err == ""


def test_a_refused_file_is_named_with_its_reason_for_people(terminal: Terminal, room: Path, no_picture: Path) -> None:
    assert terminal("add-photos", room, "--crop", "Boxroom Gold", no_picture) == 1
    assert terminal.out.splitlines() == [
        f"{no_picture}: notes.jpg is not a picture, so it was left where it is.",
        "0 photos added, 1 left out",
    ]


def test_a_missing_file_is_refused_not_a_wrong_use(terminal: Terminal, room: Path) -> None:
    assert terminal("add-photos", room, "--crop", "Boxroom Gold", "nowhere.jpg", "--json") == 1
    assert outcomes(terminal) == [("nowhere.jpg", "refused")]


def test_an_unknown_crop_is_wrong_use_and_named(terminal: Terminal, room: Path) -> None:
    assert terminal("add-photos", room, "--crop", "Boxroom Red", ONE) == 2
    assert "no crop Boxroom Red" in terminal.err


def test_a_logbook_that_is_open_elsewhere_takes_no_photos(terminal: Terminal, room: Path) -> None:
    log = open_log(room, still_clock(date(2026, 3, 7)), terminal.folder / "cache")
    try:
        assert terminal("add-photos", room, "--crop", "Boxroom Gold", ONE) == 1
        assert "open in another window" in terminal.err
    finally:
        log.close()


@pytest.mark.skipif(sys.platform != "linux", reason="file names are plain bytes on Linux alone")
def test_a_photo_whose_name_is_no_utf_8_goes_in_like_any_other(terminal: Terminal, room: Path, tmp_path: Path) -> None:
    (tmp_path / "card").mkdir()
    odd = tmp_path / "card" / "p\udcff 2019-10-23.jpg"
    odd.write_bytes(ONE.read_bytes())
    assert terminal("add-photos", room, "--crop", "Boxroom Gold", odd.parent, "--json") == 0
    assert [outcome for _name, outcome in outcomes(terminal)] == ["added"]


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root may read everything")
def test_a_file_without_rights_keeps_no_other_out(terminal: Terminal, room: Path, tmp_path: Path) -> None:
    locked = tmp_path / "locked.jpg"
    locked.write_bytes(OTHER.read_bytes())
    locked.chmod(0)
    assert terminal("add-photos", room, "--crop", "Boxroom Gold", locked, ONE, "--json") == 1
    assert outcomes(terminal) == [("locked.jpg", "refused"), (ONE.name, "added")]
