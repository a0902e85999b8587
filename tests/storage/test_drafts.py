"""Small files of what is not finished: whole or not there at all."""

import os
from datetime import UTC, datetime
from pathlib import Path

import pytest

from growlog.storage.drafts import draft_file, read_draft, remove_draft, set_draft_aside, write_draft
from growlog.storage.problems import LogbookNotWritable


def test_a_draft_is_read_as_it_was_written_and_the_last_one_counts(tmp_path: Path) -> None:
    assert read_draft(tmp_path, "tally") is None
    write_draft(tmp_path, "tally", "first")
    write_draft(tmp_path, "tally", "zweite Fassung, 86,5 g")
    assert read_draft(tmp_path, "tally") == "zweite Fassung, 86,5 g"
    assert [f.name for f in draft_file(tmp_path, "tally").parent.iterdir()] == ["tally.json"]


def test_a_draft_that_is_removed_leaves_no_folder_but_what_others_left(tmp_path: Path) -> None:
    write_draft(tmp_path, "tally", "x")
    remove_draft(tmp_path, "tally")
    remove_draft(tmp_path, "tally")
    assert list(tmp_path.iterdir()) == []
    write_draft(tmp_path, "tally", "x")
    write_draft(tmp_path, "other", "y")
    remove_draft(tmp_path, "tally")
    assert read_draft(tmp_path, "other") == "y"


def test_a_disk_that_fails_leaves_the_last_draft_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write_draft(tmp_path, "tally", "the last one")

    def no_space(_file: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", no_space)
    with pytest.raises(LogbookNotWritable, match="No space left"):
        write_draft(tmp_path, "tally", "a newer one")
    assert read_draft(tmp_path, "tally") == "the last one"
    assert [f.name for f in draft_file(tmp_path, "tally").parent.iterdir()] == ["tally.json"]


def test_it_is_flushed_to_the_disk_before_it_takes_the_place_of_the_last(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    steps: list[str] = []
    fsync, replace = os.fsync, os.replace
    monkeypatch.setattr(os, "fsync", lambda file: (steps.append("flushed"), fsync(file)))
    monkeypatch.setattr(os, "replace", lambda a, b: (steps.append("replaced"), replace(a, b)))
    write_draft(tmp_path, "tally", "x")
    assert steps == ["flushed", "replaced"]


def test_what_cannot_be_read_is_set_aside_under_a_name_with_its_time(tmp_path: Path) -> None:
    write_draft(tmp_path, "tally", "{")
    aside = set_draft_aside(tmp_path, "tally", datetime(2026, 1, 18, 12, 40, 5, tzinfo=UTC))
    assert aside.name == "tally-unreadable-2026-01-18_124005.json"
    assert aside.read_text() == "{"
    assert read_draft(tmp_path, "tally") is None


def test_a_file_larger_than_any_draft_is_not_read(tmp_path: Path) -> None:
    write_draft(tmp_path, "tally", "x" * (5 << 20))
    with pytest.raises(ValueError, match="larger"):
        read_draft(tmp_path, "tally")
