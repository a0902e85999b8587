"""The logbook's photo folder: originals copied in byte for byte, verified, and never half-written."""

import hashlib
import os
import secrets
from collections.abc import Iterator
from contextlib import suppress
from datetime import date
from pathlib import Path, PurePosixPath

from growlog.photos.crop_folder_name import crop_folder_name
from growlog.photos.picture_kind import ENDINGS, media_type_of_file
from growlog.photos.picture_problem import PictureProblem, Reason, problem_from_os_error
from growlog.records.photo import CaptureTime

PHOTOS = "photos"
_CHUNK_BYTES = 1 << 20
_SHORT_HASH, _FULL_HASH = 8, 64


def sha256_of(path: Path) -> str:
    """The SHA-256 of the file's content as 64 hex digits. Raises PictureProblem."""
    try:
        with path.open("rb") as file:
            return hashlib.file_digest(file, "sha256").hexdigest()
    except OSError as error:
        raise problem_from_os_error(error) from error


class PhotoFolder:
    """Takes originals into `photos/<crop>/` of one logbook and finds them again."""

    def __init__(self, logbook: Path) -> None:
        self._logbook = logbook
        self._photos = logbook / PHOTOS

    def take_in(self, source: Path, crop_name: str, capture: CaptureTime, sha256: str, day: date) -> str:
        """Copies the picture in and returns its path, relative to the logbook, with forward slashes.

        sha256: what the content must hash to; a file that changed since is refused. The same content already
        in the crop's folder is not copied again. Raises PictureProblem, and then leaves nothing behind.
        """
        try:
            ending = ENDINGS[media_type_of_file(source)]
            folder = self._crop_folder(crop_name)
            kept = _same_content(folder, sha256) or _copy_in(
                source, _free_path(folder, _moment(capture, day), ending, sha256), sha256
            )
        except OSError as error:
            raise problem_from_os_error(error) from error
        return kept.relative_to(self._logbook).as_posix()

    def absolute(self, relative: str) -> Path:
        """Where the photo lies on this computer. ValueError for a path that leads out of the photo folder."""
        parts = PurePosixPath(relative).parts
        clean = "\\" not in relative and ":" not in relative and "\0" not in relative and ".." not in parts
        if not clean or len(parts) < 2 or parts[0] != PHOTOS:
            raise ValueError(f"not a path inside the photo folder: {relative!r}")
        path = self._logbook.joinpath(*parts)
        # The photo folder itself may be a link to another drive; nothing inside may lead out of it.
        if not path.resolve().is_relative_to(self._photos.resolve()):
            raise ValueError(f"leads out of the photo folder: {relative!r}")
        return path

    def _crop_folder(self, crop_name: str) -> Path:
        folder = self._photos / crop_folder_name(crop_name)
        if not folder.is_dir():
            folder.mkdir(parents=True, exist_ok=True)
            _make_durable(self._photos)
            _make_durable(self._logbook)
        return folder


def _moment(capture: CaptureTime, day: date) -> str:
    # A time of another day than the one the photo is filed under would name a moment that never was.
    if capture.at is None or capture.day != day:
        return day.isoformat()
    return f"{day.isoformat()}_{capture.at:%H%M%S}"


def _same_content(folder: Path, sha256: str) -> Path | None:
    marker = f"_{sha256[:_SHORT_HASH]}"
    candidates = sorted(name for name in os.listdir(folder) if marker in name and not name.startswith("."))
    return next((folder / name for name in candidates if _holds(folder / name, sha256)), None)


def _holds(path: Path, sha256: str) -> bool:
    try:
        return sha256_of(path) == sha256
    except PictureProblem:  # one that cannot be read is no copy to rely on
        return False


def _free_path(folder: Path, moment: str, ending: str, sha256: str) -> Path:
    for path in _names(folder, moment, ending, sha256):
        if not path.exists():
            return path
    # Only a file that carries this very hash in its name and does not have it can stand here: it was damaged.
    return folder / f"{moment}_{sha256}-{secrets.token_hex(4)}{ending}"


def _names(folder: Path, moment: str, ending: str, sha256: str) -> Iterator[Path]:
    for digits in range(_SHORT_HASH, _FULL_HASH + 1, _SHORT_HASH):
        yield folder / f"{moment}_{sha256[:digits]}{ending}"


def _copy_in(source: Path, target: Path, sha256: str) -> Path:
    temporary = target.with_name(f".{secrets.token_hex(8)}.part")
    try:
        if _copy_hashing(source, temporary) != sha256:
            raise PictureProblem(Reason.CHANGED)
        _keep_times(source, temporary)
        temporary.replace(target)
    except BaseException:  # whatever happens, nothing half-written stays
        with suppress(OSError):
            temporary.unlink(missing_ok=True)
        raise
    _make_durable(target.parent)
    return target


def _copy_hashing(source: Path, temporary: Path) -> str:
    digest = hashlib.sha256()
    with source.open("rb") as original, temporary.open("xb") as copy:
        while chunk := original.read(_CHUNK_BYTES):
            digest.update(chunk)
            copy.write(chunk)
        copy.flush()
        os.fsync(copy.fileno())
    return digest.hexdigest()


def _keep_times(source: Path, copy: Path) -> None:
    with suppress(OSError):  # a courtesy: some file systems keep no times
        times = source.stat()
        os.utime(copy, ns=(times.st_atime_ns, times.st_mtime_ns))


def _make_durable(folder: Path) -> None:
    """Asks for the folder's own list of files to be on the disk, where the system can."""
    with suppress(OSError):  # Windows opens no folders, some network drives sync none
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)
