"""Originals in the logbook: byte for byte, once each, never half-written, never outside the photo folder."""

import errno
import hashlib
import os
from collections.abc import Callable
from datetime import date, time
from pathlib import Path

import pytest

from growlog.photos import photo_folder
from growlog.photos.photo_folder import PhotoFolder, sha256_of
from growlog.photos.picture_problem import PictureProblem, Reason
from growlog.records.photo import CaptureTime, DateSource

DAY = date(2026, 1, 18)
AT_DUSK = CaptureTime(DAY, time(18, 41, 2), DateSource.EXIF_ORIGINAL)
NO_TIME = CaptureTime(DAY, None, DateSource.FILE_NAME)


@pytest.fixture
def logbook(tmp_path: Path) -> Path:
    logbook = tmp_path / "my-room"
    logbook.mkdir()
    return logbook


@pytest.fixture
def folder(logbook: Path) -> PhotoFolder:
    return PhotoFolder(logbook)


def files_in(logbook: Path) -> list[str]:
    return sorted(path.relative_to(logbook).as_posix() for path in logbook.rglob("*") if path.is_file())


def test_a_picture_is_kept_byte_for_byte_under_day_time_and_hash(
    folder: PhotoFolder, logbook: Path, rosettes: list[Path]
) -> None:
    sha256 = hashlib.sha256(rosettes[0].read_bytes()).hexdigest()
    relative = folder.take_in(rosettes[0], "Winter cucumber", AT_DUSK, sha256, DAY)
    assert relative == f"photos/Winter cucumber/2026-01-18_184102_{sha256[:8]}.jpg"
    assert files_in(logbook) == [relative]
    assert folder.absolute(relative).read_bytes() == rosettes[0].read_bytes()


def test_without_a_time_the_name_has_none(folder: PhotoFolder, make_picture: Callable[..., Path]) -> None:
    path = make_picture()
    relative = folder.take_in(path, "Beds", NO_TIME, sha256_of(path), DAY)
    assert relative == f"photos/Beds/2026-01-18_{sha256_of(path)[:8]}.jpg"


def test_a_time_of_another_day_is_left_out_of_the_name(folder: PhotoFolder, make_picture: Callable[..., Path]) -> None:
    path = make_picture()
    relative = folder.take_in(path, "Beds", AT_DUSK, sha256_of(path), date(2026, 1, 20))
    assert relative == f"photos/Beds/2026-01-20_{sha256_of(path)[:8]}.jpg"


@pytest.mark.parametrize("kind, ending", [("JPEG", ".jpg"), ("PNG", ".png"), ("WEBP", ".webp"), ("TIFF", ".tif")])
def test_the_ending_tells_the_content_and_not_the_old_name(
    folder: PhotoFolder, make_picture: Callable[..., Path], kind: str, ending: str
) -> None:
    path = make_picture("whatever.xyz", kind=kind)
    assert folder.take_in(path, "Beds", NO_TIME, sha256_of(path), DAY).endswith(ending)


@pytest.mark.parametrize("name", ["Grüne Blätter 1.jpg", "🥒.jpg", "-rf.jpg"])
def test_odd_letters_of_the_source_harm_nothing(
    folder: PhotoFolder, make_picture: Callable[..., Path], name: str
) -> None:
    path = make_picture(name)
    relative = folder.take_in(path, "Grüne 🥒/März", AT_DUSK, sha256_of(path), DAY)
    assert folder.absolute(relative).read_bytes() == path.read_bytes()


def test_the_same_content_is_not_copied_twice(
    folder: PhotoFolder, logbook: Path, make_picture: Callable[..., Path]
) -> None:
    path = make_picture()
    first = folder.take_in(path, "Beds", AT_DUSK, sha256_of(path), DAY)
    again = folder.take_in(path, "Beds", NO_TIME, sha256_of(path), date(2026, 1, 20))
    assert first == again
    assert files_in(logbook) == [first]


def test_other_content_with_the_same_first_digits_gets_a_longer_name(
    folder: PhotoFolder, logbook: Path, make_picture: Callable[..., Path]
) -> None:
    path = make_picture()
    sha256 = sha256_of(path)
    in_the_way = logbook / "photos" / "Beds" / f"2026-01-18_184102_{sha256[:8]}.jpg"
    in_the_way.parent.mkdir(parents=True)
    in_the_way.write_bytes(b"another picture")
    relative = folder.take_in(path, "Beds", AT_DUSK, sha256, DAY)
    assert relative == f"photos/Beds/2026-01-18_184102_{sha256[:16]}.jpg"
    assert in_the_way.read_bytes() == b"another picture"
    assert folder.take_in(path, "Beds", AT_DUSK, sha256, DAY) == relative


def test_a_damaged_file_under_every_name_is_not_written_over(
    folder: PhotoFolder, logbook: Path, make_picture: Callable[..., Path]
) -> None:
    path = make_picture()
    sha256 = sha256_of(path)
    beds = logbook / "photos" / "Beds"
    beds.mkdir(parents=True)
    for digits in range(8, 65, 8):
        (beds / f"2026-01-18_{sha256[:digits]}.jpg").write_bytes(b"damaged")
    relative = folder.take_in(path, "Beds", NO_TIME, sha256, DAY)
    assert folder.absolute(relative).read_bytes() == path.read_bytes()
    assert len(files_in(logbook)) == 9


