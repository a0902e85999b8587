"""Which files are meant when folders and files are dropped."""

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from growlog.photos.picture_problem import Reason
from growlog.photos.picture_search import expand


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    folder = tmp_path / "card"
    for name in ("b.jpg", "A.JPG", "c.heic", "notes.txt", "film.mp4", "thumbs.db", ".hidden.jpg", "._b.jpg"):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(b"x")
    for name in ("sub/d.png", "sub/deeper/e.jpg", ".trash/f.jpg"):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(b"x")
    return folder


def test_a_folder_gives_its_pictures_by_name_and_those_below(folder: Path) -> None:
    found = expand([folder])
    names = [path.relative_to(folder).as_posix() for path in found.files]
    assert names == ["A.JPG", "b.jpg", "c.heic", "sub/d.png", "sub/deeper/e.jpg"]
    assert found.problems == []


def test_a_picture_without_an_ending_is_found_in_a_folder(tmp_path: Path, make_picture: Callable[..., Path]) -> None:
    picture = make_picture("0042", kind="PNG")
    (tmp_path / "README").write_text("no picture")
    assert expand([tmp_path]).files == [picture]


def test_a_file_named_by_itself_is_always_kept(folder: Path) -> None:
    named = [folder / "notes.txt", folder / ".hidden.jpg", folder / "gone.jpg"]
    assert expand(named).files == named


def test_a_file_named_twice_is_looked_at_once(folder: Path) -> None:
    found = expand([folder / "c.heic", folder, folder])
    assert found.files[0] == folder / "c.heic"
    assert len(found.files) == len(set(found.files)) == 5


def test_an_empty_folder_gives_nothing(tmp_path: Path) -> None:
    assert expand([tmp_path]) == ([], [])


def test_a_link_to_a_folder_above_is_not_followed_for_ever(folder: Path) -> None:
    (folder / "sub" / "loop").symlink_to(folder, target_is_directory=True)
    assert len(expand([folder]).files) == 5


def test_a_folder_without_rights_is_a_problem_and_not_a_crash(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    list_folder = os.scandir

    def refuse(path: str) -> object:
        if Path(path).name == "sub":
            raise PermissionError(13, "Permission denied", str(path))
        return list_folder(path)

    monkeypatch.setattr(os, "scandir", refuse)
    found = expand([folder])
    assert [path.name for path in found.files] == ["A.JPG", "b.jpg", "c.heic"]
    [(path, problem)] = found.problems
    assert (path, problem.reason) == (folder / "sub", Reason.NO_RIGHTS)
