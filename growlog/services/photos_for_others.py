"""The photos of an open data set without places: what tells them is taken out of the files, the pixels stay."""

import hashlib
import os
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path, PurePosixPath

from growlog.photos.places import PlacesStay, without_places
from growlog.photos.shared_picture import size_of_jpeg
from growlog.records.photo import Photo
from growlog.services.open_logbook import OpenLogbook
from growlog.services.photo_uses import sharp_picture
from growlog.sharing.data_package import PackageProblem, check_photo
from growlog.sharing.photo_files import Cancelled, photo_path
from growlog.words import say


@dataclass(frozen=True)
class CopiedPhoto:
    """A photo as it was written. changed: anything was taken out of it."""

    photo: Photo
    path: Path
    changed: bool


def copied_without_places(
    log: OpenLogbook, photos: tuple[Photo, ...], target: Path, cancelled: Cancelled
) -> Iterator[CopiedPhoto]:  # fmt: skip
    """Writes each photo below a folder, one after the other; PackageProblem where one is missing or damaged.

    Of a file that is not understood a smaller picture of bare pixels is written instead, as JPEG. Two photos that are
    alike without their places stay apart by a byte behind the end of the second, which no reader of pictures minds.
    """
    seen: set[str] = set()
    for photo in photos:
        check_photo(log.folder, photo, cancelled)
        content = photo_path(log.folder, photo).read_bytes()
        shared, told = _shared(log, photo, content)
        while (sha256 := hashlib.sha256(shared).hexdigest()) in seen:
            shared += b"\0"
        seen.add(sha256)
        changed = shared != content
        written = replace(told, sha256=sha256, byte_count=len(shared)) if changed else photo
        yield CopiedPhoto(written, _write(target, written, shared, photo_path(log.folder, photo)), changed)


def _shared(log: OpenLogbook, photo: Photo, content: bytes) -> tuple[bytes, Photo]:
    try:
        return without_places(content), photo
    except PlacesStay as error:
        bare = sharp_picture(log, photo)
        if bare is None:
            sentence = say(
                "What the photo tells of its place cannot be taken out of it. Export with --complete, or take the "
                "photo off its day."
            )
            raise PackageProblem(sentence, photo.path) from error
    width_px, height_px = size_of_jpeg(bare)
    path = str(PurePosixPath(photo.path).with_suffix(".jpg"))
    return bare, replace(photo, path=path, media_type="image/jpeg", width_px=width_px, height_px=height_px)


def _write(target: Path, photo: Photo, content: bytes, origin: Path) -> Path:
    goal = photo_path(target, photo)
    goal.parent.mkdir(parents=True, exist_ok=True)
    with goal.open("xb") as file:
        file.write(content)
        file.flush()
        os.fsync(file.fileno())
    times = origin.stat()
    with suppress(OSError):  # a courtesy: some file systems keep no times
        os.utime(goal, ns=(times.st_atime_ns, times.st_mtime_ns))
    return goal
