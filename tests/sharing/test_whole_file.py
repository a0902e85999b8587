"""Files that are there whole or not at all."""

import os
from pathlib import Path

import pytest

from growlog.sharing.whole_file import made_whole, write_whole


def test_a_file_is_written_over_the_one_before(tmp_path: Path) -> None:
    path = tmp_path / "a.pdf"
    path.write_bytes(b"old")
    write_whole(path, b"new")
    assert path.read_bytes() == b"new"
    assert [p.name for p in tmp_path.iterdir()] == ["a.pdf"]


def test_what_fails_leaves_the_old_file_and_no_half_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(_file: int) -> None:
        raise OSError(28, "No space left on device")

    path = tmp_path / "a.pdf"
    path.write_bytes(b"old")
    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(OSError, match="No space left") as caught:
        write_whole(path, b"new")
    assert caught.value.filename == str(path)
    assert path.read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["a.pdf"]


def test_a_missing_folder_is_named(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError, match="nowhere"):
        write_whole(tmp_path / "nowhere" / "a.pdf", b"new")


def test_a_tool_that_wants_a_path_gets_one_beside_the_target(tmp_path: Path) -> None:
    path = tmp_path / "film.mp4"
    with made_whole(path) as half:
        assert (half.parent, half.suffix) == (tmp_path, ".mp4")
        half.write_bytes(b"new")
        assert not path.exists()
    assert path.read_bytes() == b"new"
    assert [p.name for p in tmp_path.iterdir()] == ["film.mp4"]


def test_a_tool_that_stops_half_way_leaves_the_old_file(tmp_path: Path) -> None:
    path = tmp_path / "film.mp4"
    path.write_bytes(b"old")

    def stops() -> None:
        with made_whole(path) as half:
            half.write_bytes(b"ne")
            raise KeyError

    with pytest.raises(KeyError):
        stops()
    assert path.read_bytes() == b"old"
    assert [p.name for p in tmp_path.iterdir()] == ["film.mp4"]
