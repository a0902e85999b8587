"""Photos beside the tables: copied byte for byte, checked against their SHA-256, never half-written."""

import hashlib
import os
import secrets
from collections.abc import Callable
from contextlib import suppress
from io import BufferedReader
from pathlib import Path, PurePosixPath

from growlog.records.photo import Photo
from growlog.sharing.problems import PackageProblem
from growlog.words import say

PHOTOS = "photos"
_CHUNK_BYTES = 1 << 20

Cancelled = Callable[[], bool]


class Stopped(Exception):
    """The caller lost interest while files were copied or read."""


def stays_inside(path: str) -> bool:
    """Whether a photo's path is a relative one below photos/, with forward slashes, on every system."""
    parts = path.split("/")
    clean = not any(sign in path for sign in ("\\", ":", "\0"))
    return clean and len(parts) > 1 and parts[0] == PHOTOS and not {"", ".", ".."} & set(parts)


def photo_path(folder: Path, photo: Photo) -> Path:
    """Where the photo lies below a folder; PackageProblem for a path that leads out of it."""
    path = folder.joinpath(*PurePosixPath(photo.path).parts)
    if not stays_inside(photo.path) or not path.resolve().is_relative_to((folder / PHOTOS).resolve()):
        raise PackageProblem(say("The path leads out of the folder photos."), photo.path)
    return path


def check_photo(folder: Path, photo: Photo, cancelled: Cancelled) -> None:
    """PackageProblem unless the file is there and has the bytes that its SHA-256 says."""
    if _digest(photo_path(folder, photo), photo, None, cancelled) != photo.sha256:
        raise _other_bytes(photo)


def copy_photo(source: Path, target: Path, photo: Photo, cancelled: Cancelled) -> Path | None:
    """Copies a photo from below one folder to the same path below another; None if it is there already."""
    goal = photo_path(target, photo)
    origin = photo_path(source, photo)
    if goal.exists():
        check_photo(target, photo, cancelled)
        return None
    goal.parent.mkdir(parents=True, exist_ok=True)
    temporary = goal.with_name(f".{secrets.token_hex(8)}.part")
    try:
        if _digest(origin, photo, temporary, cancelled) != photo.sha256:
            raise _other_bytes(photo)
        times = origin.stat()
        with suppress(OSError):  # a courtesy: some file systems keep no times
            os.utime(temporary, ns=(times.st_atime_ns, times.st_mtime_ns))
        temporary.replace(goal)
    except BaseException:  # whatever happens, nothing half-written stays
        with suppress(OSError):
            temporary.unlink(missing_ok=True)
        raise
    return goal


def _digest(origin: Path, photo: Photo, copy: Path | None, cancelled: Cancelled) -> str:
    digest = hashlib.sha256()
    try:
        original = origin.open("rb")
    except OSError as error:
        sentence = say("The photo is missing or cannot be read. Put it back, or take it off its day and export again.")
        raise PackageProblem(sentence, photo.path) from error
    with original:
        if copy is None:
            _read_through(original, cancelled, digest.update)
            return digest.hexdigest()
        with copy.open("xb") as written:
            _read_through(original, cancelled, digest.update, written.write)
            written.flush()
            os.fsync(written.fileno())
    return digest.hexdigest()


def _read_through(original: BufferedReader, cancelled: Cancelled, *takers: Callable[[bytes], object]) -> None:
    while chunk := original.read(_CHUNK_BYTES):
        if cancelled():
            raise Stopped
        for take in takers:
            take(chunk)


def _other_bytes(photo: Photo) -> PackageProblem:
    sentence = say("The photo has other bytes than its SHA-256 says: it was changed or damaged. Put the original back.")
    return PackageProblem(sentence, photo.path)
