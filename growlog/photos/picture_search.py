"""Which files are meant when folders and files are dropped together."""

import os
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import NamedTuple

from growlog.photos.picture_kind import media_type_of_file
from growlog.photos.picture_problem import PictureProblem, problem_from_os_error

# Inside a folder these are looked at in any case, so that a damaged one gets its sentence. What has another
# ending, or none, is taken for a picture only if its first bytes say so; all else is passed over in silence.
_READ = (".jpg", ".jpeg", ".jpe", ".jfif", ".mpo", ".png", ".webp", ".tif", ".tiff", ".heic", ".heif", ".hif")
_OTHER = (".gif", ".bmp", ".avif", ".jp2", ".jxl")
_RAW = (".dng", ".cr2", ".cr3", ".nef", ".arw", ".orf", ".raf", ".rw2")


class Found(NamedTuple):
    """The files to look at, in order and each once, and the folders that could not be looked into."""

    files: list[Path]
    problems: list[tuple[Path, PictureProblem]]


def expand(paths: Iterable[Path]) -> Found:
    """Files as they are, folders with all that lies below them, by name.

    Within folders, hidden files and what is no picture by ending or content are left out; a file named by
    itself is always kept, so that it gets its sentence.
    """
    problems: list[tuple[Path, PictureProblem]] = []
    files: dict[Path, None] = {}
    for path in paths:
        below = _below(path, problems) if os.path.isdir(path) else [path]
        files.update(dict.fromkeys(below))
    return Found(list(files), problems)


def _below(folder: Path, problems: list[tuple[Path, PictureProblem]]) -> Iterator[Path]:
    def note(error: OSError) -> None:
        problems.append((Path(error.filename), problem_from_os_error(error)))

    for where, folders, names in os.walk(folder, onerror=note):
        folders[:] = sorted((name for name in folders if not name.startswith(".")), key=_by_name)
        below = (Path(where, name) for name in sorted(names, key=_by_name))
        yield from filter(_may_be_picture, below)


def _by_name(name: str) -> tuple[str, str]:
    return name.casefold(), name


def _may_be_picture(path: Path) -> bool:
    if path.name.startswith("."):
        return False
    return path.suffix.lower() in _READ + _OTHER + _RAW or _starts_like_picture(path)


def _starts_like_picture(path: Path) -> bool:
    try:
        media_type_of_file(path)
    except PictureProblem:
        return False
    return True
