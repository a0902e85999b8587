"""The job of one file: hash, facts, capture time, previews."""

import hashlib
import os
from collections.abc import Callable
from datetime import date, time
from pathlib import Path

import pytest

from growlog.photos import survey
from growlog.photos.picture_problem import PictureProblem, Reason
from growlog.photos.preview_cache import PreviewCache
from growlog.photos.previews import PreviewSize
from growlog.photos.survey import rebuild_previews, survey_picture
from growlog.records.photo import CaptureTime, DateSource
from tests.photos.conftest import exif_with


def test_one_file_is_told_in_full_and_its_previews_are_kept(rosettes: list[Path], tmp_path: Path) -> None:
    content = rosettes[0].read_bytes()
    told = survey_picture(rosettes[0], tmp_path)
    assert (told.path, told.byte_count) == (rosettes[0], len(content))
    assert told.sha256 == hashlib.sha256(content).hexdigest()
    assert (told.facts.width_px, told.facts.height_px) == (499, 500)
    assert told.capture == CaptureTime(date(2019, 10, 22), time(11, 5), DateSource.FILE_NAME)
    assert PreviewCache(tmp_path).has(told.sha256)


def test_exif_reaches_the_capture_time(make_picture: Callable[..., Path], tmp_path: Path) -> None:
    path = make_picture("2020-01-01.jpg", exif=exif_with(original="2026:01:18 18:41:02"))
    told = survey_picture(path, tmp_path / "cache")
    assert told.capture == CaptureTime(date(2026, 1, 18), time(18, 41, 2), DateSource.EXIF_ORIGINAL)


def test_the_files_own_time_is_told_where_nothing_else_is(make_picture: Callable[..., Path], tmp_path: Path) -> None:
    path = make_picture()
    os.utime(path, (1_768_737_600, 1_768_737_600))  # 2026-01-18, noon UTC
    told = survey_picture(path, tmp_path / "cache")
    assert told.capture.source is DateSource.FILE_TIME
    assert told.capture.day in (date(2026, 1, 18), date(2026, 1, 19))  # wherever the computer stands


def test_a_picture_whose_previews_are_there_is_not_decoded_again(
    rosettes: list[Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first = survey_picture(rosettes[0], tmp_path)

    def decode(path: Path) -> None:
        raise AssertionError("decoded")

    monkeypatch.setattr(survey, "make_previews", decode)
    assert survey_picture(rosettes[0], tmp_path) == first


def test_a_full_cache_disk_keeps_no_picture_out(make_picture: Callable[..., Path], tmp_path: Path) -> None:
    (tmp_path / "cache").write_text("in the way")
    assert survey_picture(make_picture(), tmp_path / "cache").facts.width_px == 64


def test_what_is_no_picture_is_not_even_hashed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def hash_all(path: Path) -> str:
        raise AssertionError("hashed")

    monkeypatch.setattr(survey, "sha256_of", hash_all)
    film = tmp_path / "film.jpg"
    film.write_bytes(b"\0\0\0\x18ftypisom" + bytes(1000))
    with pytest.raises(PictureProblem) as caught:
        survey_picture(film, tmp_path / "cache")
    assert caught.value.reason is Reason.NOT_A_PICTURE


def test_lost_previews_are_made_again(rosettes: list[Path], tmp_path: Path) -> None:
    told = survey_picture(rosettes[0], tmp_path)
    cache = PreviewCache(tmp_path)
    before = cache.read(told.sha256, PreviewSize.LARGE)
    cache.path_of(told.sha256, PreviewSize.LARGE).unlink()
    rebuild_previews(rosettes[0], tmp_path, told.sha256)
    assert cache.read(told.sha256, PreviewSize.LARGE) == before


def test_previews_are_never_kept_under_another_contents_hash(rosettes: list[Path], tmp_path: Path) -> None:
    with pytest.raises(PictureProblem) as caught:
        rebuild_previews(rosettes[0], tmp_path, "0" * 64)
    assert caught.value.reason is Reason.CHANGED
    assert not PreviewCache(tmp_path).has("0" * 64)
