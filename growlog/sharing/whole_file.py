"""A file for others that is there whole or not at all."""

import os
import tempfile
from contextlib import suppress
from pathlib import Path


def write_whole(path: Path, content: bytes) -> None:
    """Writes beside the target, then takes its place; OSError naming the target, and nothing half-written is left."""
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", suffix=".unfinished", dir=_folder(path))
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(name, 0o666 & ~_umask())
        os.replace(name, path)
    except OSError as error:
        with suppress(OSError):
            os.unlink(name)
        raise OSError(error.errno, error.strerror, str(path)) from error


def _folder(path: Path) -> Path:
    if not path.parent.is_dir():
        raise FileNotFoundError(2, "No such folder", str(path.parent))
    return path.parent


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
