"""Previews kept outside the logbook, found by content and recipe. Losing them costs time, never a picture."""

import os
import re
import tempfile
from pathlib import Path

from growlog.photos.previews import RECIPE_VERSION, Previews, PreviewSize

_SHA256 = re.compile(r"[0-9a-f]{64}")
_JPEG_START, _JPEG_END = b"\xff\xd8\xff", b"\xff\xd9"


class PreviewCache:
    """A folder of previews that several processes may read and write at the same time."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder

    def path_of(self, sha256: str, size: PreviewSize) -> Path:
        """Where this preview of the picture with this content is kept, there or not."""
        if not _SHA256.fullmatch(sha256):
            raise ValueError(f"sha256 must be 64 lower-case hex digits, not {sha256!r}")
        return self.folder / f"recipe-{RECIPE_VERSION}" / size / sha256[:2] / f"{sha256}.jpg"

    def has(self, sha256: str) -> bool:
        """Whether both previews are there and whole."""
        return all(_is_whole(self.path_of(sha256, size)) for size in PreviewSize)

    def read(self, sha256: str, size: PreviewSize) -> bytes | None:
        """The preview as a JPEG file; None where it is missing or broken and must be made again."""
        try:
            content = self.path_of(sha256, size).read_bytes()
        except OSError:
            return None
        return content if content.startswith(_JPEG_START) and content.endswith(_JPEG_END) else None

    def write(self, sha256: str, previews: Previews) -> bool:
        """Keeps both previews; False where the cache's folder cannot take them, which harms nothing."""
        try:
            _put(self.path_of(sha256, PreviewSize.LARGE), previews.large)
            _put(self.path_of(sha256, PreviewSize.SMALL), previews.small)
        except OSError:
            return False
        return True


def _is_whole(path: Path) -> bool:
    """Both ends of the file are looked at: a crash can leave the right length filled with zeros."""
    try:
        with path.open("rb") as file:
            if file.read(len(_JPEG_START)) != _JPEG_START:
                return False
            file.seek(-len(_JPEG_END), os.SEEK_END)
            return file.read() == _JPEG_END
    except OSError:
        return False


def _put(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, temporary = tempfile.mkstemp(prefix=".", suffix=".part", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
        _move_into_place(Path(temporary), path)
    except OSError:
        Path(temporary).unlink(missing_ok=True)
        raise


def _move_into_place(temporary: Path, path: Path) -> None:
    try:
        temporary.replace(path)
    except PermissionError:
        # Windows refuses while another process reads the same preview: then it is there already.
        if not _is_whole(path):
            raise
        temporary.unlink(missing_ok=True)
