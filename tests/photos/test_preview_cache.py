"""The cache of previews: found by content and recipe, broken ones count as missing, races are harmless."""

import hashlib
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from growlog.photos import preview_cache
from growlog.photos.capture_time import ExifTimes
from growlog.photos.picture_file import PictureFacts
from growlog.photos.preview_cache import PreviewCache
from growlog.photos.previews import Previews, PreviewSize, make_previews

SHA256 = hashlib.sha256(b"a leaf").hexdigest()
FACTS = PictureFacts(64, 48, "image/jpeg", 1, ExifTimes())


@pytest.fixture
def cache(tmp_path: Path) -> PreviewCache:
    return PreviewCache(tmp_path / "cache")


@pytest.fixture
def previews(make_picture: Callable[..., Path]) -> Previews:
    return make_previews(make_picture())


def test_what_is_written_is_read_back(cache: PreviewCache, previews: Previews) -> None:
    assert not cache.has(SHA256)
    assert cache.write(SHA256, previews)
    assert cache.has(SHA256)
    assert cache.read(SHA256, PreviewSize.SMALL) == previews.small
    assert cache.read(SHA256, PreviewSize.LARGE) == previews.large


def test_writing_leaves_only_the_two_previews_behind(cache: PreviewCache, previews: Previews) -> None:
    cache.write(SHA256, previews)
    kept = {path for path in cache.folder.rglob("*") if path.is_file()}
    assert kept == {cache.path_of(SHA256, size) for size in PreviewSize}


def test_another_recipe_finds_nothing(cache: PreviewCache, previews: Previews, monkeypatch: pytest.MonkeyPatch) -> None:
    cache.write(SHA256, previews)
    monkeypatch.setattr(preview_cache, "RECIPE_VERSION", 2_000_000)
    assert not cache.has(SHA256)
    assert cache.read(SHA256, PreviewSize.SMALL) is None


def test_previews_are_spread_over_folders_by_content(cache: PreviewCache) -> None:
    assert cache.path_of(SHA256, PreviewSize.SMALL).parent.name == SHA256[:2]


@pytest.mark.parametrize("sha256", ["", "../../etc/passwd", SHA256.upper(), SHA256[:63], SHA256 + "\n"])
def test_only_a_hash_is_a_key(cache: PreviewCache, sha256: str) -> None:
    with pytest.raises(ValueError, match="sha256"):
        cache.path_of(sha256, PreviewSize.SMALL)


@pytest.mark.parametrize("content", [b"", b"\xff\xd8\xff", bytes(5000), b"\xff\xd8\xff" + bytes(5000)])
@pytest.mark.parametrize("size", PreviewSize)
def test_a_broken_preview_counts_as_missing(
    cache: PreviewCache, previews: Previews, content: bytes, size: PreviewSize
) -> None:
    cache.write(SHA256, previews)
    cache.path_of(SHA256, size).write_bytes(content)
    assert not cache.has(SHA256)
    assert cache.read(SHA256, size) is None
    cache.write(SHA256, previews)
    assert cache.has(SHA256)


def test_a_missing_preview_is_none(cache: PreviewCache) -> None:
    assert cache.read(SHA256, PreviewSize.LARGE) is None


def test_many_writers_of_one_picture_do_no_harm(cache: PreviewCache, previews: Previews) -> None:
    with ThreadPoolExecutor(8) as threads:
        written = list(threads.map(lambda _: cache.write(SHA256, previews), range(64)))
    assert all(written)
    assert cache.read(SHA256, PreviewSize.LARGE) == previews.large
    assert not list(cache.folder.rglob("*.part"))


def test_a_reader_that_holds_the_preview_open_does_no_harm(
    cache: PreviewCache, previews: Previews, monkeypatch: pytest.MonkeyPatch
) -> None:
    cache.write(SHA256, previews)

    def refuse(self: Path, target: Path) -> None:
        raise PermissionError(13, "used by another process")

    monkeypatch.setattr(Path, "replace", refuse)
    assert cache.write(SHA256, previews)
    assert not list(cache.folder.rglob("*.part"))


def test_a_cache_that_cannot_be_written_says_no_and_leaves_nothing(
    cache: PreviewCache, previews: Previews, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(self: Path, target: Path) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", full)
    assert not cache.write(SHA256, previews)
    assert [path for path in cache.folder.rglob("*") if path.is_file()] == []


def test_a_cache_folder_that_is_a_file_says_no(tmp_path: Path, previews: Previews) -> None:
    (tmp_path / "cache").write_text("in the way")
    assert not PreviewCache(tmp_path / "cache").write(SHA256, previews)
