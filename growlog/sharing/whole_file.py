"""A file for others that is there whole or not at all."""

import os
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
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


@contextmanager
def made_whole(path: Path) -> Iterator[Path]:
    """A path beside the target to write to, for tools that want a path; it takes the target's place at the end.

    Where anything goes wrong inside, nothing half-written is left and the target is as it was.
    """
    handle, name = tempfile.mkstemp(prefix=f".{path.stem}.", suffix=f".unfinished{path.suffix}", dir=_folder(path))
    os.close(handle)
    try:
        yield Path(name)
        with open(name, "rb+") as file:
            os.fsync(file.fileno())
        os.chmod(name, 0o666 & ~_umask())
        os.replace(name, path)
    except BaseException as error:
        with suppress(OSError):
            os.unlink(name)
        if isinstance(error, OSError) and error.errno is not None:
            raise OSError(error.errno, error.strerror, str(path)) from error
        raise


def _folder(path: Path) -> Path:
    if not path.parent.is_dir():
        raise FileNotFoundError(2, "No such folder", str(path.parent))
    return path.parent


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