def test_a_file_that_changed_since_is_refused_and_nothing_stays(
    folder: PhotoFolder, logbook: Path, make_picture: Callable[..., Path]
) -> None:
    path = make_picture()
    with pytest.raises(PictureProblem) as caught:
        folder.take_in(path, "Beds", AT_DUSK, "0" * 64, DAY)
    assert caught.value.reason is Reason.CHANGED
    assert files_in(logbook) == []


def test_a_missing_source_is_said_to_be_missing(folder: PhotoFolder, tmp_path: Path) -> None:
    with pytest.raises(PictureProblem) as caught:
        folder.take_in(tmp_path / "gone.jpg", "Beds", AT_DUSK, "0" * 64, DAY)
    assert caught.value.reason is Reason.MISSING


@pytest.mark.parametrize("step", ["fsync", "replace"])
@pytest.mark.parametrize(
    "number, reason",
    [(errno.ENOSPC, Reason.DISK_FULL), (errno.EACCES, Reason.NO_RIGHTS), (errno.EIO, Reason.UNREADABLE)],
)
def test_a_disk_that_refuses_leaves_nothing_half_written(
    folder: PhotoFolder,
    logbook: Path,
    make_picture: Callable[..., Path],
    monkeypatch: pytest.MonkeyPatch,
    step: str,
    number: int,
    reason: Reason,
) -> None:
    path = make_picture()
    sha256 = sha256_of(path)

    def refuse(*_: object) -> None:
        raise OSError(number, "refused")

    (logbook / "photos" / "Beds").mkdir(parents=True)
    monkeypatch.setattr(*{"fsync": (os, "fsync"), "replace": (Path, "replace")}[step], refuse)
    with pytest.raises(PictureProblem) as caught:
        folder.take_in(path, "Beds", AT_DUSK, sha256, DAY)
    assert caught.value.reason is reason
    assert files_in(logbook) == []


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="the system has no device that is always full")
def test_a_disk_that_is_really_full_is_said_to_be_full(
    folder: PhotoFolder, logbook: Path, make_picture: Callable[..., Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = make_picture()
    open_file = Path.open

    def open_full(self: Path, mode: str = "r") -> object:
        return open_file(Path("/dev/full"), "wb") if mode == "xb" else open_file(self, mode)

    monkeypatch.setattr(Path, "open", open_full)
    with pytest.raises(PictureProblem) as caught:
        folder.take_in(path, "Beds", AT_DUSK, sha256_of(path), DAY)
    assert caught.value.reason is Reason.DISK_FULL
    assert files_in(logbook) == []


def test_a_photo_folder_that_is_a_file_is_a_problem(
    folder: PhotoFolder, logbook: Path, make_picture: Callable[..., Path]
) -> None:
    (logbook / "photos").write_text("in the way")
    path = make_picture()
    with pytest.raises(PictureProblem):
        folder.take_in(path, "Beds", AT_DUSK, sha256_of(path), DAY)


def test_an_interruption_leaves_nothing_half_written(
    folder: PhotoFolder, logbook: Path, make_picture: Callable[..., Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    path = make_picture()
    sha256 = sha256_of(path)

    def interrupt(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(photo_folder, "_keep_times", interrupt)
    with pytest.raises(KeyboardInterrupt):
        folder.take_in(path, "Beds", AT_DUSK, sha256, DAY)
    assert files_in(logbook) == []


def test_the_copy_keeps_the_time_of_the_original(folder: PhotoFolder, make_picture: Callable[..., Path]) -> None:
    path = make_picture()
    os.utime(path, (1_700_000_000, 1_700_000_000))
    kept = folder.absolute(folder.take_in(path, "Beds", AT_DUSK, sha256_of(path), DAY))
    assert int(kept.stat().st_mtime) == 1_700_000_000


@pytest.mark.parametrize(
    "relative",
    [
        "",
        "photos",
        "/etc/passwd",
        "../photos/a.jpg",
        "photos/../logbook.sqlite3",
        "photos/Beds/../../a.jpg",
        "logbook.sqlite3",
        "photos\\Beds\\a.jpg",
        "C:/photos/a.jpg",
        "photos/C:a.jpg",
        "photos/a\0.jpg",
    ],
)
def test_a_path_that_leads_out_of_the_photo_folder_is_refused(folder: PhotoFolder, relative: str) -> None:
    with pytest.raises(ValueError, match="photo folder"):
        folder.absolute(relative)


def test_a_link_that_leads_out_of_the_photo_folder_is_refused(
    folder: PhotoFolder, logbook: Path, tmp_path: Path
) -> None:
    (logbook / "photos").mkdir()
    (logbook / "photos" / "away").symlink_to(tmp_path, target_is_directory=True)
    with pytest.raises(ValueError, match="photo folder"):
        folder.absolute("photos/away/a.jpg")


def test_a_photo_folder_that_is_a_link_to_another_drive_works(
    folder: PhotoFolder, logbook: Path, tmp_path: Path, make_picture: Callable[..., Path]
) -> None:
    (tmp_path / "drive").mkdir()
    (logbook / "photos").symlink_to(tmp_path / "drive", target_is_directory=True)
    path = make_picture()
    relative = folder.take_in(path, "Beds", AT_DUSK, sha256_of(path), DAY)
    assert folder.absolute(relative).read_bytes() == path.read_bytes()


def test_the_hash_is_that_of_the_published_example(tmp_path: Path) -> None:
    # FIPS 180-2, appendix B.1: the message "abc".
    path = tmp_path / "abc"
    path.write_bytes(b"abc")
    assert sha256_of(path) == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
